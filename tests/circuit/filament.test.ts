import { describe, expect, it } from 'vitest';
import { bendAt, branchConductance, branchCurrent } from '../../src/circuit/branch.js';
import { filamentVoltage } from '../../src/circuit/filament.js';
import { fitJunction } from '../../src/circuit/junction.js';

const filament = { volts: 12, amps: 5 / 12 };
const branch = (resistance = 0) => ({ resistance, drop: 0, junctions: [], filament });
/** Slope by differences. */
const slopeOf = (of: Parameters<typeof branchCurrent>[0], volts: number): number =>
  (branchCurrent(of, volts + 1e-6) - branchCurrent(of, volts - 1e-6)) / 2e-6;

describe('a lamp', () => {
  it('takes its rated current at its rated voltage, and 68.3 % of it at half the voltage', () => {
    expect(branchCurrent(branch(), 12)).toBeCloseTo(5 / 12, 12);
    expect(branchCurrent(branch(), 6) / (5 / 12)).toBeCloseTo(0.5 ** 0.55, 12);
    expect(0.5 ** 0.55).toBeCloseTo(0.683, 3);
  });

  it('behind a resistor keeps what the resistor leaves', () => {
    const amps = branchCurrent(branch(10), 12);
    expect(10 * amps + filamentVoltage(filament, amps)).toBeCloseTo(12, 10);
  });

  it('conducts either way, unless something else blocks', () => {
    expect(branchCurrent(branch(10), -12)).toBeCloseTo(-branchCurrent(branch(10), 12), 12);
    expect(branchCurrent({ ...branch(10), drop: 0.7 }, -12)).toBe(0);
    const junctions = [fitJunction([{ current: 0.3, voltage: 0.9 }])];
    const amps = branchCurrent({ ...branch(10), junctions }, 12);
    expect(amps).toBeLessThan(branchCurrent(branch(10), 12));
    expect(branchCurrent({ ...branch(10), junctions }, -12)).toBe(0);
  });

  it.each([
    [0, 12],
    [0, 0.5],
    [10, 12],
    [10, -3],
  ])('has the slope of its law: %f Ω before it, at %f V', (ohms, volts) => {
    const amps = branchCurrent(branch(ohms), volts);
    expect(branchConductance(branch(ohms), volts, amps) / slopeOf(branch(ohms), volts)).toBeCloseTo(1, 4);
  });

  it('has a finite slope without any voltage', () => {
    expect(branchConductance(branch(), 0, 0)).toBeCloseTo(1000);
  });
});

describe('a constant power', () => {
  const power = (resistance: number, watts: number, least = 2.5) => ({
    resistance,
    drop: 0,
    junctions: [],
    power: { watts, least },
  });

  /**
   * The quadratic: V = (U + √(U² − 4·R·P)) / 2. 5 V, 0.5 Ω, 5 W: 4.4365 V and 1.1270 A; 12.5 W is the most that 0.5 Ω pass
   * on at 5 V, at 2.5 V and 5 A. (Arithmetic, no source.)
   */
  it('takes its power behind a resistance at the higher of two voltages', () => {
    expect(branchCurrent(power(0.5, 5), 5)).toBeCloseTo(1.127016654, 9);
    expect(branchCurrent(power(0.5, 12.5), 5)).toBeCloseTo(5, 6);
    expect(branchCurrent(power(0, 5), 5)).toBeCloseTo(1, 12);
  });

  it('takes more as its voltage falls, and no more than at half of what its feed stands at', () => {
    const of = power(0, 5);
    expect(branchCurrent(of, 4)).toBeCloseTo(1.25, 12);
    expect(branchCurrent(of, 2.5)).toBeCloseTo(2, 12);
    expect(branchCurrent(of, 1)).toBeCloseTo(2, 12);
  });

  it('has a falling slope', () => {
    for (const [ohms, volts] of [
      [0, 5],
      [0, 4],
      [0.5, 5],
    ] as const) {
      const of = power(ohms, 5);
      const amps = branchCurrent(of, volts);
      const slope = branchConductance(of, volts, amps);
      expect(slope).toBeLessThan(0);
      expect(slope / slopeOf(of, volts)).toBeCloseTo(1, 4);
    }
  });

  it('bends upwards', () => {
    const of = power(0, 5);
    const amps = branchCurrent(of, 5);
    expect(bendAt(of, amps, branchConductance(of, 5, amps))).toBeCloseTo((2 * 5) / 125, 9);
  });
});
