/**
 * Windings that are switched off, against data sheets, application notes and measurements: the energy in them, how long
 * their current takes to fall, and what that throws at the switch. Each figure names where it was printed; what is worked out
 * from printed figures says 'derived'.
 */
import { describe, expect, test } from 'vitest';
import { coilTemperature, copperFactor } from '../../src/circuit/copper.js';
import { highestCoilVoltage } from '../../src/circuit/coil.js';
import { fitJunction, junctionVoltage } from '../../src/circuit/junction.js';
import { releaseTime, storedEnergy } from '../../src/circuit/release.js';
import { judge } from '../../src/checks/judge.js';
import { builtIn, read } from '../../src/index.js';
import { at, bounds, points } from './catalogue-figures.js';

/** Ohms so small that they play no part. */
const NONE = 1e-3;

/** Area under the current while it falls from `from` to `to`, ampere-seconds: slices of it, each as long as it lasts. */
function charge(inductance: number, ohms: number, from: number, to: number, clamp: number, slices = 4000): number {
  const step = (from - to) / slices;
  let sum = 0;
  for (let k = 0; k < slices; k++) {
    const high = from - k * step;
    sum += releaseTime(inductance, ohms, high, Math.max(high - step, 0), clamp) * (high - step / 2);
  }
  return sum;
}

describe('the energy of a winding', () => {
  test.each([
    // "How to drive resistive, inductive, capacitive, and lighting loads", Texas Instruments, SLVAE30E, 2021: load 1.
    // The current is printed as 0.304 A and 9.46 mJ come of it unrounded.
    [0.205, 0.304, 9.46e-3, 0.002],
    // The same note, load 2: 48.4 mH and 0.48 A; 5.58 mJ are derived.
    [0.0484, 0.48, 5.576e-3, 0.001],
    // "Switch-off time of relay with flyback diode", electrical.codidact.com, post 276329: 1.98 µJ.
    [1e-3, 63e-3, 1.98e-6, 0.003],
  ])('of %d H at %d A is %d J', (henries, amps, joules, share) => {
    expect(Math.abs(storedEnergy(henries, amps) / joules - 1)).toBeLessThan(share);
  });

  /** The same note: with 24 V of supply and a clamp of 60 V in the switch, 15.76 mJ and 9.29 mJ end in the switch. */
  test.each([
    [0.205, 0.304, 15.76e-3],
    [0.0484, 0.48, 9.29e-3],
  ])('of %d H at %d A costs a switch that clamps at 60 V on a 24 V supply %d J', (henries, amps, joules) => {
    const seconds = releaseTime(henries, NONE, amps, 0, 60 - 24);
    expect(Math.abs((60 * amps * seconds) / 2 / joules - 1)).toBeLessThan(0.003);
  });

  /**
   * "Smart High-Side Power Switch BTS4175SGA", Infineon, data sheet revision 1.0, 2008-04-29, p. 11, section 5.3:
   * E = V_DS·(L/R)·((V_S − V_DS)/R·ln(1 − R·I/(V_S − V_DS)) + I). The numbers put in are derived.
   */
  test.each([
    [0.205, 78.9, 0.304, 24, 60],
    [0.3, 90, 0.15, 13.5, 41],
    [2.29, 275, 0.0436, 12, 36],
  ])('of %d H and %d Ω in a clamping switch is what the maker’s equation has', (henries, ohms, amps, supply, clamp) => {
    const level = (supply - clamp) / ohms;
    const printed = ((clamp * henries) / ohms) * (level * Math.log(1 - amps / level) + amps);
    const ours = clamp * charge(henries, ohms, amps, 0, clamp - supply);
    expect(ours / printed).toBeCloseTo(1, 5);
  });
});

