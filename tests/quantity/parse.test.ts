import { describe, expect, it } from 'vitest';
import type { Dimension } from '../../src/quantity/dimension.js';
import { parseQuantity } from '../../src/quantity/parse.js';
import type { Quantity } from '../../src/quantity/quantity.js';

const quantity = (text: string | number, dimension: Dimension): Quantity => {
  const parsed = parseQuantity(text, dimension);
  if ('problem' in parsed) throw new Error(`${parsed.problem}; expected ${parsed.expected}`);
  return parsed.quantity;
};

/** Bounds as [min, typ, max]; an open one is null. */
const bounds = (text: string | number, dimension: Dimension): readonly (number | null)[] => {
  const { min, typ, max } = quantity(text, dimension);
  return [min ?? null, typ ?? null, max ?? null];
};

describe('a figure without a tolerance is exact, in SI, to the last bit', () => {
  const cases: readonly (readonly [string | number, Dimension, number])[] = [
    ['5 V', 'voltage', 5],
    ['5V', 'voltage', 5],
    ['  5  V ', 'voltage', 5],
    ['-5 V', 'voltage', -5],
    ['+5 V', 'voltage', 5],
    ['.5 V', 'voltage', 0.5],
    ['650 mV', 'voltage', 0.65],
    ['330 mA', 'current', 0.33],
    ['71.4 mA', 'current', 0.0714],
    ['2 A', 'current', 2],
    ['1e-3 A', 'current', 0.001],
    ['1E3 mA', 'current', 1],
    ['100 uA', 'current', 0.0001],
    ['100 \u00b5A', 'current', 0.0001],
    ['100 \u03bcA', 'current', 0.0001],
    ['300 nA', 'current', 3e-7],
    ['5 pA', 'current', 5e-12],
    ['330 \u03a9', 'resistance', 330],
    ['330 \u2126', 'resistance', 330],
    ['330\u00a0Ω', 'resistance', 330],
    ['330 ohm', 'resistance', 330],
    ['330 ohms', 'resistance', 330],
    ['25 mΩ', 'resistance', 0.025],
    ['0 Ω', 'resistance', 0],
    ['10 kΩ', 'resistance', 10_000],
    ['10kΩ', 'resistance', 10_000],
    ['10 kohm', 'resistance', 10_000],
    ['2.2 MΩ', 'resistance', 2_200_000],
    ['10 Mohm', 'resistance', 10_000_000],
    ['400 mW', 'power', 0.4],
    ['25 °C', 'temperature', 25],
    ['25 degC', 'temperature', 25],
    ['25 C', 'temperature', 25],
    ['25 \u2103', 'temperature', 25],
    ['-40 °C', 'temperature', -40],
    ['\u221240 °C', 'temperature', -40],
    ['25 K', 'temperature-difference', 25],
    ['25 \u212a', 'temperature-difference', 25],
    ['90 K/W', 'thermal-resistance', 90],
    ['90 °C/W', 'thermal-resistance', 90],
    ['150 ms', 'time', 0.15],
    ['2 us', 'time', 2e-6],
    ['90 s', 'time', 90],
    ['5 min', 'time', 300],
    ['2.5 h', 'time', 9000],
    ['10 days', 'time', 864_000],
    ['1 day', 'time', 86_400],
    ['2 weeks', 'time', 1_209_600],
    ['2 years', 'time', 2 * 365.25 * 86_400],
    ['490 Hz', 'frequency', 490],
    ['1 kHz', 'frequency', 1000],
    ['16 MHz', 'frequency', 16e6],
    ['100 nF', 'capacitance', 1e-7],
    ['470 µF', 'capacitance', 0.00047],
    ['22 pF', 'capacitance', 22e-12],
    ['120 mH', 'inductance', 0.12],
    ['33 µH', 'inductance', 33e-6],
    ['10 nC', 'charge', 1e-8],
    ['5 C', 'charge', 5],
    ['2.2 Ah', 'charge', 7920],
    ['2000 mAh', 'charge', 7200],
    ['3 J', 'energy', 3],
    ['10 Wh', 'energy', 36_000],
    ['2 m', 'length', 2],
    ['30 cm', 'length', 0.3],
    ['5 mm', 'length', 0.005],
    ['6 ft', 'length', 1.8288],
    ['0.25 mm²', 'area', 2.5e-7],
    ['0.25 mm2', 'area', 2.5e-7],
    ['AWG 24', 'gauge', 24],
    ['24 AWG', 'gauge', 24],
    ['AWG24', 'gauge', 24],
    ['200 %', 'ratio', 2],
    ['20%', 'ratio', 0.2],
    ['0.85', 'ratio', 0.85],
    ['100', 'ratio', 100],
    [100, 'ratio', 100],
    [0.6, 'ratio', 0.6],
    ['6 h/day', 'time-per-day', 21_600],
    ['30 min/day', 'time-per-day', 1800],
    ['24 h/day', 'time-per-day', 86_400],
    ['12 /day', 'times-per-day', 12],
    ['12/day', 'times-per-day', 12],
  ];
  it.each(cases)('%j as %s is %d', (text, dimension, si) => {
    expect(quantity(text, dimension)).toEqual({
      dimension,
      min: si,
      typ: si,
      max: si,
      exact: true,
      stated: String(text),
    });
  });
});

