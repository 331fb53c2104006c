/** What waivers do to findings: by rule and name, until their day, and never to a coil on a pin without its word. */
import { describe, expect, test } from 'vitest';
import { judge } from '../../src/checks/judge.js';
import { audit, builtIn, read } from '../../src/index.js';

const file = (waivers: string): string => `ampledger: 1
title: Set aside
ambient: 25 °C
supplies: { bench: { voltage: 5 V, current: 5 A } }
controllers: { main: { chip: atmega328p, supply: bench, draws: { active: 10 mA } } }
loads:
  horn: { part: relay-coil-5v-70r, pin: PB1, clamp: { part: diode-1n4148 } }
  warm: { type: resistor, resistance: 50 Ω, power: 0.25 W, supply: bench }
waivers:
${waivers}
`;

const judged = (waivers: string, today?: string, mode?: string) => {
  const { document } = read(file(waivers), 'aside.yaml');
  const options = { catalogue: builtIn, ...(today !== undefined && { today }), ...(mode !== undefined && { mode }) };
  return judge(document!.data, 'aside.yaml', options);
};

const findings = (waivers: string, today?: string) => {
  const result = judged(waivers, today);
  if ('problems' in result) throw new Error(JSON.stringify(result.problems));
  return result;
};
const set = (rule: string, about: string, more = ''): string =>
  `  - { rule: ${rule}, about: ${about}, reason: known${more} }`;

describe('a waiver', () => {
  test('by circuit, by account and by all that a load has sets the finding aside and no other', () => {
    for (const about of ['warm', 'warm.*']) {
      const { findings: found, verdict } = findings(set('resistor-power', about));
      const aside = found.filter((f) => f.waiver !== undefined).map((f) => `${f.rule} ${f.about}`);
      expect(aside).toEqual(['resistor-power warm']);
      expect(verdict).toBe('breach');
    }
    const pin = findings(set('pin-current', 'main.PB1'));
    expect(pin.findings.filter((f) => f.waiver).map((f) => f.rule)).toEqual(['pin-current']);
  });

  test('weighs nothing in the verdict, the counts and the cures', () => {
    const all = [
      set('resistor-power', 'warm'),
      set('coil-on-pin', 'horn', ', accepts: damage'),
      set('pin-current', 'horn'),
    ].join('\n');
    const { document } = read(file(all), 'aside.yaml');
    const { report } = audit(document!, { today: '2026-11-25' });
    const left = report!.findings.filter((f) => f.waiver === undefined);
    expect(left.map((f) => f.rule)).not.toContain('coil-on-pin');
    expect(report!.counts.breach).toBe(left.filter((f) => f.verdict === 'breach').length);
    for (const f of report!.findings.filter((each) => each.waiver)) {
      expect(f.waiver).toMatchObject({ reason: 'known' });
      expect(f.remedies).toEqual([]);
    }
  });

  test('of a regulator’s heat sets aside what its heat lets it give, too', () => {
    const text = `ampledger: 1
title: Warm
ambient: 5 to 45 °C
controllers: { main: { board: atmega328p-5v-board, powered: { barrel: { voltage: 12 V ±5 %, current: 1 A } } } }
loads:
  warm: { type: resistor, resistance: 50 Ω, power: 2 W, supply: main.5v }
waivers:
  - { rule: regulator-heat, about: main.regulator-5v, reason: bench use only, until: 2027-03-01 }
`;
    const { document } = read(text, 'warm.yaml');
    const { report } = audit(document!, { today: '2026-11-25' });
    expect(report!.verdict).toBe('sound');
    expect(report!.findings.flatMap((f) => (f.waiver ? [f.rule] : [])).sort()).toEqual([
      'regulator-current',
      'regulator-heat',
    ]);
  });

  test('never covers a coil on a pin without its own word', () => {
    const { findings: found } = findings(set('coil-on-pin', 'horn'));
    expect(found.find((f) => f.rule === 'coil-on-pin')!.waiver).toBeUndefined();
    expect(found.find((f) => f.rule === 'waiver-unused')).toMatchObject({ verdict: 'note', names: { damage: 'true' } });
  });

  test('holds on its last day, and not on the next; nobody who knows no day finds it over', () => {
    const until = set('resistor-power', 'warm', ', until: 2027-03-01');
    const aside = (today?: string): boolean =>
      findings(until, today).findings.some((f) => f.rule === 'resistor-power' && f.waiver !== undefined);
    expect(aside('2027-03-01')).toBe(true);
    expect(aside('2027-03-02')).toBe(false);
    expect(aside()).toBe(true);
    const over = findings(until, '2027-03-02').findings.find((f) => f.rule === 'waiver-expired');
    expect(over).toMatchObject({ verdict: 'breach', about: 'warm' });
  });

  test.each([
    [set('resistor-heat', 'warm'), 'there is no rule `resistor-heat`'],
    [set('resistor-power', 'warm', ', until: 2027-02-29'), 'this is no day of the calendar'],
    [set('resistor-power', 'warm', ', until: tomorrow'), 'this is no day of the calendar'],
  ])('%s is an error', (waiver, says) => {
    const result = judged(waiver);
    expect('problems' in result && result.problems.map((p) => p.says)).toEqual([says]);
  });
});
