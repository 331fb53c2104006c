/** How long batteries last, against published sums. `toBeCloseTo(x, n)` accepts what the source prints at its precision. */
import { describe, expect, test } from 'vitest';
import { capacityAt, insideOhms, lastsFor, meanCurrent } from '../../src/circuit/battery.js';

const HOUR = 3600;
const mAh = (charge: number): number => charge * 3.6;

describe('the mean of a current', () => {
  /** "picoPower technology", Atmel, DigiKey tutorial, slide 8: 0.5 mA for 10 µs each second, 0.65 µA else: 0.655 µA. */
  test('of an ATmega164P that is awake for 10 µs a second is 0.655 µA', () => {
    const parts = [
      { share: 10e-6, amps: 0.5e-3 },
      { share: 1 - 10e-6, amps: 0.65e-6 },
    ];
    expect(1e6 * meanCurrent(parts)).toBeCloseTo(0.655, 3);
  });

  /** A question on the mean consumption of a logger: 0.05 mA, 56 mA for 120 s, 0.44 mA for 6 s: 1.9 mAh an hour. */
  test('of a logger that sends for two minutes an hour comes to 1.9 mAh an hour', () => {
    const parts = [
      { share: 3473 / HOUR, amps: 0.05e-3 },
      { share: 120 / HOUR, amps: 56e-3 },
      { share: 6 / HOUR, amps: 0.44e-3 },
    ];
    expect(1e3 * meanCurrent(parts)).toBeCloseTo(1.9, 1);
  });
});

/**
 * "Battery life estimation", applied-ee.github.io, page on low-power design, worked example of a sensor node: asleep at 1.5 µA, awake for
 * 12 ms a minute; each phase as it is printed. It has 0.03747 µAh a cycle and 2.25 µA, its own rows add up to 0.03767 µAh.
 */
test('of a radio node that wakes each minute is 2.25 µA, of which 230 mAh last 11.7 years', () => {
  const phases = [
    [1.5e-6, 59.988],
    [5e-3, 0.5e-3],
    [1.8e-3, 3e-3],
    [8.5e-3, 3.6e-3],
    [4.2e-3, 1.5e-3],
    [2e-3, 0.4e-3],
  ] as const;
  const mean = meanCurrent(phases.map(([amps, seconds]) => ({ share: seconds / 60, amps })));
  expect(Math.abs((1e6 * mean) / 2.25 - 1)).toBeLessThan(0.01);
  expect(lastsFor(mAh(230), 2.25e-6) / HOUR).toBeCloseTo(102_222, 0);
  expect(lastsFor(mAh(230), 2.25e-6) / (8760 * HOUR)).toBeCloseTo(11.7, 1);
});

/** A book on building robots, p. 276 (issuhub 31042): 150 mAh at 31 mA last 4.8 h, at twice 380 mA 0.2 h. */
test('150 mAh last 4.8 h at 31 mA, and 12 minutes at 760 mA', () => {
  expect(lastsFor(mAh(150), 31e-3) / HOUR).toBeCloseTo(4.8, 1);
  expect(lastsFor(mAh(150), 760e-3) / HOUR).toBeCloseTo(0.2, 1);
});

/** Curves of alkaline AA cells compared (kurokatta.org, 2019): Energizer 3000 mAh at 25 mA, 1600 at 500, about 1000 at 1 A. */
test('an AA cell gives no more than its lightest drain has, and half of the way between two drains in between', () => {
  const points = [
    { at: 0.025, value: { min: mAh(3000), typ: mAh(3000), max: mAh(3000) } },
    { at: 0.5, value: { min: mAh(1600), typ: mAh(1600), max: mAh(1600) } },
    { at: 1, value: { min: mAh(1000), typ: mAh(1000), max: mAh(1000) } },
  ];
  expect(capacityAt(points, 1e-3).typ).toBeCloseTo(mAh(3000), 6);
  expect(capacityAt(points, 0.75).typ).toBeCloseTo(mAh(1300), 6);
  expect(capacityAt(points, 5).typ).toBeCloseTo(mAh(1000), 6);
});

/** "Risk of damage using an unregulated power supply", All About Circuits, thread 113129: 9 V at 1 A, about 14 V with nothing on it. */
test('an adapter for 9 V and 1 A that stands at 14 V has 5 Ω inside, so that 80 mA leave 13.6 V', () => {
  const inside = insideOhms({ min: 14, typ: 14, max: 14 }, { min: 9, typ: 9, max: 9 }, 1);
  expect(inside.typ).toBeCloseTo(5, 12);
  expect(14 - 0.08 * inside.typ).toBeCloseTo(13.6, 12);
});

/**
 * "18650 cell YC-18650", sample data sheet of a lithium-ion cell of 2200 mAh: less than 5 % lost in 30 days. With nothing drawn
 * but that the straight line empties it in 600 days; with 1 mA besides (derived): 2200 / (1 + 2200·0.05/720) h.
 */
test('a lithium-ion cell that loses 5 % in 30 days', () => {
  const lost = 0.05 / (30 * 24 * HOUR);
  expect(lastsFor(mAh(2200), 1e-12, lost) / (24 * HOUR)).toBeCloseTo(600, 2);
  expect(lastsFor(mAh(2200), 1e-3, lost) / HOUR).toBeCloseTo(2200 / (1 + (2200 * 0.05) / 720), 6);
});