describe('the time a current takes to fall', () => {
  /** electrical.codidact.com, answer 276331: 1 mH and 80 Ω, shorted: a time constant of 12.5 µs, half-life 8.7 µs. */
  test('in a shorted winding of 1 mH and 80 Ω is 12.5 µs to a part in e, 8.7 µs to half', () => {
    expect(releaseTime(1e-3, 80, 0.063, 0.063 / Math.E, 0)).toBeCloseTo(12.5e-6, 9);
    expect(releaseTime(1e-3, 80, 0.063, 0.063 / 2, 0)).toBeCloseTo(8.7e-6, 7);
  });

  /** Relay over-voltage article, elektroda.com, topic 1062919, for the 12 V coil of G2R, Omron: 2.29 H, 275 Ω, 43.6 mA. */
  test('is 0.5 ms where 2.29 H throw 211.7 V, the 12 V of the supply among them', () => {
    const amps = 12 / 275;
    expect(1000 * amps).toBeCloseTo(43.6, 1);
    expect(1000 * releaseTime(2.29, NONE, amps, 0, 211.7 - 12)).toBeCloseTo(0.5, 3);
  });

  /** Derived from the same coil, with a tenth of its current as the one that lets go. */
  test('is 15.8 ms against a diode, 3.0 ms against 24 V', () => {
    expect(1000 * releaseTime(2.29, 275, 12 / 275, 1.2 / 275, 0.7)).toBeCloseTo(15.82, 1);
    expect(1000 * releaseTime(2.29, 275, 12 / 275, 1.2 / 275, 24)).toBeCloseTo(2.97, 2);
  });

  /**
   * "Diode on relay coil: downside", electro-tech-online.com, thread 167257, measured: 120 Ω with 680 Ω across it throw 65 V
   * and open after 2.6 ms, with a diode after 8 ms. The law has a constant inductance, that of a relay falls as it opens, so
   * that the law's ratio is the larger one.
   */
  test('with a resistor of 680 Ω starts at about 65 V, and with a diode is several times as long', () => {
    const amps = 12 / 120;
    expect(Math.abs((amps * 680) / 65 - 1)).toBeLessThan(0.06);
    for (const share of [0.1, 0.2, 0.4]) {
      const diode = releaseTime(1, 120, amps, share * amps, 0.7);
      const resistor = releaseTime(1, 120 + 680, amps, share * amps, 0);
      expect(diode / resistor).toBeGreaterThan(8 / 2.6);
      expect(diode / resistor).toBeLessThan(7);
    }
  });

  /**
   * "The application of relay coil suppression with DC relays", TE Connectivity, 13C3311, table of release times of a 12 V
   * coil of 55 Ω (from memory): 1.5 ms with nothing across it. What a resistor adds to that goes as 1/(55 Ω + R).
   */
  test.each([
    [680, 2.3],
    [470, 2.8],
    [330, 3.2],
    [220, 3.7],
    [82, 6.1],
  ])('with %d Ω across 55 Ω is %d ms, from the 5.5 ms with 100 Ω', (ohms, milliseconds) => {
    const amps = 12 / 55;
    const ours = (across: number): number => releaseTime(1, 55 + across, amps, 0.1 * amps, 0);
    const predicted = ((5.5 - 1.5) * ours(ohms)) / ours(100);
    expect(Math.abs(predicted / (milliseconds - 1.5) - 1)).toBeLessThan(0.16);
  });

  /** The same table (from memory): 9.8 ms with a diode, 1.9 ms with a zener of 24 V before it. */
  test('with a diode is longer than with 82 Ω, with a zener before it shorter than with 100 Ω', () => {
    const amps = 12 / 55;
    for (const share of [0.05, 0.1, 0.2]) {
      const t = (across: number, volts: number): number => releaseTime(1, 55 + across, amps, share * amps, volts);
      expect(t(0, 0.8)).toBeGreaterThan(t(82, 0));
      // 8.3 ms more than nothing, where 100 Ω make 4 ms more.
      expect(Math.abs(t(0, 0.8) / t(100, 0) / (8.3 / 4) - 1)).toBeLessThan(0.25);
      expect(t(0, 24.8)).toBeLessThan(t(100, 0) / 1.5);
    }
  });

  /** User manual of a vehicle relay, Panasonic, ASCT1F46E, p. 4, item 19: diode or zener across a coil make its release longer. */
  test('is the longer the less the clamp drops', () => {
    const times = [300, 60, 24, 12, 5, 0.7].map((volts) => releaseTime(0.3, 70, 0.07, 0.007, volts));
    expect(times).toEqual([...times].sort((a, b) => a - b));
  });
});

/** "Coil configuration", relay lexicon, Tyco Electronics: a diode limits the cut-off spike to about 0.7 V. */
describe('a diode across a coil', () => {
  test('of the catalogue drops about 0.7 V at the current of a small coil', () => {
    const forward = points(at('diode-1n4148', 'forward-voltage'), 'voltage', 'current');
    const law = fitJunction(forward.map(([amps, v]) => ({ current: amps!, voltage: v.typ! })));
    expect(junctionVoltage(law, 0.01)).toBeCloseTo(0.7, 1);
    expect(junctionVoltage(law, 0.03)).toBeLessThan(0.85);
  });

  /**
   * "TVS diode working principle", forum.allaboutcircuits.com, thread 209322: a suppressor that clamps at about 30 V across a
   * coil on 12 V puts about 42 V on the switch; a diode less than 13 V.
   */
  test.each([
    ['type: tvs, current: 1 A, zener-voltage: 30 V', 42, 42],
    ['part: diode-1n4148', 12.6, 13],
  ])('or a suppressor puts the supply and its own drop on the switch: %s', (clamp, least, most) => {
    const text = `ampledger: 1
title: Case
ambient: 25 °C
policy: everyday
supplies: { brick: { voltage: 12 V, current: 1 A }, five: { voltage: 5 V, current: 1 A } }
controllers: { main: { chip: atmega328p, supply: five } }
loads:
  a: { type: coil, voltage: 12 V, resistance: 400 Ω, supply: brick, clamp: { ${clamp} }, driver: { type: nmos, pin: PB1, on-resistance: { value: 0.05 Ω, at: 4.5 V }, maximum-current: 1 A, maximum-voltage: 60 V, thermal-resistance: 200 K/W } }
`;
    const { document } = read(text, 'case.yaml');
    const judged = judge(document!.data, 'case.yaml', { catalogue: builtIn });
    if ('problems' in judged) throw new Error(judged.problems.map((p) => p.says).join('\n'));
    const { limits } = judged.accounts.find(
      (j) => j.account.title === 'driver of a, voltage at switching off',
    )!.account;
    const typical = limits[0]!.typical.draw;
    expect(typical).toBeGreaterThanOrEqual(least - 1e-9);
    expect(typical).toBeLessThanOrEqual(most + 1e-9);
  });
});

