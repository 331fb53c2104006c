/**
 * Copper wire against published tables and worked examples. Tables round to their last digit, so that is how near is near.
 */
import { describe, expect, it } from 'vitest';
import { ampacity } from '../../src/circuit/ampacity.js';
import { copperFactor } from '../../src/circuit/copper.js';
import { awgArea, awgDiameter, COPPER_RESISTIVITY, wireOhms } from '../../src/circuit/wire.js';

const FOOT = 0.3048;
const CIRCULAR_MIL = (Math.PI / 4) * 25.4e-6 ** 2;

describe('gauges of wire', () => {
  // Wire resistance table, Cirris Systems: diameter in mils, area in circular mils, ohms per 1000 ft at 20 °C.
  it.each([
    [12, 80.808, 6529.9, 1.588],
    [13, 71.901, 5178.4, 2.003],
    [14, 64.084, 4106.8, 2.525],
    [15, 57.068, 3256.7, 3.184],
    [16, 50.82, 2582.9, 4.016],
    [17, 45.257, 2048.2, 5.064],
    [18, 40.303, 1624.3, 6.385],
    [19, 35.89, 1288.1, 8.051],
    [20, 31.961, 1021.5, 10.15],
    [22, 25.347, 642.4, 16.14],
    [23, 22.571, 509.45, 20.36],
    [24, 20.1, 404.01, 25.67],
    [25, 17.9, 320.4, 32.37],
    [26, 15.94, 254.1, 40.81],
    [27, 14.195, 201.5, 51.47],
    [28, 12.641, 159.79, 64.9],
    [29, 11.257, 126.72, 81.83],
    [30, 10.025, 100.5, 103.2],
  ])('AWG %i is %d mils thick, has %d circular mils and %d Ω in 1000 ft', (gauge, mils, area, ohms) => {
    // The table's 71.901 for number 13 is a slip of a digit: the 5178.4 circular mils beside it are 71.961 squared.
    expect(Math.abs(awgDiameter(gauge) / 25.4e-6 / mils - 1)).toBeLessThan(1e-3);
    expect(awgArea(gauge) / CIRCULAR_MIL / area).toBeCloseTo(1, 2);
    expect(Math.abs(wireOhms(1000 * FOOT, awgArea(gauge)) / ohms - 1)).toBeLessThan(1e-3);
  });

  // NBS Circular 31, "Copper wire tables", Bureau of Standards, 3rd edition 1914, part 1, section II 2: number 36 has 5 mils,
  // number 0000 has 460 mils.
  it('number 36 has exactly 5 mils, number 0000 has 460', () => {
    expect(awgDiameter(36)).toBeCloseTo(5 * 25.4e-6, 12);
    expect(awgDiameter(-3) / 25.4e-6).toBeCloseTo(460, 9);
  });

  // The same circular, "Wire table short cuts": three numbers down double the section, six the diameter.
  it('three numbers down double the section, six the diameter, both but for a quarter of a per cent', () => {
    expect(awgArea(21) / awgArea(24)).toBeCloseTo(2, 1);
    expect(awgDiameter(18) / awgDiameter(24)).toBeCloseTo(2.005, 4);
  });

  // NBS Handbook 100, "Copper wire tables", National Bureau of Standards, 1966: 0.15328 Ω·g/m² and 8.89 g/cm³ at 20 °C.
  it('annealed copper has 1/58 Ω·mm²/m, as the mass resistivity over the density comes to', () => {
    expect(COPPER_RESISTIVITY / ((0.15328 / 8.89) * 1e-6)).toBeCloseTo(1, 4);
  });
});

