/** A second reading: SAM D21/DA1 Family Data Sheet, Microchip, DS40001882, sections 37.7 and 37.9.1 and GPIO clusters, on onlinedocs.microchip.com. */
import { expect, test } from 'vitest';
import { at, bounds, heldAt, levels, pinsInOrder, sums, value } from '../catalogue-figures.js';

const id = 'atsamd21';

test('37.9.1: 2 and 2.5 mA with the weak drive, 7 and 10 mA with the strong one from 3 V on, for 0.2 of the supply lost', () => {
  const lost = (name: 'output-high' | 'output-low', supply: number, drive: number) =>
    levels(id, name)
      .filter(([volts, strength]) => volts === supply && strength === drive)
      .map(([volts, , amps, { min, typ, max }]) => [
        amps,
        ...(name === 'output-high' ? [volts! - typ!, volts! - min!] : [typ!, max!]).map((v) => v / volts!),
      ]);
  for (const [name, supply, drive, amps] of [
    ['output-high', 3.3, 0.002, 0.002],
    ['output-low', 3.3, 0.002, 0.0025],
    ['output-high', 3.3, 0.007, 0.007],
    ['output-low', 3.3, 0.007, 0.01],
    ['output-high', 1.8, 0.002, 0.0007],
    ['output-low', 1.8, 0.002, 0.001],
    ['output-high', 1.8, 0.007, 0.002],
    ['output-low', 1.8, 0.007, 0.003],
  ] as const) {
    const [row] = lost(name, supply, drive);
    expect(row![0]).toBe(amps);
    expect(row![1]).toBeCloseTo(0.1, 6);
    expect(row![2]).toBeCloseTo(0.2, 6);
  }
  expect(heldAt(id, 'each-pin', 'source', 'characterised', 3.3)).toEqual([0.007]);
  expect(heldAt(id, 'each-pin', 'sink', 'characterised', 3.3)).toEqual([0.01]);
  expect(value(at(id, 'drive', 'default'), 'current')).toBe(0.002);
});

test('37.9.1: reads 0.3 and 0.55 of its supply from 2.7 V on, 0.25 and 0.7 below; pulls of 20, 40, 60 kΩ; leaks 1 µA', () => {
  const shares = [0, 1].map((row) => [
    bounds(at(id, 'thresholds', row, 'low'), 'ratio').max,
    bounds(at(id, 'thresholds', row, 'high'), 'ratio').min,
  ]);
  expect(shares).toEqual([
    [0.25, 0.7],
    [0.3, 0.55],
  ]);
  for (const pull of ['pull-up', 'pull-down'])
    expect(bounds(at(id, pull), 'resistance')).toEqual({ min: 20e3, typ: 40e3, max: 60e3 });
  expect(bounds(at(id, 'leakage'), 'current')).toEqual({ max: 1e-6 });
});

/** The table lists pins by package; 14 mA and 19.5 mA a cluster: a maker's guide to a board with this chip (SparkFun Electronics, 2019). */
test('GPIO clusters: seven of 64 pins, six of 48 pins, each with 14 mA of source and 19.5 mA of sink current', () => {
  const clusters = {
    '64-pin': [
      'PA30 PA31 PB30 PB31',
      'PA27 PA28 PB22 PB23',
      'PA16 PA17 PA18 PA19 PA20 PA21 PA22 PA23 PA24 PA25 PB16 PB17',
      'PA12 PA13 PA14 PA15 PB10 PB11 PB12 PB13 PB14 PB15',
      'PA08 PA09 PA10 PA11',
      'PA04 PA05 PA06 PA07 PB06 PB07 PB08 PB09',
      'PA00 PA01 PA02 PA03 PB00 PB01 PB02 PB03 PB04 PB05',
    ],
    '48-pin': [
      'PA30 PA31',
      'PA27 PA28 PB22 PB23',
      'PA12 PA13 PA14 PA15 PA16 PA17 PA18 PA19 PA20 PA21 PA22 PA23 PA24 PA25 PB10 PB11',
      'PA08 PA09 PA10 PA11',
      'PA04 PA05 PA06 PA07 PB08 PB09',
      'PA00 PA01 PA02 PA03 PB00 PB01 PB02 PB03 PB04 PB05',
    ],
    // From memory, but for the first.
    '32-pin': [
      'PA30 PA31',
      pinsInOrder(['PA08..PA11', 'PA14..PA19', 'PA22..PA25', 'PA27', 'PA28']),
      pinsInOrder(['PA00..PA07']),
    ],
  };
  for (const [name, pins] of Object.entries(clusters)) {
    expect(sums(id, 'source', { package: name })).toEqual(pins.map((list) => [list, 0.014]));
    expect(sums(id, 'sink', { package: name })).toEqual(pins.map((list) => [list, 0.0195]));
  }
  expect(clusters['64-pin'].join(' ').split(' ').sort()).toEqual([...(at(id, 'pins') as string[])].sort());
});

test('from memory: at most 3.8 V', () => {
  expect(bounds(at(id, 'supply', 'absolute'), 'voltage')).toEqual({ max: 3.8 });
});

test('37.7: 3.76 mA at most in an empty loop at 85 °C lies within what it draws', () => {
  const { min, max } = bounds(at(id, 'draws', 'active'), 'current');
  expect(min).toBeLessThan(3.48e-3);
  expect(max).toBeGreaterThan(3.76e-3);
});
