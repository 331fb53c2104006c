/**
 * Heat of linear regulators against published worked examples. `toBeCloseTo(x, n)` accepts what the source prints at the printed
 * precision.
 */
import { describe, expect, test } from 'vitest';
import { branchFlow } from '../../src/circuit/branch.js';
import { junctionTemperature, linearLoss } from '../../src/circuit/regulator.js';

const milliwatts = (input: number, output: number, current: number, quiescent = 0): number =>
  1000 * linearLoss(input, output, current, quiescent);

/** "78xx Series Resistor", a one-page note (scribd 134168407): 14 V to 5 V at 0.5 A in 25 °C, 4 and 50 K/W. */
describe('a 5 V regulator on 14 V', () => {
  const power = linearLoss(14, 5, 0.5, 0);

  test('loses 4.5 W and rises by 243 K to 268 °C without a heat sink', () => {
    expect(power).toBeCloseTo(4.5, 12);
    expect(junctionTemperature(0, 4 + 50, power)).toBeCloseTo(243, 9);
    expect(junctionTemperature(25, 4 + 50, power)).toBeCloseTo(268, 9);
  });

  test('rises by 18 K to 43 °C on an infinite one', () => {
    expect(junctionTemperature(0, 4, power)).toBeCloseTo(18, 9);
    expect(junctionTemperature(25, 4, power)).toBeCloseTo(43, 9);
  });

  test('behind 13 Ω leaves 3.25 W to the resistor, loses 1.25 W and is at 92.5 °C; together it is 4.5 W as before', () => {
    expect(branchFlow({ resistance: 13, drop: 7.5, junctions: [] }, 14).current).toBeCloseTo(0.5, 12);
    const own = linearLoss(7.5, 5, 0.5, 0);
    expect(own).toBeCloseTo(1.25, 12);
    expect(junctionTemperature(25, 54, own)).toBeCloseTo(92.5, 9);
    expect(own + 13 * 0.5 ** 2).toBeCloseTo(power, 12);
  });
});

describe('a regulator', () => {
  /** "How much power does LM7805 dissipate", question and answer (itecnotes); 20 K/W is a guess there. */
  test('of 15 V to 5 V at 0.2 A loses 2 W and is at 65 °C at 20 K/W', () => {
    expect(linearLoss(15, 5, 0.2, 0)).toBeCloseTo(2, 12);
    expect(junctionTemperature(25, 20, 2)).toBeCloseTo(65, 9);
  });

  /** "Would this component require a heat sink", electronics question 378762, two answers. */
  test('of 12 V to 5 V at 4 mA loses 28 mW in passing and 72 mW of its own 6 mA: 100 mW', () => {
    expect(milliwatts(12, 5, 0.004)).toBeCloseTo(28, 9);
    expect(milliwatts(12, 5, 0, 0.006)).toBeCloseTo(72, 9);
    expect(milliwatts(12, 5, 0.004, 0.006)).toBeCloseTo(100, 9);
    expect(junctionTemperature(0, 65, linearLoss(12, 5, 0.004, 0))).toBeCloseTo(1.82, 9);
    expect(junctionTemperature(25, 65, linearLoss(12, 5, 0.004, 0))).toBeCloseTo(27, 0);
  });

  /** "7805 voltage regulator overheating", All About Circuits forum, 72672. */
  test('of 12 V to 5 V at 0.208 A loses 1.46 W and is at 87.7 °C at 45 K/W in 22 °C', () => {
    expect(linearLoss(12, 5, 0.208, 0)).toBeCloseTo(1.46, 2);
    expect(junctionTemperature(22, 45, 1.46)).toBeCloseTo(87.7, 1);
  });

  /** "Experiment 7, heat development", F-Alpha.net: 9.0 V to 5.0 V at 0.50 A. */
  test('of 9 V to 5 V at 0.5 A loses 2.0 W', () => {
    expect(linearLoss(9, 5, 0.5, 0)).toBeCloseTo(2, 12);
  });

  /** TS2940, Taiwan Semiconductor, Version A07, p. 4: 800 mW + 36 mW = 836 mW (exactly 836.3). */
  test('of 3.3 V to 2.5 V at 1 A with 11 mA of its own loses 836 mW', () => {
    expect(milliwatts(3.3, 2.5, 1)).toBeCloseTo(800, 9);
    expect(milliwatts(3.3, 2.5, 0, 0.011)).toBeCloseTo(36, 0);
    expect(milliwatts(3.3, 2.5, 1, 0.011)).toBeCloseTo(836, 0);
  });

  /** TS2938, Taiwan Semiconductor, Version A07, p. 5: the same at 0.5 A. */
  test('of 3.3 V to 2.5 V at 0.5 A with 11 mA of its own loses 436 mW', () => {
    expect(milliwatts(3.3, 2.5, 0.5, 0.011)).toBeCloseTo(436, 0);
  });

  /** "Basics of LDO regulators", 4.2, Toshiba: inputs printed (150 °C, 600 mW at 25 °C); the answer is derived. */
  test('of 3.6 V to 1.8 V at 100 mA is at 77.5 °C in 40 °C where 600 mW are 125 K', () => {
    expect(junctionTemperature(40, (150 - 25) / 0.6, linearLoss(3.6, 1.8, 0.1, 0))).toBeCloseTo(77.5, 9);
  });

  /** "LDO FAQ 27", Toshiba: inputs printed; the answers are derived. */
  test('of 1.5 V to 1.0 V at 200 mA with 20 µA of its own loses 100.03 mW and is at 80.84 °C in 60 °C', () => {
    expect(milliwatts(1.5, 1, 0.2, 20e-6)).toBeCloseTo(100.03, 9);
    expect(junctionTemperature(60, (150 - 25) / 0.6, linearLoss(1.5, 1, 0.2, 20e-6))).toBeCloseTo(80.84, 2);
  });

  test('of 12 V to 5 V at 0.2 A with 5 mA of its own loses 1.46 W and is at 98 °C at 50 K/W in 25 °C (derived)', () => {
    expect(linearLoss(12, 5, 0.2, 0.005)).toBeCloseTo(1.46, 12);
    expect(junctionTemperature(25, 50, 1.46)).toBeCloseTo(98, 9);
  });
});

