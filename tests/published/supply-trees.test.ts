/** Whole supply trees, audited, against published worked examples and tables. */
import { describe, expect, test } from 'vitest';
import { accountsOf } from '../loads/read-account.js';
import { judged } from '../checks/judged.js';

/** Supplies with one load of a fixed current. */
const tree = (supplies: readonly string[], on: string, amps: string, ambient = '25 °C'): string => `ampledger: 1
title: Published
ambient: ${ambient}
supplies:
${supplies.map((s) => `  ${s}`).join('\n')}
loads:
  a: { type: constant-current, current: ${amps}, supply: ${on} }
`;

/**
 * Input current of step-down converters, Vout·Iout / (η·Vin): "Buck Converter Calculator" (engcal.online), examples 1 and 2;
 * "Switching Regulator Efficiency Calculator Formula" (theprimecalculator.com), worked example.
 */
test.each([
  ['12 V', '5 V', '2 A', '90 %', 0.93],
  ['24 V', '12 V', '3 A', '92 %', 1.63],
  ['12 V', '3.3 V', '2 A', '90 %', 0.611],
])('a converter from %s to %s at %s and %s takes %d A', (input, output, amps, efficiency, takes) => {
  const text = tree(
    [
      `bench: { voltage: ${input}, current: 5 A }`,
      `low: { from: bench, type: switching-regulator, voltage: ${output}, current: 5 A, efficiency: ${efficiency} }`,
    ],
    'low',
    amps,
  );
  expect(accountsOf(text)('bench', 'at-most').draw!.max).toBeCloseTo(takes, takes < 0.7 ? 3 : 2);
});

/**
 * "Battery in parallel with main power source", electronics question and answer (itecnotes.com): a main source of 12 V and a
 * battery of 9 V over Schottky diodes of 0.5 V; the highest voltage feeds the load.
 */
describe('two sources joined by diodes', () => {
  const joined = (main: string): string =>
    tree(
      [
        `main: { voltage: ${main}, current: 1 A }`,
        'battery: { voltage: 9 V, current: 1 A }',
        'both: { from: [main, battery], drop: 0.5 V, current: 1 A }',
        'logic: { from: both, type: linear-regulator, voltage: 5 V, current: 1 A, dropout: 1 V }',
      ],
      'logic',
      '100 mA',
    );
  const stands = (text: string): number => accountsOf(text)('logic', 'at-most', 'voltage').draw!.max;

  test('of 12 V and 9 V stand at 11.5 V, and the battery gives nothing', () => {
    expect(stands(joined('12 V'))).toBeCloseTo(11.5, 9);
    expect(accountsOf(joined('12 V'))('main', 'at-most').draw).toMatchObject({ min: 0.1, max: 0.1 });
    expect(accountsOf(joined('12 V'))('battery', 'at-most').draw).toMatchObject({ min: 0, max: 0 });
  });

  test('of 8 V and 9 V hang on the battery all the time', () => {
    expect(stands(joined('8 V'))).toBeCloseTo(8.5, 9);
    expect(accountsOf(joined('8 V'))('main', 'at-most').draw).toMatchObject({ min: 0, max: 0 });
    expect(accountsOf(joined('8 V'))('battery', 'at-most').draw).toMatchObject({ min: 0.1, max: 0.1 });
  });

  test('leave the battery all of it when the main source dies, which is judged apart', () => {
    const text = joined('12 V').replace(
      'battery: { voltage: 9 V, current: 1 A }',
      'battery: { voltage: 9 V, current: 50 mA }',
    );
    expect(judged(text).findings.map((f) => [f.rule, f.about, f.verdict, f.runaway])).toContainEqual([
      'supply-current',
      'battery',
      'note',
      true,
    ]);
  });
});

/**
 * "FET-OR circuit switches between main and backup supplies", Electronic Design: 3.3 V ±10 % is 2.97 V at least, so that a
 * diode of 0.6 V puts it outside its 10 %.
 */
