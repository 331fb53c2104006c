/** ESP32-C3 Series Datasheet, Espressif Systems, v2.3, tables 2-1, 2-2, 3-1, 5-1 to 5-4, 5-7 to 5-9. */
import { expect, test } from 'vitest';
import { pinsIn } from '../../../src/catalogue/pin-range.js';
import { at, bounds, levels, limits, value } from '../catalogue-figures.js';

const ID = 'esp32-c3';

test('Table 5-4: typically 40 mA sourced at 2.64 V and 28 mA sunk at 0.495 V, at the highest drive and 3.3 V', () => {
  expect(levels(ID, 'output-high')[0]).toEqual([3.3, 0.04, 0.04, { typ: 2.64 }]);
  expect(levels(ID, 'output-low')[0]).toEqual([3.3, 0.04, 0.028, { typ: 0.495 }]);
  expect(limits(ID, 'each-pin', 'source', 'characterised')).toEqual([[0.04, {}]]);
  expect(limits(ID, 'each-pin', 'sink', 'characterised')).toEqual([[0.028, {}]]);
});

test('Table 5-1: 1,000 mA of all pins together; no limit of a single pin', () => {
  expect(limits(ID, 'all-pins', 'source', 'absolute')).toEqual([[1, {}]]);
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

test('tables 2-1, 3-1: drive, straps, and the pins of the flash; 50 µs at GPIO18 (Table 2-2) move no coil', () => {
  expect(value(at(ID, 'drive', 'default'), 'current')).toBe(0.02);
  expect(Object.keys(at(ID, 'strapping') as object)).toEqual(['GPIO2', 'GPIO8', 'GPIO9']);
  expect(at(ID, 'at-boot', 'GPIO9')).toBe('pulled-up');
  expect(at(ID, 'at-boot', 'GPIO18') ?? at(ID, 'at-boot', 'otherwise')).toBe('floating');
  expect(at(ID, 'at-boot', 'GPIO21')).toBe('pulses');
  expect(Object.keys(at(ID, 'reserved') as object)).toEqual(pinsIn(['GPIO11..GPIO17']));
  expect(at(ID, 'pins')).toEqual(pinsIn(['GPIO0..GPIO21']));
});

test('Table 5-7: 335 mA sending 802.11b, 285 mA 802.11g, 87 mA receiving; Table 5-2: a supply has to deliver 0.5 A; tables 5-8, 5-9: asleep', () => {
  expect(bounds(at(ID, 'draws', 'peak'), 'current')).toEqual({ typ: 0.335, max: 0.5 });
  const { typ, max } = bounds(at(ID, 'draws', 'active'), 'current');
  expect(typ).toBe(0.087);
  expect(max).toBeCloseTo((0.087 + 0.285) / 2, 9);
  expect(bounds(at(ID, 'draws', 'idle'), 'current')).toMatchObject({ min: 0.016, max: 0.028 });
  expect(bounds(at(ID, 'draws', 'asleep'), 'current')).toEqual({ typ: 5e-6 });
});
