import { describe, expect, it } from 'vitest';
import type { Dimension } from '../../src/quantity/dimension.js';
import { formatInterval, formatValue } from '../../src/quantity/print.js';

describe('a value is printed to three significant digits in the unit that reads best', () => {
  const cases: readonly (readonly [number, Dimension, string])[] = [
    [0.0714, 'current', '71.4 mA'],
    [0.07071, 'current', '70.7 mA'],
    [5, 'voltage', '5.00 V'],
    [0.65, 'voltage', '650 mV'],
    [0, 'current', '0 A'],
    [-0, 'current', '0 A'],
    [0.9994, 'current', '999 mA'],
    [0.9996, 'current', '1.00 A'],
    [-0.0123, 'current', '-12.3 mA'],
    [-0.9996, 'current', '-1.00 A'],
    [3e-7, 'current', '300 nA'],
    [2e-15, 'current', '0.00200 pA'],
    [123_456, 'current', '123000 A'],
    [1000, 'resistance', '1.00 kΩ'],
    [999.6, 'resistance', '1.00 kΩ'],
    [0.47, 'resistance', '470 mΩ'],
    [4.7e6, 'resistance', '4.70 MΩ'],
    [0.25, 'power', '250 mW'],
    [-12.3, 'temperature', '-12.3 °C'],
    [85, 'temperature', '85.0 °C'],
    [125.4, 'temperature', '125 °C'],
    [0, 'temperature', '0 °C'],
    [25, 'temperature-difference', '25.0 K'],
    [90, 'thermal-resistance', '90.0 K/W'],
    [0.15, 'time', '150 ms'],
    [2.5e-6, 'time', '2.50 µs'],
    [90, 'time', '90.0 s'],
    [999.4, 'time', '999 s'],
    [1000, 'time', '16.7 min'],
    [3600, 'time', '1.00 h'],
    [9000, 'time', '2.50 h'],
    [86_400, 'time', '24.0 h'],
    [172_800, 'time', '2.00 days'],
    [1e7, 'time', '116 days'],
    [1e9, 'time', '31.7 years'],
    [0, 'time', '0 s'],
    [16e6, 'frequency', '16.0 MHz'],
    [490, 'frequency', '490 Hz'],
    [0.00047, 'capacitance', '470 µF'],
    [0.12, 'inductance', '120 mH'],
    [2e-9, 'charge', '2.00 nC'],
    [2, 'charge', '2.00 C'],
    [7200, 'charge', '2.00 Ah'],
    [720, 'charge', '200 mAh'],
    [0.005, 'energy', '5.00 mJ'],
    [1200, 'energy', '1.20 kJ'],
    [36_000, 'energy', '10.0 Wh'],
    [7.2e6, 'energy', '2.00 kWh'],
    [2, 'length', '2.00 m'],
    [0.51e-3, 'length', '510 µm'],
    [2.05e-7, 'area', '0.205 mm²'],
    [24, 'gauge', 'AWG 24'],
    [0.234, 'ratio', '23.4 %'],
    [4, 'ratio', '400 %'],
    [100, 'ratio', '100'],
    [0, 'ratio', '0 %'],
    [21_600, 'time-per-day', '6.00 h/day'],
    [1800, 'time-per-day', '30.0 min/day'],
    [0, 'time-per-day', '0 h/day'],
    [12, 'times-per-day', '12.0 /day'],
    [Infinity, 'time', '∞ years'],
    [-Infinity, 'voltage', '-∞ kV'],
  ];
  it.each(cases)('%d as %s is %j', (value, dimension, text) => {
    expect(formatValue(value, dimension)).toBe(text);
  });
});

describe('an interval is printed in the unit of its larger end', () => {
  const cases: readonly (readonly [number, number, Dimension, string])[] = [
    [0.0352, 0.0707, 'current', '35.2 to 70.7 mA'],
    [0.0714, 0.0714, 'current', '71.4 mA'],
    [0.07139, 0.07141, 'current', '71.4 mA'],
    [0, 0.0707, 'current', '0 to 70.7 mA'],
    [0, 0, 'current', '0 A'],
    [0.35, 1.2, 'current', '0.350 to 1.20 A'],
    [0.9996, 1.2, 'current', '1.00 to 1.20 A'],
    [-0.08, 0.02, 'current', '-80.0 to 20.0 mA'],
    [0.0707e-3, 0.0707, 'current', '0.0707 to 70.7 mA'],
    [2e-5, 0.1, 'current', '20.0 µA to 100 mA'],
    [1e-6, 0.0707, 'current', '1.00 µA to 70.7 mA'],
    [-40, 85, 'temperature', '-40.0 to 85.0 °C'],
    [0.234, 0.456, 'ratio', '23.4 to 45.6 %'],
    [0.5, 20, 'ratio', '0.500 to 20.0'],
    [22, 24, 'gauge', 'AWG 22 to AWG 24'],
    [24, 24, 'gauge', 'AWG 24'],
    [3600, Infinity, 'time', '1.00 h to ∞ years'],
  ];
  it.each(cases)('%d to %d as %s is %j', (min, max, dimension, text) => {
    expect(formatInterval({ min, max }, dimension)).toBe(text);
  });
});

it('throws for what is not a number, which only a fault of ours can make', () => {
  expect(() => formatValue(NaN, 'current')).toThrow(RangeError);
  expect(() => formatInterval({ min: 0, max: NaN }, 'current')).toThrow(RangeError);
  expect(() => formatInterval({ min: NaN, max: 0 }, 'current')).toThrow(RangeError);
});
