/**
 * ULN2003A, Texas Instruments, SLRS027M, 2013, p. 4; ULN2003APG, Toshiba, 2006-06-14, p. 4; ULN2003A, onsemi, ULN2003A/D.
 * ULN2803A, Texas Instruments, SLRS049E, 2006, pp. 2 and 3.
 */
import { describe, expect, test } from 'vitest';
import { at, bounds, points, value } from '../catalogue-figures.js';

// The ratings and saturation of the seven-channel one are read a second time in parts.test.ts.
describe('ULN2803A', () => {
  const id = 'darlington-array-8';

  test('500 mA a channel, 2.5 A through the emitters together, 50 V, 30 V at an input, 500 mA through a clamp', () => {
    expect(at(id, 'channels')).toBe(8);
    expect(value(at(id, 'channel-current'), 'current')).toBe(0.5);
    expect(value(at(id, 'package-current'), 'current')).toBe(2.5);
    expect(value(at(id, 'maximum-voltage'), 'voltage')).toBe(50);
    expect(value(at(id, 'input-maximum'), 'voltage')).toBe(30);
    expect(value(at(id, 'clamp-current'), 'current')).toBe(0.5);
  });

  test('at most 1.1, 1.3 and 1.6 V at 100, 200 and 350 mA', () => {
    const most = points(at(id, 'saturation'), 'voltage', 'current').map(([amps, { max }]) => [amps, max]);
    expect(most).toEqual([
      [0.1, 1.1],
      [0.2, 1.3],
      [0.35, 1.6],
    ]);
  });
});

describe.each([
  ['ULN2003A', 'darlington-array-7'],
  ['ULN2803A', 'darlington-array-8'],
])('%s', (_, id) => {
  test('2.4, 2.7 and 3.0 V at an input are enough for 200, 250 and 300 mA; 3.85 V take 0.93 mA and at most 1.35 mA', () => {
    const enough = points(at(id, 'input-voltage'), 'voltage', 'current').map(([amps, { max }]) => [amps, max]);
    expect(enough).toEqual([
      [0.2, 2.4],
      [0.25, 2.7],
      [0.3, 3],
    ]);
    expect(points(at(id, 'input-current'), 'current', 'voltage')).toEqual([[3.85, { typ: 0.93e-3, max: 1.35e-3 }]]);
    expect(bounds(at(id, 'input-resistance'), 'resistance').typ).toBe(2700);
  });

  test('gain at least 1000; a clamp drops 1.7 V and at most 2.0 V at 350 mA', () => {
    expect(bounds(at(id, 'gain'), 'ratio')).toEqual({ min: 1000 });
    expect(points(at(id, 'clamp-forward-voltage'), 'voltage', 'current').at(-1)).toEqual([0.35, { typ: 1.7, max: 2 }]);
  });
});

test('ULN2003A: 67 K/W in DIP-16, 73 in SOIC-16; leaks 100 µA at 50 V and 85 °C', () => {
  expect(bounds(at('darlington-array-7', 'thermal-resistance'), 'thermal-resistance')).toMatchObject({
    min: 67,
    typ: 73,
  });
  expect(bounds(at('darlington-array-7', 'leakage'), 'current')).toEqual({ max: 100e-6 });
});

test('ULN2803A: 62.66 K/W in N, 73.14 in DW; leaks 50 µA', () => {
  expect(bounds(at('darlington-array-8', 'thermal-resistance'), 'thermal-resistance')).toMatchObject({
    typ: 63,
    max: 73,
  });
  expect(bounds(at('darlington-array-8', 'leakage'), 'current')).toEqual({ max: 50e-6 });
});
