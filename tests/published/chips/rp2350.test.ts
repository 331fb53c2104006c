/** A second reading: RP2350 Datasheet, Raspberry Pi Ltd, 2025, tables 1423, 1427, 1433, 1436, 1441, 1445, 1446. */
import { expect, test } from 'vitest';
import { at, bounds, levels, limits, value } from '../catalogue-figures.js';

const id = 'rp2350';

test('Table 1436: all GPIO together source at most 100 mA and sink at most 100 mA, twice what the RP2040 may', () => {
  for (const direction of ['source', 'sink']) {
    expect(limits(id, 'all-pins', direction, 'operating')).toEqual([[0.1, {}]]);
    expect(limits('rp2040', 'all-pins', direction, 'operating')).toEqual([[0.05, {}]]);
  }
});

test('14.9.4.1: drive settings of 2, 4, 8 and 12 mA, no hard limits; 14.8.2.1: 4 mA is the default', () => {
  const settings = (at(id, 'drive', 'settings') as string[]).map((text) => value(text, 'current'));
  expect(settings).toEqual([0.002, 0.004, 0.008, 0.012]);
  expect(value(at(id, 'drive', 'default'), 'current')).toBe(0.004);
  expect(limits(id, 'each-pin', 'source', 'characterised')).toEqual([[0.012, {}]]);
  expect(limits(id, 'each-pin', 'source', 'absolute')).toEqual([]);
});

test('Table 1436: VOH 2.62, 1.78, 1.24 V and VOL 0.5, 0.4, 0.3 V at 3.3, 2.5, 1.8 V, each at the current of its setting', () => {
  const rows = (volts: [number, number, number], bound: 'min' | 'max') =>
    [3.3, 2.5, 1.8].flatMap((supply, i) =>
      [0.002, 0.004, 0.008, 0.012].map((amps) => [supply, amps, amps, { [bound]: volts[i] }]),
    );
  expect(levels(id, 'output-high')).toEqual(rows([2.62, 1.78, 1.24], 'min'));
  expect(levels(id, 'output-low')).toEqual(rows([0.5, 0.4, 0.3], 'max'));
});

test('Table 1436 at 3.3 V: reads 0.8 and 2 V, pulls up with 32 to 86 kΩ and down with 36 to 113 kΩ, leaks 1 µA', () => {
  expect(bounds(at(id, 'thresholds', 0, 'low'), 'voltage')).toEqual({ max: 0.8 });
  expect(bounds(at(id, 'thresholds', 0, 'high'), 'voltage')).toEqual({ min: 2 });
  expect(bounds(at(id, 'pull-up'), 'resistance')).toMatchObject({ min: 32e3, max: 86e3 });
  expect(bounds(at(id, 'pull-down'), 'resistance')).toMatchObject({ min: 36e3, max: 113e3 });
  expect(bounds(at(id, 'leakage'), 'current')).toEqual({ max: 1e-6 });
});

test('tables 1441 and 1433: IOVDD 1.62 to 3.63 V, at most 3.63 V; 125 °C; Table 1427: pull-down at reset, 48 pins', () => {
  expect(bounds(at(id, 'supply', 'operating'), 'voltage')).toMatchObject({ min: 1.62, max: 3.63 });
  expect(bounds(at(id, 'supply', 'absolute'), 'voltage')).toEqual({ max: 3.63 });
  expect(value(at(id, 'maximum-junction'), 'temperature')).toBe(125);
  expect(at(id, 'at-boot', 'otherwise')).toBe('pulled-down');
  expect((at(id, 'pins') as string[]).length).toBe(48);
});

test('Table 1433: the fault-tolerant pins bear 5.5 V while powered; GPIO26 to 29 and 40 to 47, with analogue inputs, do not', () => {
  expect(at(id, 'limits', 3, 'applies-to')).toEqual({ each: ['GPIO0..GPIO25', 'GPIO30..GPIO39'] });
  expect(at(id, 'limits', 3, 'clamp')).toBe(false);
});

test('Table 1446: all supplies of hello_usb and of an idle USB boot; Table 1445: those of P1.7', () => {
  const micro = (...amps: number[]): number => amps.reduce((sum, each) => sum + each, 0) * 1e-6;
  expect(bounds(at(id, 'draws', 'active'), 'current').typ).toBeCloseTo(micro(14700, 216, 453, 22, 1, 570), 4);
  expect(bounds(at(id, 'draws', 'idle'), 'current').typ).toBeCloseTo(micro(6530, 220, 437, 22, 1, 375), 4);
  expect(bounds(at(id, 'draws', 'asleep'), 'current').typ).toBeCloseTo(micro(19, 0.5, 11, 22, 1, 3.5), 6);
});