describe('time constants of relay coils', () => {
  /** "G5V-1 Low Signal Relay", Omron, coil ratings: inductance with the armature off and on. */
  test.each([
    [167, 0.15, 0.29],
    [960, 0.85, 1.63],
  ])('of %d Ω lie between 0.9 and 1.7 ms', (ohms, off, on) => {
    expect((1000 * off) / ohms).toBeCloseTo(0.9, 1);
    expect((1000 * on) / ohms).toBeCloseTo(1.7, 1);
  });

  test('are those that the catalogue’s coil of 70 Ω is taken to have (common practice, no source)', () => {
    const { min, max } = bounds(at('relay-coil-5v-70r', 'inductance'), 'inductance');
    expect((1000 * min!) / 70).toBeCloseTo(0.9, 1);
    expect((1000 * max!) / 70).toBeCloseTo(1.7, 1);
  });
});

/** "Input voltages", relay lexicon, Tyco Electronics: the terms U_min, U_I and U_II. The numbers are derived. */
describe('the voltages of a coil that stays on', () => {
  const [ohms, thermal, room] = [360, 60, 23];

  test('U_II is the one at which it comes to its highest permitted temperature', () => {
    const volts = highestCoilVoltage(ohms, room, thermal, 130, room);
    expect(coilTemperature(volts, ohms, room, thermal, room)).toBeCloseTo(130, 9);
  });

  test('U_I is the lowest at which it operates again after it has stayed on: more than U_min, by its own heat', () => {
    const least = 9;
    // What it asks for when it is warm depends on what it was fed with: the two meet at U_I.
    let volts = least;
    for (let k = 0; k < 100; k++) volts = least * copperFactor(coilTemperature(volts, ohms, room, thermal, room), room);
    expect(volts).toBeGreaterThan(least);
    expect(volts).toBeCloseTo(least * copperFactor(coilTemperature(volts, ohms, room, thermal, room), room), 12);
    expect(volts / least).toBeCloseTo(1.05, 1);
  });

  /**
   * "G5LE PCB Power Relay", Omron: at most 170 % at 23 °C, 130 % at 70 °C. Derived: both make a winding of 12 V and 360 Ω 136 °C
   * warm, whatever its thermal resistance, since (T − 23)/(T − 70) = (170/130)². From one of them the law finds the other.
   */
  test('170 % at 23 °C are 130 % at 70 °C', () => {
    const permitted = (170 ** 2 * 70 - 130 ** 2 * 23) / (170 ** 2 - 130 ** 2);
    expect(permitted).toBeCloseTo(136, 0);
    const [volts, share] = [1.7 * 12, 130 / 100];
    const warmed = volts ** 2 / (ohms * copperFactor(permitted, 23));
    const found = (permitted - 23) / warmed;
    expect(coilTemperature(volts, ohms, 23, found, 23)).toBeCloseTo(permitted, 9);
    expect(highestCoilVoltage(ohms, 70, found, permitted, 23)).toBeCloseTo(share * 12, 9);
  });
});

/** "Coil voltage and temperature compensation", TE Connectivity, 13C9135, June 2013: Rf = Ri·(Tf + 234.5)/(Ti + 234.5), Vf = Vo·Rf/Ri. */
test('a coil that operates at 9 V at 23 °C operates at 12.0 V when its winding has 110 °C (derived)', () => {
  expect(9 * copperFactor(110, 23)).toBeCloseTo((9 * (110 + 234.5)) / (23 + 234.5), 12);
  expect(9 * copperFactor(110, 23)).toBeCloseTo(12.04, 2);
});

/** Metal Oxide Varistors, NTE Electronics, table, row 2V030: 30 V AC, 8.5 J, 1000 A, 47 V at 1 mA, 95 V, 0.60 W. */
test('a varistor of the catalogue for 24 V AC is what its table has', () => {
  const id = 'varistor-30v-16mm';
  expect(bounds(at(id, 'working-voltage'), 'voltage').typ).toBe(30);
  expect(bounds(at(id, 'energy'), 'energy').typ).toBe(8.5);
  expect(bounds(at(id, 'peak-current'), 'current').typ).toBe(1000);
  expect(bounds(at(id, 'zener-voltage'), 'voltage').typ).toBe(47);
  expect(bounds(at(id, 'clamping-voltage'), 'voltage').max).toBe(95);
});