describe('how much a regulator may lose', () => {
  /**
   * TC1070/TC1071, TelCom Semiconductor, TC1071-01, 6/13/97, p. 5: 3.0 V +10 %, 2.7 V −0.5 %, 98 mA. Its line of figures has 40 mA
   * by mistake; the printed 60 mW belong to 98 mA. Exact: 60.1 and 318.2 mW, 5.93 V.
   */
  test('is 318 mW where 60 mW are lost; an input of 5.9 V would use it up', () => {
    const lowest = 2.7 * 0.995;
    expect(milliwatts(3 * 1.1, lowest, 0.098)).toBeCloseTo(60, 0);
    expect(junctionTemperature(55, 220, 0.318)).toBeCloseTo(125, 0);
    expect(junctionTemperature(55, 220, linearLoss(5.9, lowest, 0.098, 0))).toBeLessThan(125);
    expect(junctionTemperature(55, 220, linearLoss(6, lowest, 0.098, 0))).toBeGreaterThan(125);
    expect(milliwatts(5.93, lowest, 0.098)).toBeCloseTo(318, 0);
  });

  /** TC1108, Microchip, DS21357C, p. 4: 3.3 V +10 %, 2.7 V −0.5 %, 275 mA, 95 °C, 59 K/W: 260 and 508 mW, 4.6 V. */
  test('is 508 mW where 260 mW are lost; an input of 4.6 V would use it up', () => {
    const lowest = 2.7 * 0.995;
    expect(milliwatts(3.3 * 1.1, lowest, 0.275)).toBeCloseTo(260, -1);
    expect(junctionTemperature(95, 59, 0.508)).toBeCloseTo(125, 0);
    expect(milliwatts(4.6, lowest, 0.275)).toBeCloseTo(508, -2);
    expect(junctionTemperature(95, 59, linearLoss(4.5, lowest, 0.275, 0))).toBeLessThan(125);
    expect(junctionTemperature(95, 59, linearLoss(4.6, lowest, 0.275, 0))).toBeGreaterThan(125);
  });

  /**
   * "LDO FAQ 029", Nisshinbo Micro Devices: 125 °C, 40 K/W. It prints 1.68 V for 2.5 W / 1.5 A and 2.88 V for the input; exact are
   * 1.667 and 2.867 V, and the printed input is 20 mW over.
   */
  test('is 1.0 W in 85 °C and 2.5 W in 25 °C, and 1.2 V at 1.5 A come from less than 2.9 V', () => {
    expect(junctionTemperature(85, 40, 1)).toBe(125);
    expect(junctionTemperature(25, 40, 2.5)).toBe(125);
    expect(junctionTemperature(25, 40, linearLoss(2.867, 1.2, 1.5, 0))).toBeCloseTo(125, 0);
    expect(linearLoss(2.88, 1.2, 1.5, 0)).toBeCloseTo(2.5, 1);
  });

  /**
   * TS5213, Taiwan Semiconductor, p. 4: 455 mW at 220 K/W, 5 V, 80 mA, 1.8 mA of its own. It goes on with 445 mW and prints 10.33 V
   * for the input; exact is 10.45 V.
   */
  test('is 455 mW at 220 K/W, used up by 10.45 V; the printed 10.33 V use 445 mW', () => {
    expect(junctionTemperature(25, 220, 0.455)).toBeCloseTo(125, 0);
    expect(milliwatts(10.45, 5, 0.08, 0.0018)).toBeCloseTo(455, 0);
    expect(milliwatts(10.33, 5, 0.08, 0.0018)).toBeCloseTo(445, 0);
  });
});
