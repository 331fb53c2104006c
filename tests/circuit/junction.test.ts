import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  fitJunction,
  junctionAt,
  junctionVoltage,
  softLog,
  thermalVoltage,
  junctionBetween,
} from '../../src/circuit/junction.js';

const share = (a: number, b: number): number => Math.abs(a / b - 1);

describe('a junction fitted to one point', () => {
  test('passes through it, even a Schottky diode at a tenth of a volt', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.1, max: 3.6, noNaN: true }),
        fc.double({ min: -6, max: 0, noNaN: true }),
        fc.double({ min: 1, max: 3, noNaN: true }),
        (voltage, exponent, ideality) => {
          const current = 10 ** exponent;
          const j = fitJunction([{ current, voltage }], { ideality });
          expect(share(junctionVoltage(j, current), voltage)).toBeLessThan(1e-12);
        },
      ),
    );
  });

  test('rises by n·kT/q·ln 10 a decade: 118 mV for an LED, 59 mV for silicon', () => {
    const rise = (ideality: number): number => {
      const j = fitJunction([{ current: 0.01, voltage: 1 }], { ideality });
      return junctionVoltage(j, 1e-3) - junctionVoltage(j, 1e-4);
    };
    // 25 °C: 25.6926 mV · ln 10 = 59.16 mV, exact constants.
    expect(rise(1)).toBeCloseTo(0.05916, 4);
    expect(rise(2)).toBeCloseTo(0.11832, 4);
  });

  test('bears a point of no voltage at all', () => {
    const j = fitJunction([{ current: 0.02, voltage: 0 }]);
    expect(junctionVoltage(j, 0.02)).toBeLessThan(1e-4);
    expect(junctionVoltage(j, 0.02)).toBeGreaterThanOrEqual(0);
  });
});

describe('a junction fitted to two points', () => {
  /** A lower point, a ratio of currents, and a rise of voltage that a junction of the given slope can make. */
  const pair = fc.record({
    voltage: fc.double({ min: 1, max: 3.4, noNaN: true }),
    current: fc.double({ min: -4, max: -2, noNaN: true }).map((exponent) => 10 ** exponent),
    ratio: fc.double({ min: 1.5, max: 100, noNaN: true }),
  });

  test('passes through both, with a resistance where the rise is more than the logarithm gives', () => {
    fc.assert(
      fc.property(pair, fc.double({ min: 0.06, max: 0.6, noNaN: true }), ({ voltage, current, ratio }, steep) => {
        const upper = { current: current * ratio, voltage: voltage + steep * Math.log(ratio) };
        const j = fitJunction([upper, { current, voltage }]);
        expect(share(junctionVoltage(j, current), voltage)).toBeLessThan(1e-6);
        expect(share(junctionVoltage(j, upper.current), upper.voltage)).toBeLessThan(1e-6);
        expect(j.slope).toBe(2 * thermalVoltage(25));
        expect(j.series).toBeGreaterThan(0.01);
      }),
    );
  });

  test('passes through both by its slope alone, where the rise is between one and the given ideality', () => {
    fc.assert(
      fc.property(pair, fc.double({ min: 0.03, max: 0.05, noNaN: true }), ({ voltage, current, ratio }, flat) => {
        const upper = { current: current * ratio, voltage: voltage + flat * Math.log(ratio) };
        const j = fitJunction([{ current, voltage }, upper]);
        expect(share(junctionVoltage(j, current), voltage)).toBeLessThan(1e-6);
        expect(share(junctionVoltage(j, upper.current), upper.voltage)).toBeLessThan(1e-6);
        expect(j.slope).toBeLessThanOrEqual(flat + 1e-12);
      }),
    );
  });

  test('keeps the slope of an ideal junction and the upper point where they rise too little or fall', () => {
    for (const voltage of [2.001, 1.9]) {
      const j = fitJunction([
        { current: 0.001, voltage: 2 },
        { current: 0.02, voltage },
      ]);
      expect(j.slope).toBe(thermalVoltage(25));
      expect(junctionVoltage(j, 0.02)).toBeCloseTo(voltage, 9);
    }
  });
});

describe('a junction fitted to three points', () => {
  test('finds the slope, the saturation current and the resistance that made them', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 1, max: 3.6, noNaN: true }),
        fc.double({ min: 1.05, max: 3, noNaN: true }),
        fc.double({ min: 0.1, max: 30, noNaN: true }),
        (voltage, ideality, series) => {
          const slope = ideality * thermalVoltage(25);
          const logSaturation = Math.log(1e-3) - voltage / slope;
          const points = [1e-3, 5e-3, 0.02].map((current) => ({
            current,
            voltage: slope * (Math.log(current) - logSaturation) + series * current,
          }));
          const j = fitJunction(points);
          for (const p of points) expect(share(junctionVoltage(j, p.current), p.voltage)).toBeLessThan(1e-4);
          expect(share(j.slope, slope)).toBeLessThan(1e-6);
          expect(share(j.series, series)).toBeLessThan(1e-4);
        },
      ),
    );
  });

  test('goes through the outer two where they bend the wrong way', () => {
    const points = [
      { current: 0.001, voltage: 1.7 },
      { current: 0.01, voltage: 2 },
      { current: 0.02, voltage: 2.01 },
    ];
    const j = fitJunction(points);
    expect(junctionVoltage(j, 0.001)).toBeCloseTo(1.7, 9);
    expect(junctionVoltage(j, 0.02)).toBeCloseTo(2.01, 9);
    expect(j.series).toBeGreaterThan(0);
  });
});

