/** PCF8574; PCF8574A product data sheet, NXP Semiconductors, Rev. 5, 27 May 2013, Table 9; limiting values of PCF8575C, Philips, 1999 Aug 05, p. 13. */
import { expect, test } from 'vitest';
import type { Fields } from '../../../src/catalogue/profile.js';
import { at, bounds, levels, limits, value } from '../catalogue-figures.js';

const ID = 'pcf8574';

test('Table 9: 10 mA at least, 25 mA typically, with 1 V at a low pin and 5 V', () => {
  expect(levels(ID, 'output-low')).toEqual([
    [5, undefined, 0.01, { max: 1 }],
    [5, undefined, 0.025, { typ: 1 }],
  ]);
  expect(limits(ID, 'each-pin', 'sink', 'characterised')).toEqual([[0.01, {}]]);
});

test('Table 9: a high pin gives 30 to 300 µA into ground', () => {
  for (const [supply, , amps, { min }] of levels(ID, 'output-high'))
    expect(supply! / ((supply! - min!) / amps!)).toBeCloseTo(30e-6, 6);
  // Half of the typical resistance is taken as the least.
  expect(5 / (bounds(at(ID, 'pin-resistance', 'source'), 'resistance').typ! / 2)).toBeCloseTo(300e-6, 5);
  const { min, max } = bounds(at(ID, 'pull-up'), 'resistance');
  expect(5 / min!).toBeCloseTo(300e-6, 5);
  expect(5 / max!).toBeCloseTo(30e-6, 6);
});

test('Table 9: 400 µA through the protection diodes; reads 0.3 and 0.7 of its supply of 2.5 to 6.0 V; all pins high at power-on', () => {
  expect(limits(ID, 'each-pin', 'injected', 'operating')).toEqual([[0.0004, {}]]);
  expect(bounds(at(ID, 'thresholds', 0, 'low'), 'ratio')).toEqual({ max: 0.3 });
  expect(bounds(at(ID, 'thresholds', 0, 'high'), 'ratio')).toEqual({ min: 0.7 });
  expect(bounds(at(ID, 'supply', 'operating'), 'voltage')).toMatchObject({ min: 2.5, max: 6 });
  expect(at(ID, 'at-boot', 'otherwise')).toBe('pulled-up');
});

test('PCF8575C, p. 13: 25 mA out of or into a pin, 100 mA of supply and ground, 100 mW an output, 400 mW in all', () => {
  for (const direction of ['source', 'sink'])
    expect(limits(ID, 'each-pin', direction, 'absolute')).toEqual([[0.025, {}]]);
  expect(limits(ID, 'supply-pins', 'source', 'absolute')).toEqual([[0.1, {}]]);
  expect(limits(ID, 'ground-pins', 'sink', 'absolute')).toEqual([[0.1, {}]]);
  const watts = (at(ID, 'limits') as readonly Fields[]).filter((row) => row['power'] !== undefined);
  expect(watts.map((row) => [row['applies-to'], value(row['power'], 'power')])).toEqual([
    ['each-pin', 0.1],
    ['package', 0.4],
  ]);
});
