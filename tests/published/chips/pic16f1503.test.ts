/** PIC16(L)F1503 data sheet, Microchip, DS40001607D, 2015, pp. 265, 268 and 274; of its sister DS40001452D, p. 283. */
import { expect, test } from 'vitest';
import { at, bounds, levels, limits } from '../catalogue-figures.js';

const ID = 'pic16f1503';

test('p. 265: 50 mA a pin; 250 mA into VDD and out of VSS up to 85 °C, 85 mA above; 6.5 V', () => {
  for (const direction of ['source', 'sink'])
    expect(limits(ID, 'each-pin', direction, 'absolute')).toEqual([[0.05, {}]]);
  for (const [scope, direction] of [
    ['supply-pins', 'source'],
    ['ground-pins', 'sink'],
  ] as const)
    expect(limits(ID, scope, direction, 'absolute').map(([amps]) => amps)).toEqual([0.25, 0.085]);
  expect(bounds(at(ID, 'supply', 'absolute'), 'voltage')).toEqual({ max: 6.5 });
});

test('p. 274: 0.6 V at 8, 6 and 1.8 mA, 0.7 V lost at 3.5, 3 and 1 mA, at 5, 3.3 and 1.8 V', () => {
  expect(levels(ID, 'output-low').map(([supply, , amps, { max }]) => [supply, amps, max])).toEqual([
    [5, 0.008, 0.6],
    [3.3, 0.006, 0.6],
    [1.8, 0.0018, 0.6],
  ]);
  const lost = levels(ID, 'output-high').map(([supply, , amps, { min }]) => [
    supply,
    amps,
    Math.round((supply! - min!) * 10) / 10,
  ]);
  expect(lost).toEqual([
    [5, 0.0035, 0.7],
    [3.3, 0.003, 0.7],
    [1.8, 0.001, 0.7],
  ]);
});

test('p. 274: pull-ups of 25 to 300 µA at 5 V, at most 200 µA at 3.3 V; 125 nA up to 85 °C', () => {
  const { min, max } = bounds(at(ID, 'pull-up'), 'resistance');
  expect(5 / max!).toBeCloseTo(25e-6, 9);
  expect(min).toBeLessThanOrEqual(Math.min(5 / 300e-6, 3.3 / 200e-6));
  expect(bounds(at(ID, 'leakage'), 'current').max).toBeCloseTo(125e-9, 12);
});

test('p. 268: 2.3 to 5.5 V; DS40001452D, p. 283: 1.2 mA, at most 1.7 mA, at 16 MHz and 5 V', () => {
  expect(bounds(at(ID, 'supply', 'operating'), 'voltage')).toMatchObject({ min: 2.3, max: 5.5 });
  expect(bounds(at(ID, 'draws', 'active'), 'current')).toEqual({ typ: 0.0012, max: 0.0017 });
});

test('twelve pins of two ports; RA3 is an input', () => {
  expect((at(ID, 'pins') as string[]).length).toBe(12);
  expect(at(ID, 'input-only')).toEqual(['RA3']);
});
