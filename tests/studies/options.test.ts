/** Options of relay boards: complete, in order, true when they are audited by themselves. */
import { describe, expect, test } from 'vitest';
import { VERDICTS } from '../../src/checks/verdict.js';
import { isMapping } from '../../src/loads/figures.js';
import type { BoardOptions } from '../../src/studies/options.js';
import { boardOptions } from '../../src/studies/options.js';
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
const house = sampleData('seedling-house');
const own = sampleData('greenhouse-vents-own-supply');
const ofUsb = optionsOf(usb);

describe('the options of a board', () => {
  test.each([
    ['one supply', usb],
    ['three supplies', house],
    ['a supply of their own', own],
  ])('of a project with %s are the whole product of jumper, logic, coils and grounds', (_, data) => {
    const { project } = judgedWith(data);
    const rails = project.nodes.filter((n) => n.kind === 'rail').length;
    const supplies = Object.keys(isMapping(data) && isMapping(data['supplies']) ? data['supplies'] : {}).length;
    const { options } = optionsOf(data);
    expect(options).toHaveLength(2 * rails * (rails + supplies + 1) * 2);
    const ways = options.map((o) => [o.jumper, o.logic, o.coil, o.grounds].join());
    expect(new Set(ways).size).toBe(options.length);
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
    const { stays, options } = optionsOf(house);
    expect(stays.map((f) => f.rule)).toContain('coil-on-pin');
    for (const option of options.filter((_, k) => k % 12 === 0)) {
      const rules = judgedWith(house, option.changes).findings.map((f) => `${f.rule} ${f.about}`);
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
    const { amps, attempts, fuse } = ofUsb.size!;
    const asked = judgedWith(usb, ofUsb.options[0]!.changes).accounts.find((j) => j.account.id === 'coil-supply');
    // Four coils of 59.3 Ω at 5 °C on 5 V, less what the transistors keep, and 4.5 mA for each base.
    expect(amps).toBeGreaterThan(4 * 0.082);
    expect(amps).toBeLessThan(4 * (5 / 59.3 + 0.0046));
    expect(attempts[0]!.words).toBe('5 V ±5 %, 500 mA');
    expect(asked!.account.draw!.max).toBeLessThanOrEqual(0.8 * 0.5);
    expect(fuse).toBe(0.5);
  });

  test('the window of its voltage is where the coils begin and cease to promise', () => {
    const { lowest, highest } = ofUsb.size!.volts!;
    const rules = (volts: number): string[] =>
      judgedWith(usb, [
        ...ofUsb.options[0]!.changes,
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
    expect(checks.join(' ')).toContain('reads 4.75 to 5.25 V');
  });
});

test('a board that is fed in the best way already says so', () => {
  expect(optionsOf(own).options[0]).toMatchObject({
    present: true,
    coil: 'adapter',
  });
});
