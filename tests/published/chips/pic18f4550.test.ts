/** PIC18F2455/2550/4455/4550 data sheet, Microchip, DS39632E, 2009, pp. 367 and 379; of its kin DS39760D, pp. 272, 273, and DS39582A, p. 177. */
import { expect, test } from 'vitest';
import { at, bounds, levels, limits } from '../catalogue-figures.js';

const ID = 'pic18f4550';

test('p. 367: 25 mA sunk by a pin, 250 mA into VDD, 300 mA out of VSS, clamps 20 mA, 7.5 V', () => {
  expect(limits(ID, 'each-pin', 'sink', 'absolute')).toEqual([[0.025, {}]]);
  expect(limits(ID, 'supply-pins', 'source', 'absolute')).toEqual([[0.25, {}]]);
  expect(limits(ID, 'ground-pins', 'sink', 'absolute')).toEqual([[0.3, {}]]);
  expect(limits(ID, 'each-pin', 'injected', 'absolute')).toEqual([[0.02, {}]]);
  expect(bounds(at(ID, 'supply', 'absolute'), 'voltage')).toEqual({ max: 7.5 });
});

test('the last lines of that page, from memory: 25 mA sourced by a pin, 200 mA of all ports either way', () => {
  expect(limits(ID, 'each-pin', 'source', 'absolute')).toEqual([[0.025, {}]]);
  for (const direction of ['source', 'sink'])
    expect(limits(ID, 'all-pins', direction, 'absolute')).toEqual([[0.2, {}]]);
});

test('DS39582A, p. 177: 0.6 V at 8.5 mA, 0.7 V lost at 3 mA, at 4.5 V', () => {
  expect(levels(ID, 'output-low')).toEqual([[4.5, undefined, 0.0085, { max: 0.6 }]]);
  expect(levels(ID, 'output-high')).toEqual([[4.5, undefined, 0.003, { min: 4.5 - 0.7 }]]);
});

test('p. 379: 50 to 400 µA of pull-up at 5 V, 200 nA of leakage, reads 0.2 and 0.8 of its supply, or 0.8 and 2.0 V', () => {
  const { min, max } = bounds(at(ID, 'pull-up'), 'resistance');
  expect([5 / max!, 5 / min!]).toEqual([50e-6, 400e-6]);
  expect(bounds(at(ID, 'leakage'), 'current').max).toBeCloseTo(200e-9, 12);
  expect(bounds(at(ID, 'thresholds', 0, 'low'), 'ratio')).toEqual({ max: 0.2 });
  expect(bounds(at(ID, 'thresholds', 0, 'high'), 'ratio')).toEqual({ min: 0.8 });
  expect(bounds(at(ID, 'thresholds', 4, 'low'), 'voltage')).toEqual({ max: 0.8 });
  expect(bounds(at(ID, 'thresholds', 4, 'high'), 'voltage')).toEqual({ min: 2 });
});

test('DS39760D, pp. 272, 273: 25 mA, at most 50 mA, at 48 MHz and 5 V; idle 10 and 21 mA', () => {
  expect(bounds(at(ID, 'draws', 'active'), 'current')).toEqual({ typ: 0.025, max: 0.05 });
  expect(bounds(at(ID, 'draws', 'idle'), 'current')).toEqual({ typ: 0.01, max: 0.021 });
});