test('3.3 V less 10 % behind a diode of 0.6 V is 2.37 V', () => {
  const text = tree(
    ['main: { voltage: 3.3 V ±10 %, current: 1 A }', 'logic: { from: main, type: diode, drop: 0.6 V, current: 1 A }'],
    'logic',
    '10 mA, supply-voltage: 2.97 to 3.63 V',
  );
  const account = accountsOf(text)('a', 'at-least', 'voltage');
  expect(account.draw!.min).toBeCloseTo(2.37, 9);
  expect(account.limits[0]!.left).toBeLessThan(0);
});

/** "78xx Series Resistor", a one-page note (scribd 134168407): 14 V to 5 V at 0.5 A in 25 °C over 54 K/W is 268 °C. */
test('a regulator of 14 V to 5 V at 0.5 A reaches 268 °C; its heat allows 206 mA (derived)', () => {
  const text = tree(
    [
      'bench: { voltage: 14 V, current: 5 A }',
      'low: { from: bench, type: linear-regulator, voltage: 5 V, current: 1 A, dropout: 2 V, thermal-resistance: 54 K/W, maximum-junction: 125 °C }',
    ],
    'low',
    '0.5 A',
  );
  expect(accountsOf(text)('low', 'at-most', 'temperature').draw!.max).toBeCloseTo(268, 9);
  const [rated, byHeat] = accountsOf(text)('low', 'at-most').limits;
  expect(rated!.value).toBe(1);
  expect(byHeat!.value).toBeCloseTo(100 / 54 / 9, 12);
});

/** MF-MSMF Series PTC Resettable Fuses, Bourns, Thermal Derating Chart, MF-MSMF050: 0.50 A at 23 °C, 0.37 A at 60 °C. */
test.each([
  ['23 °C', 0.5],
  ['60 °C', 0.37],
  // Between two rows of the chart, 0.44 A at 40 °C and 0.40 A at 50 °C, half way.
  ['45 °C', 0.42],
])('a resettable fuse of 0.5 A holds at %s what its chart says: %d A', (ambient, holds) => {
  const rows = [
    ['0.59 A', '0 °C'],
    ['0.50 A', '23 °C'],
    ['0.44 A', '40 °C'],
    ['0.40 A', '50 °C'],
    ['0.37 A', '60 °C'],
  ].map(([value, at]) => `{ value: ${value}, at: ${at} }`);
  const text = tree(
    [
      'bench: { voltage: 5 V, current: 5 A }',
      `safe: { from: bench, type: fuse, resistance: 0.15 to 1.00 Ω, hold: [${rows.join(', ')}] }`,
    ],
    'safe',
    '100 mA',
    ambient,
  );
  expect(accountsOf(text)('safe', 'at-most').limits[0]!.value).toBeCloseTo(holds, 9);
});

/** "Worst case analysis" (Filo, question on a divider of 1 kΩ over 2 kΩ ±5 % on 12 V): 7.73 to 8.26 V, 8.00 V nominal. */
test('a divider of 1 kΩ over 2 kΩ, both ±5 %, makes 7.73 to 8.26 V of 12 V', () => {
  const text = tree(
    [
      'bench: { voltage: 12 V, current: 1 A }',
      'part: { from: bench, type: divider, upper: 1 kΩ ±5 %, lower: 2 kΩ ±5 % }',
    ],
    'bench',
    '1 mA',
  );
  const { min, typ, max } = accountsOf(text)('part.divider', 'at-least', 'voltage').draw!;
  expect(min).toBeCloseTo(7.729, 3);
  expect(typ).toBeCloseTo(8, 9);
  expect(max).toBeCloseTo(8.262, 3);
});

/**
 * A constant power behind a resistance: V = (Vs + √(Vs² − 4·R·P)) / 2, the greatest power Vs²/(4·R) at half the voltage; by
 * algebra from P = V·I, no source.
 */
test.each([
  ['12 V', '1 Ω', '20 W', 12 - 10],
  ['5 V', '0.5 Ω', '5 W', 1.127016654],
])('%s behind %s gives %s at %d A', (volts, ohms, watts, amps) => {
  const text = `ampledger: 1
title: Published
supplies: { bench: { voltage: ${volts}, resistance: ${ohms}, current: 5 A } }
loads: { a: { type: constant-power, power: ${watts}, supply: bench } }
`;
  expect(accountsOf(text)('bench', 'at-most').draw!.max).toBeCloseTo(amps, 8);
});