describe('a tolerance, a window or named bounds give the bounds they say and leave the others open', () => {
  const cases: readonly (readonly [string, Dimension, number | null, number | null, number | null])[] = [
    ['5 V ±5 %', 'voltage', 4.75, 5, 5.25],
    ['5V±5%', 'voltage', 4.75, 5, 5.25],
    ['5 V +/-5 %', 'voltage', 4.75, 5, 5.25],
    ['5 V +/- 5%', 'voltage', 4.75, 5, 5.25],
    ['5 V +- 5%', 'voltage', 4.75, 5, 5.25],
    ['5 V +/\u22125 %', 'voltage', 4.75, 5, 5.25],
    ['12 V ±5 %', 'voltage', 11.4, 12, 12.6],
    ['12 V ±0.5 V', 'voltage', 11.5, 12, 12.5],
    ['12 V ±500 mV', 'voltage', 11.5, 12, 12.5],
    ['5 ±0.5 V', 'voltage', 4.5, 5, 5.5],
    ['-5 V ±5 %', 'voltage', -5.25, -5, -4.75],
    ['5 V +10 % -5 %', 'voltage', 4.75, 5, 5.5],
    ['5 V +10/-5 %', 'voltage', 4.75, 5, 5.5],
    ['5 V -5/+10 %', 'voltage', 4.75, 5, 5.5],
    ['12 V +0.5 V -0.3 V', 'voltage', 11.7, 12, 12.5],
    ['470 µF +80 % -20 %', 'capacitance', 0.000376, 0.00047, 0.000846],
    ['62 Ω ±10 %', 'resistance', 55.8, 62, 68.2],
    ['25 °C ±3 K', 'temperature', 22, 25, 28],
    ['25 °C ±3 °C', 'temperature', 22, 25, 28],
    ['25 K ±3 K', 'temperature-difference', 22, 25, 28],
    ['25 K ±3 °C', 'temperature-difference', 22, 25, 28],
    ['50 % ±10 %', 'ratio', 0.45, 0.5, 0.55],
    ['0.5 ±0.05', 'ratio', 0.45, 0.5, 0.55],
    ['4.75 to 5.25 V', 'voltage', 4.75, null, 5.25],
    ['4.75 V to 5.25 V', 'voltage', 4.75, null, 5.25],
    ['650 mV to 1.1 V', 'voltage', 0.65, null, 1.1],
    ['3.4 to 4.2 V typ 3.7 V', 'voltage', 3.4, 3.7, 4.2],
    ['-40 to 85 °C', 'temperature', -40, null, 85],
    ['\u221240 to +85 °C', 'temperature', -40, null, 85],
    ['15 to 85 %', 'ratio', 0.15, null, 0.85],
    ['18 / 20 / 25 mA', 'current', 0.018, 0.02, 0.025],
    ['18/20/25mA', 'current', 0.018, 0.02, 0.025],
    ['18 mA / 20 mA / 25 mA', 'current', 0.018, 0.02, 0.025],
    ['80 / 100 / 160 %', 'ratio', 0.8, 1, 1.6],
    ['2 / 4 / 6 h/day', 'time-per-day', 7200, 14_400, 21_600],
    ['2 / 4 / 6 /day', 'times-per-day', 2, 4, 6],
    ['typ 20 mA max 25 mA', 'current', null, 0.02, 0.025],
    ['min 18 mA typ 20 mA', 'current', 0.018, 0.02, null],
    ['min 18 typ 20 max 25 mA', 'current', 0.018, 0.02, 0.025],
    ['max 25 mA min 18 mA', 'current', 0.018, null, 0.025],
    ['typ 20 mA', 'current', null, 0.02, null],
    ['max 1.1 V', 'voltage', null, null, 1.1],
    ['min 4.2 V', 'voltage', 4.2, null, null],
    ['max -1 V', 'voltage', null, null, -1],
    ['min 100', 'ratio', 100, null, null],
    ['min 5 min max 10 min', 'time', 300, null, 600],
    ['AWG 22 to AWG 24', 'gauge', 22, null, 24],
    ['4k7 ±5 %', 'resistance', 4465, 4700, 4935],
    ['4k7 to 5k6', 'resistance', 4700, null, 5600],
    ['max R47', 'resistance', null, null, 0.47],
  ];
  it.each(cases)('%j as %s', (text, dimension, min, typ, max) => {
    expect(bounds(text, dimension)).toEqual([min, typ, max]);
    expect(quantity(text, dimension).exact).toBe(false);
  });
});