test('points at one current count as one, at their mean voltage', () => {
  const j = fitJunction([
    { current: 0.02, voltage: 2 },
    { current: 0.02, voltage: 2.2 },
  ]);
  expect(junctionVoltage(j, 0.02)).toBeCloseTo(2.1, 12);
  expect(j).toEqual(fitJunction([{ current: 0.02, voltage: 2.1 }]));
});

describe('a junction at another temperature', () => {
  const temperature = fc.double({ min: -40, max: 85, noNaN: true });
  const led = fitJunction([{ current: 0.02, voltage: 2 }], { perKelvin: -0.0018 });

  test('shifts by its coefficient at the reference current', () => {
    fc.assert(
      fc.property(temperature, (celsius) => {
        const shift = junctionVoltage(junctionAt(led, celsius), 0.02) - junctionVoltage(led, 0.02);
        expect(shift).toBeCloseTo(-0.0018 * (celsius - 25), 12);
      }),
    );
  });

  test('shifts by its coefficient even where it drops little, as a Schottky diode does', () => {
    const schottky = fitJunction([{ current: 0.001, voltage: 0.2 }], { perKelvin: -0.001 });
    const shift = junctionVoltage(junctionAt(schottky, 75), 0.001) - junctionVoltage(schottky, 0.001);
    expect(shift).toBeCloseTo(-0.05, 12);
  });

  test('shifts by more than that at a smaller current: its slope goes with the absolute temperature', () => {
    const hot = junctionAt(led, 75);
    // 50 K · k/q · 2 · ln(0.02 / 1e-5) = 65.5 mV more than the 90 mV.
    expect(junctionVoltage(hot, 1e-5) - junctionVoltage(led, 1e-5)).toBeCloseTo(-0.09 - 0.0655, 4);
    expect(hot.slope / led.slope).toBeCloseTo((75 + 273.15) / (25 + 273.15), 12);
    expect(hot.series).toBe(led.series);
  });

  test('comes back to itself', () => {
    fc.assert(
      fc.property(temperature, (celsius) => {
        const back = junctionAt(junctionAt(led, celsius), 25);
        expect(back.logSaturation).toBeCloseTo(led.logSaturation, 9);
        expect(back.slope).toBeCloseTo(led.slope, 15);
      }),
    );
  });

  test('is the same by either way there', () => {
    const direct = junctionAt(led, 60);
    const roundabout = junctionAt(junctionAt(led, -20), 60);
    expect(roundabout.logSaturation).toBeCloseTo(direct.logSaturation, 9);
  });
});

describe('the voltage across a junction', () => {
  const si = fitJunction([{ current: 0.01, voltage: 0.7 }], { ideality: 1 });

  test('is nothing without current, and rises with it', () => {
    expect(junctionVoltage(si, 0)).toBe(0);
    expect(junctionVoltage(si, -0.1)).toBe(0);
    const exponent = fc.double({ min: -15, max: 1, noNaN: true });
    fc.assert(
      fc.property(exponent, exponent, (a, b) => {
        const [low, high] = [10 ** Math.min(a, b), 10 ** Math.max(a, b)];
        expect(junctionVoltage(si, high)).toBeGreaterThanOrEqual(junctionVoltage(si, low));
      }),
    );
  });
});

describe('a junction between two others', () => {
  const low = fitJunction([{ current: 0.01, voltage: 1.7 }], { perKelvin: -0.0015 });
  const high = fitJunction([
    { current: 0.002, voltage: 1.9 },
    { current: 0.02, voltage: 2.3 },
  ]);

  test('has its voltage as far along at every current', () => {
    const share = fc.double({ min: 0, max: 1, noNaN: true });
    const exponent = fc.double({ min: -6, max: -1, noNaN: true });
    fc.assert(
      fc.property(share, exponent, (along, power) => {
        const amps = 10 ** power;
        const [a, b] = [junctionVoltage(low, amps), junctionVoltage(high, amps)];
        expect(junctionVoltage(junctionBetween(low, high, along), amps)).toBeCloseTo(a + along * (b - a), 9);
      }),
    );
  });

  test('is either of them at the ends', () => {
    expect(junctionBetween(low, high, 0)).toBe(low);
    expect(junctionBetween(low, high, 1)).toBe(high);
  });
});

test('ln(1 + e^x) is exact at both ends and joins smoothly where it is cut short', () => {
  expect(softLog(0)).toBeCloseTo(Math.LN2, 15);
  expect(softLog(-700)).toBeGreaterThan(0);
  expect(softLog(1000)).toBe(1000);
  expect(softLog(36.0000001) - softLog(35.9999999)).toBeCloseTo(2e-7, 12);
});
