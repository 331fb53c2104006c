/** TPIC6B595 Power Logic 8-Bit Shift Register, Texas Instruments, SLIS032A, revised May 2005; in the catalogue as power-shift-register-8. */
import { expect, test } from 'vitest';
import { at, bounds, points, value } from '../catalogue-figures.js';

const ID = 'power-shift-register-8';

test('absolute maximum ratings: 150 mA of each output with all on, 50 V, 500 mA in avalanche, 150 °C', () => {
  expect(at(ID, 'channels')).toBe(8);
  expect(value(at(ID, 'channel-current'), 'current')).toBe(0.15);
  expect(value(at(ID, 'maximum-voltage'), 'voltage')).toBe(50);
  expect(value(at(ID, 'avalanche'), 'current')).toBe(0.5);
  expect(value(at(ID, 'maximum-junction'), 'temperature')).toBe(150);
});

test('on-resistance: typically 4.2 Ω at 25 °C, at most 9.5 Ω at 125 °C, at 100 mA', () => {
  for (const [amps, { typ, max }] of points(at(ID, 'saturation'), 'voltage', 'current')) {
    expect(typ! / amps!).toBeCloseTo(4.2, 9);
    expect(max! / amps!).toBeCloseTo(9.5, 9);
  }
});

test('leaks at most 8 µA at 40 V and 125 °C; 90 K/W in DW and 95 K/W in N', () => {
  expect(bounds(at(ID, 'leakage'), 'current').max).toBeCloseTo(8e-6, 12);
  expect(bounds(at(ID, 'thermal-resistance'), 'thermal-resistance')).toMatchObject({ min: 90, max: 95 });
});

test('logic on 4.5 to 5.5 V that reads low up to 15 % and high from 85 % of it (Recommended operating conditions, from memory)', () => {
  expect(bounds(at(ID, 'supply-voltage'), 'voltage')).toMatchObject({ min: 4.5, max: 5.5 });
  expect(bounds(at(ID, 'input-threshold'), 'ratio')).toMatchObject({ min: 0.15, max: 0.85 });
});
