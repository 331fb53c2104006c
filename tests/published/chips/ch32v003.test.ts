/** CH32V003 data sheet (Chinese edition), WCH, CH32V003DS0 V1.2, tables 3-1, 3-2, 3-6, 3-8, 3-16, 3-17. */
import { expect, test } from 'vitest';
import type { Fields } from '../../../src/catalogue/profile.js';
import { at, bounds, levels, limits, value } from '../catalogue-figures.js';

const ID = 'ch32v003';

test('Table 3-1: 20 mA a pin, 100 mA into VDD but 80 mA out of VSS, 4 mA pushed in, 5.5 V', () => {
  for (const direction of ['source', 'sink'])
    expect(limits(ID, 'each-pin', direction, 'absolute')).toEqual([[0.02, {}]]);
  expect(limits(ID, 'supply-pins', 'source', 'absolute')).toEqual([[0.1, {}]]);
  expect(limits(ID, 'ground-pins', 'sink', 'absolute')).toEqual([[0.08, {}]]);
  expect(limits(ID, 'each-pin', 'injected', 'absolute')).toEqual([[0.004, {}]]);
  expect(bounds(at(ID, 'supply', 'absolute'), 'voltage')).toEqual({ max: 5.5 });
});

test('Table 3-17: 0.4 V lost at 8 mA and 1.3 V at 20 mA, from 2.7 to 5.5 V, both ways', () => {
  const lost = levels(ID, 'output-high').map(([supply, , amps, { min }]) => [
    amps,
    Math.round((supply! - min!) * 100) / 100,
  ]);
  const low = levels(ID, 'output-low').map(([, , amps, { max }]) => [amps, max]);
  const rows = [
    [0.008, 0.4],
    [0.02, 1.3],
    [0.008, 0.4],
    [0.02, 1.3],
  ];
  expect([lost, low]).toEqual([rows, rows]);
});

test('Table 3-16: low up to 0.28 (VDD − 1.8) + 0.6 V, high from 0.41 (VDD − 1.8) + 1.3 V; pulls of 35 to 55 kΩ', () => {
  for (const row of at(ID, 'thresholds') as readonly Fields[]) {
    const volts = value(row['supply'], 'voltage')!;
    expect(bounds(row['low'], 'voltage').max).toBeCloseTo(0.28 * (volts - 1.8) + 0.6, 3);
    expect(bounds(row['high'], 'voltage').min).toBeCloseTo(0.41 * (volts - 1.8) + 1.3, 3);
  }
  for (const pull of ['pull-up', 'pull-down'])
    expect(bounds(at(ID, pull), 'resistance')).toEqual({ min: 35e3, typ: 45e3, max: 55e3 });
});

test('Table 3-4: reset at 2.30, 2.48, 2.66 V on the way down', () => {
  expect(bounds(at(ID, 'brown-out'), 'voltage')).toEqual({ min: 2.3, typ: 2.48, max: 2.66 });
});

test('tables 3-2, 3-6, 3-8: 2.7 to 5.5 V, 85 °C; 8.02 mA at 48 MHz and 5 V, 9.15 µA in standby', () => {
  expect(bounds(at(ID, 'supply', 'operating'), 'voltage')).toMatchObject({ min: 2.7, max: 5.5 });
  expect(value(at(ID, 'maximum-junction'), 'temperature')).toBe(85);
  expect(bounds(at(ID, 'draws', 'active'), 'current').typ).toBeCloseTo(0.00802, 9);
  expect(bounds(at(ID, 'draws', 'asleep'), 'current').typ).toBeCloseTo(9.15e-6, 12);
  expect((at(ID, 'pins') as string[]).length).toBe(18);
});
