/** Diodes behind resistors against published worked examples and an independent closed form. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { branchFlow } from '../../src/circuit/branch.js';
import { type Junction, fitJunction, junctionAt, junctionVoltage, thermalVoltage } from '../../src/circuit/junction.js';

/** A junction spelled out: n·kT/q in volts, saturation current in amperes, series resistance in ohms. */
const shockley = (slope: number, saturation: number, series: number): Junction => ({
  slope,
  logSaturation: Math.log(saturation),
  series,
  referenceCurrent: 1e-3,
  perKelvin: -0.002,
  referenceTemperature: 25,
});

/**
 * "lambert_w_diode.cpp", an example of Boost.Math (P. A. Bristow, J. Maddock, 2016), after T. C. Banwell and A. Jayakumar,
 * "Exact analytical solution for current flow through diode with series resistance", Electronics Letters 36(4), 291-292 (2000),
 * equation 4: a 2N2222 as a diode, 25 fA, 0.3 Ω, behind 249 Ω.
 */
describe('a diode behind a resistor', () => {
  // Their k of 1.38e-23, q of 1.6e-19 and 298 K.
  const slope = (1.38e-23 * 298) / 1.6e-19;
  const branch = { resistance: 249, drop: 0, junctions: [shockley(slope, 25e-15, 0.3)] };

  test('at 0.9 V carries 0.00108485 A, of which the logarithm is −6.82631 (printed)', () => {
    expect(slope).toBeCloseTo(0.0257025, 7);
    const { current } = branchFlow(branch, 0.9);
    expect(current).toBeCloseTo(0.00108485, 8);
    expect(Math.log(current)).toBeCloseTo(-6.82631, 5);
  });

  test('carries 0.001084851739 A, to the digits that were computed again (derived)', () => {
    expect(branchFlow(branch, 0.9).current).toBeCloseTo(0.001084851739, 12);
  });
});

/** W₀(e^x), by Newton's method on w + ln w = x: e^x itself overflows above 709. */
function lambertOfExp(x: number): number {
  let w = x > 1 ? x - Math.log(x) : Math.exp(Math.min(x, 0)) * 0.6;
  for (let k = 0; k < 200; k++) w = Math.max((w * (1 + x - Math.log(w))) / (1 + w), Number.MIN_VALUE);
  return w;
}

/** The same equation 4: I = (a/R)·W₀((Is·R/a)·exp((V + Is·R)/a)) − Is. The numbers are derived. */
describe('a diode behind any resistor', () => {
  const closedForm = (volts: number, ohms: number, slope: number, saturation: number): number =>
    (slope / ohms) * lambertOfExp(Math.log((saturation * ohms) / slope) + (volts + saturation * ohms) / slope) -
    saturation;

  test('carries what the closed form says, also where its exponential overflows', () => {
    const tens = (min: number, max: number): fc.Arbitrary<number> =>
      fc.double({ min, max, noNaN: true }).map((exponent) => 10 ** exponent);
    fc.assert(
      fc.property(
        fc.double({ min: 0.3, max: 60, noNaN: true }),
        tens(0, 5),
        fc.double({ min: 1, max: 2.5, noNaN: true }),
        tens(-18, -9),
        (volts, ohms, ideality, saturation) => {
          const slope = ideality * thermalVoltage(25);
          const branch = { resistance: ohms, drop: 0, junctions: [shockley(slope, saturation, 0)] };
          const expected = closedForm(volts, ohms, slope, saturation);
          expect(Math.abs(branchFlow(branch, volts).current / expected - 1)).toBeLessThan(
            1e-9 + (1e-14 * saturation) / expected,
          );
        },
      ),
      { numRuns: 2000 },
    );
  });
});

/** Derived from k = 1.380649e-23 J/K and q = 1.602176634e-19 C, exact in the SI since 2019 (from memory). */
describe('the thermal voltage', () => {
  test.each([
    [20, 25.2617],
    [25, 25.6926],
    [27, 25.8649],
    [85, 30.863],
  ])('at %d °C is %d mV', (celsius, millivolts) => {
    expect(1000 * thermalVoltage(celsius)).toBeCloseTo(millivolts, 4);
  });
});

describe('a diode of fixed drop', () => {
  /** Program of example 3.7 in Scilab Textbook Companion 3169, FOSSEE, IIT Bombay: 10 V, 1 kΩ, 0.7 V. Answers derived. */
  test('of 0.7 V behind 1 kΩ on 10 V carries 9.3 mA and takes 6.51 mW', () => {
    const { current } = branchFlow({ resistance: 1000, drop: 0.7, junctions: [] }, 10);
    expect(1000 * current).toBeCloseTo(9.3, 9);
    expect(1000 * 0.7 * current).toBeCloseTo(6.51, 9);
  });

  /** Program of example 1.2 in Scilab Textbook Companion 1382, FOSSEE, IIT Bombay: 4.7 V and 15 Ω at 20 mA. Answer derived. */
  test('of 4.7 V with 15 Ω of its own has 5.0 V at 20 mA', () => {
    expect(branchFlow({ resistance: 15, drop: 4.7, junctions: [] }, 5).current).toBeCloseTo(0.02, 12);
  });
});

describe('silicon', () => {
  /** Common practice, no source: 60 mV a decade of current at room temperature, 2 mV less a kelvin. */
  test('gains 60 mV a decade and loses 2 mV a kelvin', () => {
    const diode = fitJunction([{ current: 1e-3, voltage: 0.65 }], { ideality: 1 });
    expect(1000 * (junctionVoltage(diode, 1e-3) - junctionVoltage(diode, 1e-4))).toBeCloseTo(60, -1);
    expect(junctionVoltage(junctionAt(diode, 75), 1e-3)).toBeCloseTo(0.55, 9);
  });
});
