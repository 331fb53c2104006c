/** ESP32-S3 Series Datasheet, Espressif Systems, v2.1, 2025, tables 2-1, 3-1, 5-1 to 5-4, 5-9; ESP32-S3-WROOM-1 Datasheet, v1.7, Table 6-4. */
import { expect, test } from 'vitest';
import { pinsIn } from '../../../src/catalogue/pin-range.js';
import { at, bounds, levels, limits, value } from '../catalogue-figures.js';

const ID = 'esp32-s3';

test('Table 5-4: typically 40 mA sourced at 2.64 V and 28 mA sunk at 0.495 V, at the highest drive and 3.3 V', () => {
  expect(levels(ID, 'output-high')[0]).toEqual([3.3, 0.04, 0.04, { typ: 2.64 }]);
  expect(levels(ID, 'output-low')[0]).toEqual([3.3, 0.04, 0.028, { typ: 0.495 }]);
  expect(limits(ID, 'each-pin', 'source', 'characterised')).toEqual([[0.04, {}]]);
  expect(limits(ID, 'each-pin', 'sink', 'characterised')).toEqual([[0.028, {}]]);
});

test('Table 5-1: 1,500 mA of all pins together; no limit of a single pin', () => {
  expect(limits(ID, 'all-pins', 'source', 'absolute')).toEqual([[1.5, {}]]);
  expect(limits(ID, 'each-pin', 'source', 'absolute')).toEqual([]);
});

test('tables 5-1, 5-2: 3.0 to 3.6 V, and 3.6 V is the most', () => {
  expect(bounds(at(ID, 'supply', 'operating'), 'voltage')).toMatchObject({ min: 3, max: 3.6 });
  expect(bounds(at(ID, 'supply', 'absolute'), 'voltage')).toEqual({ max: 3.6 });
});

test('Table 5-4: reads 0.25 and 0.75 of its supply, pulls of 45 kΩ, leaks at most 50 nA', () => {
  expect(bounds(at(ID, 'thresholds', 0, 'low'), 'ratio')).toEqual({ max: 0.25 });
  expect(bounds(at(ID, 'thresholds', 0, 'high'), 'ratio')).toEqual({ min: 0.75 });
  for (const pull of ['pull-up', 'pull-down']) expect(bounds(at(ID, pull), 'resistance')).toEqual({ typ: 45e3 });
  expect(bounds(at(ID, 'leakage'), 'current')).toEqual({ max: 50e-9 });
});

test('Table 2-1: 20 mA is the drive that most pins start with; tables 3-1, 2-1: straps and their pulls; the flash has GPIO26 to 32', () => {
  expect(value(at(ID, 'drive', 'default'), 'current')).toBe(0.02);
  expect(Object.keys(at(ID, 'strapping') as object)).toEqual(['GPIO0', 'GPIO3', 'GPIO45', 'GPIO46']);
  const states = ['GPIO0', 'GPIO3', 'GPIO45', 'GPIO46'].map(
    (pin) => at(ID, 'at-boot', pin) ?? at(ID, 'at-boot', 'otherwise'),
  );
  expect(states).toEqual(['pulled-up', 'floating', 'pulled-down', 'pulled-down']);
  expect(Object.keys(at(ID, 'reserved') as object)).toEqual(pinsIn(['GPIO26..GPIO32']));
  expect((at(ID, 'pins') as string[]).length).toBe(45);
});

test('Table 6-4 of the module: 355 mA sending 802.11b, 297 mA 802.11g, 97 mA receiving; Table 5-2: a supply has to deliver 0.5 A; asleep 7 µA', () => {
  expect(bounds(at(ID, 'draws', 'peak'), 'current')).toEqual({ typ: 0.355, max: 0.5 });
  const { typ, max } = bounds(at(ID, 'draws', 'active'), 'current');
  expect(typ).toBe(0.097);
  expect(max).toBeCloseTo((0.097 + 0.297) / 2, 9);
  expect(bounds(at(ID, 'draws', 'idle'), 'current')).toMatchObject({ min: 0.0329, max: 0.0476 });
  expect(bounds(at(ID, 'draws', 'asleep'), 'current')).toEqual({ typ: 7e-6 });
});
