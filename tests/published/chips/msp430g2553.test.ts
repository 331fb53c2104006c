/** A second reading: MSP430G2x53 and MSP430G2x13 data sheet, Texas Instruments, SLAS735J, rev. May 2013, pp. 21 to 25. */
import { expect, test } from 'vitest';
import { at, bounds, levels, limits } from '../catalogue-figures.js';

const id = 'msp430g2553';

test('outputs: typically 0.3 V lost at 6 mA and 3 V, both ways; all of them together at most 48 mA to hold that', () => {
  expect(levels(id, 'output-low')).toEqual([[3, undefined, 0.006, { typ: 0.3 }]]);
  expect(levels(id, 'output-high')).toEqual([[3, undefined, 0.006, { typ: 2.7 }]]);
  for (const direction of ['source', 'sink'])
    expect(limits(id, 'each-pin', direction, 'characterised')).toEqual([[0.006, {}]]);
  expect(limits(id, 'all-pins', 'either', 'characterised')).toEqual([[0.048, {}]]);
});

test('absolute maximum ratings: 4.1 V, 2 mA of diode current at any pin; no limit of a pin or of the supply pins', () => {
  expect(bounds(at(id, 'supply', 'absolute'), 'voltage')).toEqual({ max: 4.1 });
  expect(limits(id, 'each-pin', 'injected', 'absolute')).toEqual([[0.002, {}]]);
  expect(limits(id, 'each-pin', 'source', 'absolute')).toEqual([]);
  expect(limits(id, 'supply-pins', 'source', 'absolute')).toEqual([]);
});

test('inputs: VIT− from 0.25 and VIT+ up to 0.75 of the supply, pulls of 20, 35, 50 kΩ, 50 nA of leakage', () => {
  expect(bounds(at(id, 'thresholds', 0, 'low'), 'ratio')).toEqual({ max: 0.25 });
  expect(bounds(at(id, 'thresholds', 0, 'high'), 'ratio')).toEqual({ min: 0.75 });
  for (const pull of ['pull-up', 'pull-down'])
    expect(bounds(at(id, pull), 'resistance')).toEqual({ min: 20e3, typ: 35e3, max: 50e3 });
  expect(bounds(at(id, 'leakage'), 'current')).toEqual({ max: 50e-9 });
});

test('1.8 to 3.6 V; LPM0 56 µA, LPM3 0.5 and 0.7 µA; 4.3 mA at 16 MHz read off Figure 2', () => {
  expect(bounds(at(id, 'supply', 'operating'), 'voltage')).toMatchObject({ min: 1.8, max: 3.6 });
  expect(bounds(at(id, 'draws', 'active'), 'current')).toEqual({ typ: 0.0043 });
  expect(bounds(at(id, 'draws', 'idle'), 'current')).toEqual({ typ: 56e-6 });
  expect(bounds(at(id, 'draws', 'asleep'), 'current')).toEqual({ typ: 0.5e-6, max: 0.7e-6 });
});
