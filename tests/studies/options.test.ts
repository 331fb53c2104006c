/** Options of relay boards: complete, in order, true when they are audited by themselves. */
import { describe, expect, test } from 'vitest';
import { VERDICTS } from '../../src/checks/verdict.js';
import { isMapping } from '../../src/loads/figures.js';
import type { BoardOptions } from '../../src/studies/options.js';
import { boardOptions } from '../../src/studies/options.js';
import { optionsJson, optionsTree } from '../../src/reports/options.js';
import { leadFor } from '../../src/studies/supply-lead.js';
import { withChanges } from '../../src/remedies/change.js';
import { SETTINGS, judgedWith, sampleData } from './studied.js';

const known = new Map<unknown, BoardOptions>();
/** The options of the first board, worked out once. */
const optionsOf = (data: unknown): BoardOptions => {
  const board = known.get(data) ?? boardOptions(data, 'case.yaml', SETTINGS, judgedWith(data))[0];
  if (board === undefined) throw new Error('no board');
  known.set(data, board);
  return board;
};

const usb = sampleData('greenhouse-vents-usb');
/** With three supplies, and a coil that is wrong however the board is fed. */
const shed = withChanges(usb, [
  { path: ['supplies', 'brick-5v'], value: { voltage: '5 V ±4 %', current: '2 A' } },
  { path: ['supplies', 'brick-12v'], value: { voltage: '12 V ±5 %', current: '1 A' } },
  { path: ['loads', 'bell'], value: { part: 'relay-coil-5v-70r', pin: 'D9' } },
]);
const own = sampleData('greenhouse-vents-own-supply');
/** The same with a wire of two metres to the board, from the rail that feeds it. */
const wired = withChanges(usb, [
  { path: ['wires'], value: [{ name: 'lead', from: 'main.5v', to: 'vents', length: '2 m', gauge: 'AWG 24' }] },
]);
const ofUsb = optionsOf(usb);

describe('the options of a board', () => {
  test.each([
    ['one supply', usb],
    ['three supplies', shed],
    ['a wire to the board', wired],
  ])(
    'of a project with %s are the whole product of jumper, logic, coils and grounds',
    (_, data) => {
      const { project } = judgedWith(data);
      const rails = project.nodes.filter((n) => n.kind === 'rail').length;
      const supplies = Object.keys(isMapping(data) && isMapping(data['supplies']) ? data['supplies'] : {}).length;
      const { options } = optionsOf(data);
      expect(options).toHaveLength(2 * rails * (rails + supplies + 1) * 2);
      const ways = options.map((o) => [o.jumper, o.logic, o.coil, o.grounds].join());
      expect(new Set(ways).size).toBe(options.length);
    },
    120_000,
  );

  test('of a board with one supply terminal put no two supplies on it', () => {
    const part = 'relay-board-opto-low-5v-4-no-jumper';
    const single = withChanges(usb, [
      { path: ['loads', 'vents', 'part'], value: part },
      { path: ['loads', 'vents', 'jumper'], value: undefined },
      { path: ['loads', 'vents', 'logic-supply'], value: undefined },
      { path: ['loads', 'vents', 'coil-supply'], value: undefined },
      { path: ['loads', 'vents', 'supply'], value: 'main.5v' },
    ]);
    const { options, plan } = optionsOf(single);
    expect(options.every((o) => o.coil === undefined || o.coil === o.logic)).toBe(true);
    expect(options.some((o) => o.coil === undefined)).toBe(true);
    expect(plan.steps.filter((step) => / on VCC/.test(step))).toHaveLength(1);
    const board = optionsOf(single);
    const told = JSON.stringify([optionsTree([board], 'p', 'f', true), optionsJson([board], {} as never)]);
    expect(told).toContain('"jumper":"none"');
    expect(told).not.toMatch(/jumper removed|"removed"|"fitted"/);
  });

  test('stand in order, the least wrong first', () => {
    const ranks = ofUsb.options.map((o) => VERDICTS.indexOf(o.verdict));
    expect(ranks).toEqual([...ranks].sort((a, b) => b - a));
  });

  test('are what an audit of the changed project says', () => {
    for (const option of ofUsb.options.filter((_, k) => k % 4 === 0)) {
      const { verdict, findings } = judgedWith(usb, option.changes);
      expect(option.verdict === 'sound' || findings.some((f) => f.verdict === option.verdict)).toBe(true);
      if (ofUsb.stays.length === 0) expect(option.verdict, JSON.stringify(option.changes)).toBe(verdict);
    }
  });

  test('leave out only what every one of them has', () => {
    const { stays, options } = optionsOf(shed);
    expect(stays.map((f) => f.rule)).toContain('coil-on-pin');
    for (const option of options.filter((_, k) => k % 12 === 0)) {
      const rules = judgedWith(shed, option.changes).findings.map((f) => `${f.rule} ${f.about}`);
      for (const f of stays) expect(rules).toContain(`${f.rule} ${f.about}`);
    }
  });
});

