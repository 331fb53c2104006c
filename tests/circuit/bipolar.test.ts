import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { collectorVoltage, gainAt, leftForBase } from '../../src/circuit/bipolar.js';
import { fitJunction, junctionVoltage } from '../../src/circuit/junction.js';

describe('the minimum gain of a transistor', () => {
  test.each([
    [25, 100],
    [85, 100],
    [24, 99.5],
    [5, 90],
    [-40, 67.5],
  ])('at %d °C of a stated 100 is %d: 0.5 %% a kelvin less when cold, no more when warm', (celsius, gain) => {
    expect(gainAt(100, celsius)).toBeCloseTo(gain, 12);
  });

  test('is never nothing, however cold', () => {
    expect(gainAt(100, -273)).toBe(5);
  });
});

/** 0.3 V published at a gain of 10; at least 50 at 1 V. */
const voltage = (collector: number, base: number): number => collectorVoltage(collector, base, 0.3, 10, 50);

describe('the collector voltage of a transistor that is switched on', () => {
  test('is the published one up to the forced gain', () => {
    expect(voltage(0.1, 0.05)).toBe(0.3);
    expect(voltage(0.1, 0.01)).toBe(0.3);
  });

  test.each([
    [20, 0.3 + 0.7 * 0.25],
    [30, 0.65],
    [40, 0.3 + 0.7 * 0.75],
  ])('at a gain of %d is on the straight line to the voltage at which the gain is stated', (asked, volts) => {
    expect(voltage(0.1, 0.1 / asked)).toBeCloseTo(volts, 12);
  });

  test('is the voltage at which the gain is stated from the minimum gain on, and without a base current', () => {
    expect(voltage(0.1, 0.1 / 50)).toBeCloseTo(1, 12);
    expect(voltage(0.1, 0.1 / 80)).toBe(1);
    expect(voltage(0.1, 0)).toBe(1);
    expect(collectorVoltage(0.1, 0.1 / 80, 0.3, 10, 50, 5)).toBe(5);
  });

  test('is the published one without a collector current', () => {
    expect(voltage(0, 0)).toBe(0.3);
  });

  test('is never below the published one, even where the gain is stated at less', () => {
    expect(collectorVoltage(0.35, 0.35 / 800, 1.6, 700, 1000, 1)).toBe(1.6);
  });

  test('jumps where the minimum gain is not even the forced one', () => {
    expect(collectorVoltage(0.1, 0.1 / 11, 0.3, 10, 8)).toBe(1);
    expect(collectorVoltage(0.1, 0.1 / 9, 0.3, 10, 8)).toBe(0.3);
  });

  test('never falls when more collector current is asked of the same base current', () => {
    const amps = fc.double({ min: 1e-4, max: 1, noNaN: true });
    fc.assert(
      fc.property(amps, amps, fc.double({ min: 1e-5, max: 0.1, noNaN: true }), (a, b, base) => {
        const [low, high] = [voltage(Math.min(a, b), base), voltage(Math.max(a, b), base)];
        expect(high).toBeGreaterThanOrEqual(low);
        expect(low).toBeGreaterThanOrEqual(0.3);
        expect(high).toBeLessThanOrEqual(1);
      }),
    );
  });
});

describe('what leaks into a base with a resistor beside it', () => {
  const junction = fitJunction([{ current: 0.01, voltage: 0.75 }], { ideality: 1.2 });

  test('divides so that both stand at one voltage', () => {
    for (const leak of [1e-6, 30e-6, 60e-6, 1e-3]) {
      const base = leftForBase(leak, junction, 10e3);
      expect(base + junctionVoltage(junction, base) / 10e3).toBeCloseTo(leak, 12);
    }
  });

  test('hardly reaches the base while the resistor takes it at less than half a volt', () => {
    expect(leftForBase(40e-6, junction, 10e3)).toBeLessThan(1e-6);
    expect(leftForBase(1e-3, junction, 10e3)).toBeGreaterThan(0.9e-3);
  });
});
