import { describe, expect, it } from 'vitest';
import { highestCoilVoltage } from '../../src/circuit/coil.js';
import { coilTemperature } from '../../src/circuit/copper.js';
import { releaseTime, storedEnergy } from '../../src/circuit/release.js';

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

describe('a winding whose switch opens', () => {
  it('has half of L times I squared stored', () => {
    expect(storedEnergy(0.1, 0.07)).toBeCloseTo(245e-6, 12);
  });

  /** The law against its own differential equation, stepped forward. */
  it.each([
    [0.1, 70, 0.0714, 0.0065, 0.8],
    [2.29, 275, 0.0436, 0.00436, 24.7],
    [0.3, 400, 0.03, 0.003, 0],
  ])('of %d H and %d Ω falls from %d A to %d A against %d V as its equation has it', (l, r, from, to, clamp) => {
    const step = 1e-7;
    let [amps, seconds] = [from, 0];
    while (amps > to) {
      // Midpoint rule.
      const middle = amps - ((r * amps + clamp) / l) * (step / 2);
      amps -= ((r * middle + clamp) / l) * step;
      seconds += step;
    }
    expect(Math.abs(releaseTime(l, r, from, to, clamp) - seconds)).toBeLessThan(2 * step);
  });

  it('lets go at once where its current is below that already', () => {
    expect(releaseTime(0.1, 70, 0.005, 0.0065, 0.8)).toBe(0);
  });
});