describe('four relays on a laptop’s port', () => {
  test('want a supply of their own, the jumper off and the grounds apart', () => {
    expect(ofUsb.options[0]).toMatchObject({
      verdict: 'sound',
      coil: undefined,
      logic: 'main.5v',
      jumper: 'removed',
      grounds: 'separate',
      isolates: true,
    });
  });

  test('a jumper between two supplies breaches', () => {
    const joined = ofUsb.options.filter((o) => o.jumper === 'fitted' && o.logic === 'main.3v3' && o.coil === 'main.5v');
    expect(joined).toHaveLength(2);
    for (const o of joined) {
      expect(o.verdict).toBe('breach');
      expect(o.findings.map((f) => f.rule)).toContain('jumper-joins-supplies');
    }
  });

  test('couplers do not isolate while the coils hang on the controller’s own ground', () => {
    const own = ofUsb.options.filter((o) => o.coil !== undefined);
    expect(own.map((o) => o.isolates)).toEqual(own.map(() => false));
  });

  test('the new supply has what is asked of it, with a fifth in hand, and the next standard rating', () => {
    const { amps, attempts, lead } = ofUsb.size!;
    const asked = judgedWith(usb, ofUsb.options[0]!.changes).accounts.find((j) => j.account.id === 'coil-supply');
    // Four coils of 59.3 Ω at 5 °C on 5 V, less what the transistors keep, and 4.5 mA for each base.
    expect(amps).toBeGreaterThan(4 * 0.082);
    expect(amps).toBeLessThan(4 * (5 / 59.3 + 0.0046));
    expect(attempts[0]!.words).toBe('5 V ±5 %, 500 mA');
    expect(asked!.account.draw!.max).toBeLessThanOrEqual(0.8 * 0.5);
    expect(lead!.fuse.amps).toBe(0.5);
  });

  test('the window of its voltage is where the coils begin and cease to promise', () => {
    const { lowest, highest } = ofUsb.size!.volts!;
    const rules = (volts: number): string[] =>
      judgedWith(usb, [
        // At its terminals, that is without the wires to them.
        ...ofUsb.options[0]!.changes.filter(({ path }) => path[0] !== 'wires'),
        { path: ['supplies', 'coil-supply'], value: { voltage: `${volts} V`, current: '2 A' } },
      ])
        .findings.filter((f) => f.verdict !== 'note' && f.family === 'coils')
        .map((f) => f.rule);
    expect(rules(lowest + 0.01)).toEqual([]);
    expect(rules(lowest - 0.02)).toContain('coil-pull-in');
    expect(rules(highest - 0.01)).toEqual([]);
    expect(rules(highest + 0.02)).toContain('coil-voltage');
  });

  test('the wiring is told in the board’s own labels, and what to measure first', () => {
    const { steps, checks } = ofUsb.plan;
    const all = steps.join(' ');
    for (const label of ['VCC', 'COIL+', 'GND', 'IN1', 'IN4', 'D4', 'D7', 'jumper']) expect(all).toContain(label);
    expect(all).toContain('500 mA fuse');
    expect(checks.join(' ')).toContain('GND against the controller’s ground reads more than 1 MΩ');
    expect(checks.join(' ')).toContain('reads 4.90 to 5.10 V');
    expect(checks.join(' ')).toContain('IN1 held to the controller’s ground by a wire');
  });
});