describe('voltage lost in a wire', () => {
  // "Voltage loss in wire runs" (a calculator's worked example): AWG 18, 100 ft there and 100 ft back, 1 A: 1.277 V.
  it('is 1.277 V at 1 A over 100 ft of a pair of AWG 18', () => {
    expect(2 * wireOhms(100 * FOOT, awgArea(18))).toBeCloseTo(1.277, 3);
  });

  // "Calculating voltage drop on 12 volt", 2010: AWG 16, 20 m one way, 1 A, with copper of 0.01785 Ω·mm²/m and 1.3 mm²:
  // 0.549 V. Its copper is 3.5 % worse than the standard's, so that is taken off here.
  it('is 0.549 V over 20 m of a pair of 1.3 mm² and 1 A, with the copper of that example', () => {
    expect((2 * wireOhms(20, 1.3e-6) * 0.01785) / (1 / 58)).toBeCloseTo(0.549, 3);
  });

  // "dc7800 Series Business Desktop Computers, Technical Reference Guide", Hewlett-Packard, Table 5-9 (after the USB 2.0
  // specification): the most that a metre of one power conductor may have, and the longest cable, by gauge. Those figures
  // are for stranded tinned wire: 7 to 9 % above plain copper of the gauge, which is what the assumption says.
  it.each([
    [20, 0.036, 5],
    [22, 0.057, 3.03],
    [24, 0.091, 2.08],
    [26, 0.145, 1.31],
    [28, 0.232, 0.81],
  ])('of a USB cable of AWG %i: plain copper has no more than %d Ω a metre, %d m at most', (gauge, ohms, longest) => {
    const plain = wireOhms(1, awgArea(gauge));
    expect(ohms / plain).toBeGreaterThan(1.07);
    expect(ohms / plain).toBeLessThan(1.095);
    // 0.19 Ω each way in the longest cable: at 500 mA less than the 125 mV a conductor that the specification leaves.
    expect(0.5 * plain * longest).toBeLessThan(0.125);
    expect(0.5 * ohms * longest).toBeLessThan(0.125);
  });

  // By hand: 2 m of AWG 28 and back have 4 m x 0.2129 Ω/m = 0.852 Ω at 20 °C, and 294.5 / 254.5 of that at 60 °C.
  it('grows with the temperature as copper does', () => {
    const cold = 2 * wireOhms(2, awgArea(28));
    expect(cold).toBeCloseTo(0.8517, 4);
    expect(cold * copperFactor(60)).toBeCloseTo(0.9855, 4);
  });
});

describe('what a wire may carry', () => {
  // Handbook of Electronic Tables and Formulas for American Wire Gauge, as many print it: 'maximum amps for chassis wiring'.
  it.each([
    [10, 55],
    [12, 41],
    [14, 32],
    [16, 22],
    [18, 16],
    [20, 11],
    [22, 7],
    [24, 3.5],
    [26, 2.2],
    [28, 1.4],
    [30, 0.86],
  ])('AWG %i alone in free air: %d A', (gauge, amps) => {
    expect(ampacity(awgArea(gauge), false)).toBeCloseTo(amps, 9);
  });

  // The same handbook's rows between: 11: 47, 13: 35, 15: 28 A. Straight lines on logarithmic scales come near.
  it.each([
    [11, 47],
    [13, 35],
  ])('AWG %i, which no row of ours states: %d A', (gauge, amps) => {
    expect(Math.abs(ampacity(awgArea(gauge), false) / amps - 1)).toBeLessThan(0.05);
  });

  // ARRL Handbook, copper wire table, bundled column (after MIL-W-5088); the thin gauges after the table printed beside it.
  it.each([
    [10, 33],
    [12, 23],
    [14, 17],
    [16, 13],
    [18, 10],
    [20, 7.5],
    [22, 5],
    [24, 2],
    [30, 0.7],
  ])('AWG %i among others: %d A', (gauge, amps) => {
    expect(ampacity(awgArea(gauge), true)).toBeCloseTo(amps, 9);
  });

  it('never falls with the thickness, is less in a bundle, and is on the safe side beyond the table', () => {
    for (let gauge = 40; gauge > 0; gauge -= 0.25) {
      const [thin, thick] = [awgArea(gauge), awgArea(gauge - 0.25)];
      for (const bundled of [true, false])
        expect(ampacity(thick, bundled)).toBeGreaterThanOrEqual(ampacity(thin, bundled));
      expect(ampacity(thin, true)).toBeLessThan(ampacity(thin, false));
    }
    expect(ampacity(awgArea(36), false)).toBeLessThan(0.86 * (awgArea(36) / awgArea(30)) * 1.001);
    expect(ampacity(awgArea(2), false)).toBe(55);
  });
});
