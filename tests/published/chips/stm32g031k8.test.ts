/** STM32G031x4/x6/x8 data sheet, STMicroelectronics, DS12992 Rev 2, April 2020, tables 12, 18 to 21, 25, 29, 50, 51, 53, 80. */
import { expect, test } from 'vitest';
import { at, bounds, levels, limits, value } from '../catalogue-figures.js';

const ID = 'stm32g031k8';

test('Table 19: 15 mA a pin, 20 mA sunk by FT_f pins; 100 mA into VDD and out of VSS; 80 mA of all I/O pins', () => {
  for (const direction of ['source', 'sink']) {
    expect(limits(ID, 'each-pin', direction, 'absolute')).toEqual([[0.015, {}]]);
    expect(limits(ID, 'all-pins', direction, 'absolute')).toEqual([[0.08, {}]]);
  }
  expect(limits(ID, { each: ['PA9', 'PA10', 'PB6..PB9'] }, 'sink', 'absolute')).toEqual([[0.02, {}]]);
  expect(limits(ID, 'supply-pins', 'source', 'absolute')).toEqual([[0.1, {}]]);
  expect(limits(ID, 'ground-pins', 'sink', 'absolute')).toEqual([[0.1, {}]]);
});

test('Table 53: 0.4 V at 6 mA and 1.3 V at 15 mA from 2.7 V on; at 3 mA 0.4 V low and 0.45 V lost high from 1.62 V on', () => {
  expect(levels(ID, 'output-low')).toEqual([
    [3.3, undefined, 0.006, { max: 0.4 }],
    [3.3, undefined, 0.015, { max: 1.3 }],
    [1.8, undefined, 0.003, { max: 0.4 }],
  ]);
  const lost = levels(ID, 'output-high').map(([supply, , amps, { min }]) => [
    amps,
    Math.round((supply! - min!) * 100) / 100,
  ]);
  expect(lost).toEqual([
    [0.006, 0.4],
    [0.015, 1.3],
    [0.003, 0.45],
  ]);
});

test('tables 21, 18, 51: 1.7 to 3.6 V, at most 4.0 V; reads 0.3 and 0.7 of its supply; pulls of 25 to 55 kΩ', () => {
  expect(bounds(at(ID, 'supply', 'operating'), 'voltage')).toMatchObject({ min: 1.7, max: 3.6 });
  expect(bounds(at(ID, 'supply', 'absolute'), 'voltage')).toEqual({ max: 4 });
  expect(bounds(at(ID, 'thresholds', 0, 'low'), 'ratio')).toEqual({ max: 0.3 });
  expect(bounds(at(ID, 'thresholds', 0, 'high'), 'ratio')).toEqual({ min: 0.7 });
  for (const pull of ['pull-up', 'pull-down'])
    expect(bounds(at(ID, pull), 'resistance')).toEqual({ min: 25e3, typ: 40e3, max: 55e3 });
});

test('tables 25, 29, 80, 12: 5.2 mA, at most 7.6 mA; stop 1 takes 3.3 to 120 µA; 84 K/W; the debug interface pulls', () => {
  expect(bounds(at(ID, 'draws', 'active'), 'current')).toEqual({ typ: 0.0052, max: 0.0076 });
  const { typ, max } = bounds(at(ID, 'draws', 'asleep'), 'current');
  expect(typ).toBeCloseTo(3.3e-6, 12);
  expect(max).toBeCloseTo(120e-6, 12);
  expect(value(at(ID, 'thermal-resistance'), 'thermal-resistance')).toBe(84);
  expect([at(ID, 'at-boot', 'PA13'), at(ID, 'at-boot', 'PA14')]).toEqual(['pulled-up', 'pulled-down']);
});