describe('the dimension decides what a symbol means', () => {
  it('reads m as metre or milli, C as coulomb or degree, min as minute or bound', () => {
    expect(bounds('5 m', 'length')).toEqual([5, 5, 5]);
    expect(bounds('5 mΩ', 'resistance')).toEqual([0.005, 0.005, 0.005]);
    expect(bounds('25 C', 'charge')).toEqual([25, 25, 25]);
    expect(bounds('25 C', 'temperature')).toEqual([25, 25, 25]);
    expect(bounds('min 5 s', 'time')).toEqual([5, null, null]);
    expect(bounds('5 min', 'time')).toEqual([300, 300, 300]);
  });

  it('keeps results of one text apart by dimension, and gives the same one again', () => {
    expect(parseQuantity('5 m', 'voltage')).toHaveProperty('problem');
    expect(parseQuantity('5 m', 'length')).toHaveProperty('quantity');
    expect(parseQuantity('5 m', 'length')).toBe(parseQuantity('5 m', 'length'));
  });

  it('forgets, rather than grow without bound', () => {
    const first = parseQuantity('1 m', 'length');
    for (let i = 2; i < 6000; i++) parseQuantity(`${i} m`, 'length');
    expect(parseQuantity('1 m', 'length')).not.toBe(first);
    expect(parseQuantity('1 m', 'length')).toEqual(first);
  });
});

describe('alternating and direct', () => {
  it.each([
    ['250 V AC', 'voltage', 250, 'AC'],
    ['250VAC', 'voltage', 250, 'AC'],
    ['24 V DC', 'voltage', 24, 'DC'],
    ['30 VDC ±10 %', 'voltage', 30, 'DC'],
    ['24 V ±10 % DC', 'voltage', 24, 'DC'],
    ['10 A AC', 'current', 10, 'AC'],
  ] as const)('%j says which', (text, dimension, typ, waveform) => {
    expect(quantity(text, dimension)).toMatchObject({ typ, waveform });
  });

  it('is left out when it was not said', () => {
    expect(quantity('24 V', 'voltage')).not.toHaveProperty('waveform');
  });
});
