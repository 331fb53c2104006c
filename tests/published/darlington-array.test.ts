/** Darlington arrays against published figures and worked examples. */
import { describe, expect, test } from 'vitest';
import { collectorVoltage } from '../../src/circuit/bipolar.js';
import { branchFlow } from '../../src/circuit/branch.js';
import { junctionTemperature } from '../../src/circuit/regulator.js';

/** Current through a resistance and a drop in series. */
const current = (volts: number, drop: number, ohms: number): number =>
  branchFlow({ resistance: ohms, drop, junctions: [] }, volts).current;

/**
 * "Checking my calculations", All About Circuits forum, 88868 (ULN2003A in DIP-16, STMicroelectronics): 360 Ω on 12 V, 4 of 7 on,
 * 0.9 V, 70 K/W, 70 °C, 150 °C. It prints 33.3 mA, 20 mW each, 80 mW together, and 1.14 W that may be lost. The currents and the
 * 1.14 W are right; 0.9 V · 33.3 mA are 30 mW, not 20. The verdict is the same.
 */
describe('four channels of 360 Ω on 12 V', () => {
  test('carry 33.3 mA each without the drop (printed), 30.8 mA with it (derived)', () => {
    expect(1000 * current(12, 0, 360)).toBeCloseTo(33.3, 1);
    expect(1000 * current(12, 0.9, 360)).toBeCloseTo(30.83, 2);
  });

  test('lose 111 mW together, not the printed 80 (derived)', () => {
    expect(1000 * 4 * 0.9 * current(12, 0.9, 360)).toBeCloseTo(111, 0);
    expect(1000 * 0.9 * current(12, 0, 360)).toBeCloseTo(30, 0);
  });

  test('may lose 1.14 W together (printed), and are at 77.8 °C with what they do (derived)', () => {
    expect((150 - 70) / 70).toBeCloseTo(1.14, 2);
    expect(junctionTemperature(70, 70, 1.14)).toBeCloseTo(150, 0);
    expect(junctionTemperature(70, 70, 4 * 0.9 * current(12, 0.9, 360))).toBeCloseTo(77.77, 2);
  });
});

/**
 * Heat: P = Σ VOL·I, junction below 125 °C: ULN2803A, Texas Instruments, SLRS049G, p. 12, section 10.2.2. Saturation: ULN2003APG,
 * Toshiba, 2006-06-14, p. 4, at most 1.1 V at 100 mA and 1.3 V at 200 mA. 73 K/W: ULN2003A, Texas Instruments, SLRS027M, p. 4,
 * package D. The answers are derived.
 */
describe('an array in 50 °C at 73 K/W', () => {
  const hot = (channels: number, amps: number, volts: number): number =>
    junctionTemperature(50, 73, channels * amps * volts);

  test('is at 106.2 °C with 7 channels of 100 mA', () => {
    expect(hot(7, 0.1, 1.1)).toBeCloseTo(106.2, 1);
  });

  test('would be at 182.9 °C with 7 channels of 200 mA', () => {
    expect(hot(7, 0.2, 1.3)).toBeCloseTo(182.9, 1);
  });

  test('bears 3 channels of 200 mA below 125 °C and no more', () => {
    expect(hot(3, 0.2, 1.3)).toBeLessThan(125);
    expect(hot(4, 0.2, 1.3)).toBeGreaterThan(125);
  });

  test('bears 7 channels of 200 mA for 56 % of the time', () => {
    expect(hot(7 * 0.56, 0.2, 1.3)).toBeLessThan(125);
    expect(hot(7 * 0.57, 0.2, 1.3)).toBeGreaterThan(125);
  });
});

describe('an input of the 2.7 kΩ kind', () => {
  /** Two base-emitter drops of 0.65 V: from memory. */
  const drop = 2 * 0.65;

  test.each([
    // ULN2003APG, Toshiba, 2006-06-14, p. 4: typically 0.4 mA at 2.4 V.
    [2.4, 0.4],
    // ULN2803A, Texas Instruments, SLRS049E, 07/2006, p. 3: typically 0.93 mA at 3.85 V.
    [3.85, 0.93],
  ])('draws at %d V typically %d mA, to 2 %%', (volts, milliamps) => {
    expect(Math.abs((1000 * current(volts, drop, 2700)) / milliamps - 1)).toBeLessThan(0.02);
  });
});

/** ULN2003APG, Toshiba, 2006-06-14, p. 4: at most 1.6 V at 350 mA and 500 µA; gain at least 1000 at 2 V and 350 mA. */
describe('a Darlington channel at 350 mA', () => {
  const voltage = (base: number): number => collectorVoltage(0.35, base, 1.6, 0.35 / 500e-6, 1000, 2);

  test('has its published 1.6 V with 500 µA, and the 2 V of the gain with 350 µA', () => {
    expect(voltage(500e-6)).toBe(1.6);
    expect(voltage(350e-6)).toBeCloseTo(2, 12);
  });

  test('has 1.8 V halfway between, at a gain of 850', () => {
    expect(voltage(0.35 / 850)).toBeCloseTo(1.8, 12);
  });
});
