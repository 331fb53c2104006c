/** STM32F411xC STM32F411xE data sheet, STMicroelectronics, DS10314 Rev 8, January 2024, tables 11 to 14, 24, 28, 52 to 54, 86. */
import { expect, test } from 'vitest';
import type { Fields } from '../../../src/catalogue/profile.js';
import { at, bounds, levels, limits, value } from '../catalogue-figures.js';

const ID = 'stm32f411ce';

test('Table 12: 25 mA a pin; 160 mA into all VDD and out of all VSS pins, 100 mA of each of them; 120 mA of all I/O pins', () => {
  for (const direction of ['source', 'sink']) {
    expect(limits(ID, 'each-pin', direction, 'absolute')).toEqual([[0.025, {}]]);
    expect(limits(ID, 'all-pins', direction, 'absolute')).toEqual([[0.12, {}]]);
  }
  for (const [scope, direction] of [
    ['supply-pins', 'source'],
    ['ground-pins', 'sink'],
  ] as const) {
    const rows = (at(ID, 'limits') as readonly Fields[]).filter((row) => row['applies-to'] === scope);
    expect(rows.map((row) => [value(row[direction], 'current'), row['per']])).toEqual([
      [0.16, undefined],
      [0.1, 'pin'],
    ]);
  }
});

test('6.3.16: 3 mA at PC13 to PC15; 20 mA with relaxed levels', () => {
  expect(limits(ID, { each: ['PC13', 'PC14', 'PC15'] }, 'sink', 'operating')).toEqual([[0.003, {}]]);
  expect(limits(ID, 'each-pin', 'sink', 'characterised')).toEqual([[0.02, {}]]);
});

test('Table 54: 0.4 V lost at 8 mA and 1.3 V at 20 mA from 2.7 V on, 0.4 V at 6 mA from 1.8 V and at 4 mA from 1.7 V on', () => {
  const rows = [
    [3.3, 0.008, 0.4],
    [3.3, 0.02, 1.3],
    [1.8, 0.006, 0.4],
    [1.7, 0.004, 0.4],
  ] as const;
  expect(levels(ID, 'output-low')).toEqual(rows.map(([supply, amps, max]) => [supply, undefined, amps, { max }]));
  const lost = levels(ID, 'output-high').map(([supply, , amps, { min }]) => [
    supply,
    amps,
    Math.round((supply! - min!) * 100) / 100,
  ]);
  expect(lost).toEqual(rows);
});

test('tables 14, 11, 53: 1.7 to 3.6 V, at most 4.0 V; reads 0.3 and 0.7 of its supply; pulls of 30 to 50 kΩ; leaks 3 µA', () => {
  expect(bounds(at(ID, 'supply', 'operating'), 'voltage')).toMatchObject({ min: 1.7, max: 3.6 });
  expect(bounds(at(ID, 'supply', 'absolute'), 'voltage')).toEqual({ max: 4 });
  expect(bounds(at(ID, 'thresholds', 0, 'low'), 'ratio')).toEqual({ max: 0.3 });
  expect(bounds(at(ID, 'thresholds', 0, 'high'), 'ratio')).toEqual({ min: 0.7 });
  for (const pull of ['pull-up', 'pull-down'])
    expect(bounds(at(ID, pull), 'resistance')).toEqual({ min: 30e3, typ: 40e3, max: 50e3 });
  expect(bounds(at(ID, 'leakage'), 'current')).toEqual({ max: 3e-6 });
});

test('tables 24, 28, 86, 13: 20.4 mA, at most 32.3 mA, stopped 14 to 275 µA; 32 K/W; 130 °C', () => {
  expect(bounds(at(ID, 'draws', 'active'), 'current')).toEqual({ typ: 0.0204, max: 0.0323 });
  const { typ, max } = bounds(at(ID, 'draws', 'asleep'), 'current');
  expect([typ, max]).toEqual([14e-6, 275e-6]);
  expect(value(at(ID, 'thermal-resistance'), 'thermal-resistance')).toBe(32);
  expect(value(at(ID, 'maximum-junction'), 'temperature')).toBe(130);
});

test('6.3.5, Table 19: reset at typically 1.68 V on the way down', () => {
  expect(bounds(at(ID, 'brown-out'), 'voltage').typ).toBe(1.68);
});

test('its 48 pins leave 36 for signals, without PB11', () => {
  const pins = at(ID, 'pins') as string[];
  expect(pins.length).toBe(36);
  expect(pins).not.toContain('PB11');
});
