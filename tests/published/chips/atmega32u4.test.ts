/** A second reading: ATmega16U4/ATmega32U4 data sheet, Atmel, 7766F, 11/2010, section 29 and p. 379; 7766J, 04/2016, pp. 53 and 386. */
import { expect, test } from 'vitest';
import { at, bounds, heldAt, levels, limits, pinsInOrder, sums } from '../catalogue-figures.js';

const id = 'atmega32u4';

test('29.1 Absolute Maximum Ratings: 40.0 mA an I/O pin, 200.0 mA on VCC and GND pins', () => {
  for (const direction of ['source', 'sink'])
    expect(limits(id, 'each-pin', direction, 'absolute')).toEqual([[0.04, {}]]);
  expect(limits(id, 'supply-pins', 'source', 'absolute')).toEqual([[0.2, {}]]);
  expect(limits(id, 'ground-pins', 'sink', 'absolute')).toEqual([[0.2, {}]]);
});

test('29.2: VOL at most 0.7 V and VOH at least 4.2 V at 10 mA and 5 V; 0.5 V and 2.3 V at 5 mA and 3 V', () => {
  expect(levels(id, 'output-low')).toEqual([
    [5, undefined, 0.01, { max: 0.7 }],
    [3, undefined, 0.005, { max: 0.5 }],
  ]);
  expect(levels(id, 'output-high')).toEqual([
    [5, undefined, 0.01, { min: 4.2 }],
    [3, undefined, 0.005, { min: 2.3 }],
  ]);
});

test('its outputs are characterised to half of what those of the ATmega328P are', () => {
  for (const direction of ['source', 'sink'])
    for (const [volts, amps] of [
      [5, 0.01],
      [3, 0.005],
    ] as const) {
      expect(heldAt(id, 'each-pin', direction, 'characterised', volts)).toEqual([amps]);
      expect(heldAt('atmega328p', 'each-pin', direction, 'characterised', volts)).toEqual([2 * amps]);
    }
});

/** Printed: A0-A7, G2, C4-C7; C0-C3, G0-G1, D0-D7; G3-G5, B0-B7, E0-E7; F0-F7. What is not on the 44-pin chip is left out. */
test('notes 3 and 4, p. 379: four sets of ports, 100 mA each, both ways', () => {
  for (const direction of ['source', 'sink'])
    expect(sums(id, direction)).toEqual([
      [pinsInOrder(['PC6', 'PC7']), 0.1],
      [pinsInOrder(['PD0..PD7']), 0.1],
      [pinsInOrder(['PB0..PB7', 'PE2', 'PE6']), 0.1],
      [pinsInOrder(['PF0', 'PF1', 'PF4..PF7']), 0.1],
    ]);
  expect((at(id, 'pins') as string[]).length).toBe(2 + 8 + 10 + 6);
});

test('p. 379: 10 mA typically and 15 mA at most at 8 MHz and 5 V, 6 mA at most when idle', () => {
  expect(bounds(at(id, 'draws', 'active'), 'current')).toEqual({ typ: 0.01, max: 0.015 });
  expect(bounds(at(id, 'draws', 'idle'), 'current')).toEqual({ max: 0.006 });
});

/** As delivered BODLEVEL is 011 (7766F, Table 28-3, p. 347). */
test('7766J, Table 8-1, p. 53: BODLEVEL 011 resets at 2.4, 2.6, 2.8 V; p. 386: 2.7 to 5.5 V', () => {
  expect(bounds(at(id, 'brown-out'), 'voltage')).toMatchObject({ min: 2.4, typ: 2.6, max: 2.8 });
  expect(bounds(at(id, 'supply', 'operating'), 'voltage')).toMatchObject({ min: 2.7, max: 5.5 });
});

/** ATmega8U2/16U2/32U2 data sheet, Atmel, 7799D, 11/2010, p. 264. */
test('its sister reads 0.8 V and 2 V from 2.7 to 5.5 V, leaks 1 µA, pulls up with 20 to 50 kΩ, bears 6.0 V', () => {
  expect(bounds(at(id, 'thresholds', 0, 'low'), 'voltage')).toEqual({ max: 0.8 });
  for (const row of [0, 1]) expect(bounds(at(id, 'thresholds', row, 'high'), 'voltage')).toEqual({ min: 2 });
  expect(bounds(at(id, 'leakage'), 'current')).toEqual({ max: 1e-6 });
  expect(bounds(at(id, 'pull-up'), 'resistance')).toMatchObject({ min: 20e3, max: 50e3 });
  expect(bounds(at(id, 'supply', 'absolute'), 'voltage')).toEqual({ max: 6 });
});