describe('the wires of a new supply', () => {
  const { lead, volts } = ofUsb.size!;

  test('bear more than the fuse, and the fuse more than the load', () => {
    expect(lead!.fuse.amps * 0.75).toBeGreaterThan(ofUsb.size!.amps);
    for (const { bears } of [lead!.awg, lead!.metric]) expect(bears).toBeGreaterThan(lead!.fuse.amps);
    expect(lead!.largestFuse).toBeLessThanOrEqual(Math.min(lead!.awg.bears, lead!.metric.bears));
  });

  test('are counted in the audit of the option, and lose what was reckoned', () => {
    const { changes } = ofUsb.options[0]!;
    const wires = changes.find(({ path }) => path[0] === 'wires')?.value;
    expect(wires).toEqual([
      { from: 'coil-supply', to: 'vents', length: '1 m', gauge: '0.14 mm²', 'contact-resistance': '0.2065 to 0.405 Ω' },
    ]);
    const judged = judgedWith(usb, changes);
    expect(judged.verdict).toBe('sound');
    const supply = judged.accounts.find((j) => j.account.id === 'coil-supply')!.account.solutions().most!;
    const amps = judged.accounts.find((j) => j.account.id === 'coil-supply')!.account.draw!.max;
    const lost = supply.voltage('coil-supply') - supply.voltage('coil-supply-vents');
    // 2 m of 0.14 mm² have 0.246 Ω, 6 % less at 5 °C; the fuse at its lowest or highest.
    expect(lost).toBeGreaterThan(amps * (0.231 + 0.2065) * 0.99);
    expect(lost).toBeLessThan(amps * (0.231 + 0.405) * 1.01);
    expect(volts!.lowest).toBeLessThan(4.9);
  });

  test('are as long as the file says, where it says so', () => {
    const long = optionsOf(wired);
    expect(long.size!.lead).toMatchObject({ length: 2, stated: true, awg: { gauge: 'AWG 22' } });
    expect(long.size!.lead!.awg.reach).toBeGreaterThan(2);
    expect(long.plan.steps.join(' ')).toContain('chosen for 2 m one way, as in the file');
    expect(ofUsb.plan.steps.join(' ')).toContain('chosen for 1 m one way, since the file states no length');
  });

  test('a wire follows its board, which still hangs on the controller’s ground behind it', () => {
    const { options } = optionsOf(wired);
    expect(options.find((o) => o.present)).toMatchObject({ jumper: 'fitted', coil: 'main.5v', isolates: false });
    for (const o of options) if (o.coil?.startsWith('main.')) expect(o.isolates).toBe(false);
    const laptop = options.find((o) => o.coil === 'laptop' && o.logic === 'main.3v3')!;
    expect(laptop.changes).toContainEqual({ path: ['wires', 0, 'from'], value: 'laptop' });
  });
});

describe('a lead', () => {
  test.each([
    // 2 % of 5 V are 100 mV; AWG 24 has 84.2 mΩ/m (ASTM B258 and IEC 60028): 100 mV / (0.353 A x 2 x 84.2 mΩ/m x 274.5/254.5).
    [0.353, 5, 40, undefined, 'AWG 24', '0.14 mm²', 0.5, 1.56],
    // 2 A want a fuse of 3.15 A, and that AWG 22 (5 A in a bundle) rather than AWG 24 (2 A).
    [2, 12, 25, 0.5, 'AWG 22', '0.34 mm²', 3.15, 1.11],
  ])('for %d A at %d V', (amps, volts, hottest, length, awg, metric, fuse, reach) => {
    const lead = leadFor(amps, volts, hottest, length)!;
    expect(lead).toMatchObject({ awg: { gauge: awg }, metric: { gauge: metric }, fuse: { amps: fuse } });
    expect(lead.awg.reach).toBeCloseTo(reach, 1);
  });

  test('is none where no small fuse or no wire of the tables will do', () => {
    expect(leadFor(6, 5, 25, undefined)).toBeUndefined();
    expect(leadFor(4, 5, 25, 100)).toBeUndefined();
  });
});

test('a board that is fed in the best way already says so', () => {
  expect(optionsOf(own).options[0]).toMatchObject({
    present: true,
    coil: 'adapter',
  });
});
