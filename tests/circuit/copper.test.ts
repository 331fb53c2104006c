import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { coilTemperature, copperFactor } from '../../src/circuit/copper.js';

const celsius = fc.double({ min: -60, max: 180, noNaN: true });

describe('copper', () => {
  test('has its own resistance at its reference temperature', () => {
    fc.assert(
      fc.property(celsius, (t) => {
        expect(copperFactor(t, t)).toBe(1);
      }),
    );
  });

  test('comes to the same resistance by any way', () => {
    fc.assert(
      fc.property(celsius, celsius, celsius, (a, b, c) => {
        expect(copperFactor(b, a) * copperFactor(c, b)).toBeCloseTo(copperFactor(c, a), 12);
      }),
    );
  });
});

describe('a coil at rest on a constant voltage', () => {
  const coil = fc.record({
    voltage: fc.double({ min: 0, max: 48, noNaN: true }),
    resistance: fc.double({ min: 20, max: 5000, noNaN: true }),
    ambient: fc.double({ min: -40, max: 85, noNaN: true }),
    thermal: fc.double({ min: 1, max: 200, noNaN: true }),
    reference: fc.constantFrom(20, 23, 25),
  });

  test('is as much warmer than its surroundings as the power it then takes makes it', () => {
    fc.assert(
      fc.property(coil, ({ voltage, resistance, ambient, thermal, reference }) => {
        const hot = coilTemperature(voltage, resistance, ambient, thermal, reference);
        const power = voltage ** 2 / (resistance * copperFactor(hot, reference));
        expect(Math.abs(ambient + thermal * power - hot)).toBeLessThan(1e-9);
      }),
    );
  });

  test('stays at ambient without a voltage', () => {
    expect(coilTemperature(0, 70, 25, 60)).toBeCloseTo(25, 12);
  });
});
