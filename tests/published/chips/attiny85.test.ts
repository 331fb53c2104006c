/** A second reading: ATtiny25/45/85 data sheet, Atmel, 2586Q, 08/2013, p. 161; automotive 7598I, 10/2012, p. 150, and 7598H, 07/2009, p. 151. */
import { expect, test } from 'vitest';
import { at, bounds, heldAt, levels, limits } from '../catalogue-figures.js';

const id = 'attiny85';

test('21.1 Absolute Maximum Ratings, p. 161: 40.0 mA an I/O pin, 200.0 mA on VCC and GND pins, 6.0 V', () => {
  for (const direction of ['source', 'sink'])
    expect(limits(id, 'each-pin', direction, 'absolute')).toEqual([[0.04, {}]]);
  expect(limits(id, 'supply-pins', 'source', 'absolute')).toEqual([[0.2, {}]]);
  expect(limits(id, 'ground-pins', 'sink', 'absolute')).toEqual([[0.2, {}]]);
  expect(bounds(at(id, 'supply', 'absolute'), 'voltage')).toEqual({ max: 6 });
});

test('7598H, Table 22-1, notes 4 and 5, p. 151: all ports together sink at most 60 mA and source at most 60 mA', () => {
  expect(limits(id, 'all-pins', 'source', 'operating')).toEqual([[0.06, {}]]);
  expect(limits(id, 'all-pins', 'sink', 'operating')).toEqual([[0.06, {}]]);
});

test('2586Q, Table 21-1, p. 161: VOL at most 0.6 V at 10 mA and 5 V, 0.5 V at 5 mA and 3 V', () => {
  expect(levels(id, 'output-low')).toEqual([
    [5, undefined, 0.01, { max: 0.6 }],
    [3, undefined, 0.005, { max: 0.5 }],
  ]);
  expect(heldAt(id, 'each-pin', 'sink', 'characterised', 5)).toEqual([0.01]);
});

test('7598I, Table 22-1, p. 150: VOH at least 4.1 V at 8 mA and 5 V, 2.3 V at 5 mA and 3 V', () => {
  expect(levels(id, 'output-high')).toEqual([
    [5, undefined, 0.008, { min: 4.1 }],
    [3, undefined, 0.005, { min: 2.3 }],
  ]);
  expect(heldAt(id, 'each-pin', 'source', 'characterised', 5)).toEqual([0.008]);
  for (const direction of ['source', 'sink'])
    expect(heldAt(id, 'each-pin', direction, 'characterised', 3)).toEqual([0.005]);
});

test('7598I, p. 150: PB5 is weak, VOL1 at most 0.6 V at 1 mA, VOH1 at least 3.2 V at 200 µA and 5 V', () => {
  expect(levels(id, 'output-low', ['PB5'])).toEqual([[5, undefined, 0.001, { max: 0.6 }]]);
  expect(levels(id, 'output-high', ['PB5'])).toEqual([[5, undefined, 0.0002, { min: 3.2 }]]);
  expect(limits(id, { each: ['PB5'] }, 'source', 'characterised')).toEqual([[0.0002, {}]]);
  expect(limits(id, { each: ['PB5'] }, 'sink', 'characterised')).toEqual([[0.001, {}]]);
});

test('7598H, p. 151: 5 mA typically and 10 mA at most at 8 MHz and 5 V; idle 1.2 and 2 mA; asleep at 3 V 2 and 24 µA', () => {
  expect(bounds(at(id, 'draws', 'active'), 'current')).toEqual({ typ: 0.005, max: 0.01 });
  expect(bounds(at(id, 'draws', 'idle'), 'current')).toEqual({ typ: 0.0012, max: 0.002 });
  expect(bounds(at(id, 'draws', 'asleep'), 'current')).toEqual({ typ: 2e-6, max: 24e-6 });
});

/** ATtiny24/44/84 data sheet, Atmel, 8006H, 10/2009, Table 20-1, p. 174; VIH also 2586Q, p. 161. */
test('reads 0.2 and 0.7 of its supply below 2.4 V, 0.3 and 0.6 above; pulls of 20 to 50 kΩ; leaks 1 µA', () => {
  const shares = [0, 1].map((row) => [
    bounds(at(id, 'thresholds', row, 'low'), 'ratio').max,
    bounds(at(id, 'thresholds', row, 'high'), 'ratio').min,
  ]);
  expect(shares).toEqual([
    [0.2, 0.7],
    [0.3, 0.6],
  ]);
  expect(bounds(at(id, 'pull-up'), 'resistance')).toMatchObject({ min: 20e3, max: 50e3 });
  expect(bounds(at(id, 'leakage'), 'current')).toEqual({ max: 1e-6 });
});

/** 2586Q, Table 20-4, p. 148: all three BODLEVEL fuses are unprogrammed as delivered; Table 21-7, p. 166: 111 is off. */
test('as delivered no brown-out detector watches its supply', () => {
  expect(at(id, 'brown-out')).toBeUndefined();
});
