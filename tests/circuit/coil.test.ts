import { describe, expect, it } from 'vitest';
import { highestCoilVoltage } from '../../src/circuit/coil.js';
import { coilTemperature } from '../../src/circuit/copper.js';

describe('the highest voltage of a coil', () => {
  it.each([
    [100, 20, 100, 90],
    [70, 45, 60, 130],
    [360, -20, 40, 105],
  ])('of %d Ω in %d °C with %d K/W is the one that brings it to %d °C', (ohms, ambient, thermal, permitted) => {
    const volts = highestCoilVoltage(ohms, ambient, thermal, permitted);
    expect(coilTemperature(volts, ohms, ambient, thermal)).toBeCloseTo(permitted, 9);
  });

  it('is nothing where the ambient is that hot by itself', () => {
    expect(highestCoilVoltage(100, 90, 50, 85)).toBe(0);
  });

  it('goes from the reference temperature of its figures', () => {
    const volts = highestCoilVoltage(100, 25, 80, 85, 23);
    expect(coilTemperature(volts, 100, 25, 80, 23)).toBeCloseTo(85, 9);
  });
});
