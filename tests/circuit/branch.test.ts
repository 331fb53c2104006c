import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type Branch, branchFlow } from '../../src/circuit/branch.js';
import { type Junction, fitJunction, junctionVoltage } from '../../src/circuit/junction.js';

const ohms = fc.double({ min: -2, max: 6, noNaN: true }).map((exponent) => 10 ** exponent);

/** From a Schottky diode to a white LED, with or without a resistance of its own. */
const junction: fc.Arbitrary<Junction> = fc
  .record({
    voltage: fc.double({ min: 0.15, max: 3.6, noNaN: true }),
    current: fc.constantFrom(1e-4, 1e-3, 0.02, 0.35, 1),
    ideality: fc.double({ min: 1, max: 3, noNaN: true }),
  })
  .map(({ voltage, current, ideality }) => fitJunction([{ current, voltage }], { ideality }));

const branch: fc.Arbitrary<Branch> = fc.record({
  resistance: ohms,
  drop: fc.oneof(fc.constant(0), fc.double({ min: 0.05, max: 2, noNaN: true })),
  junctions: fc.array(junction, { maxLength: 3 }),
});

/** The law the other way round: what stands across a branch that carries a current. */
const across = (b: Branch, current: number): number =>
  b.drop + b.resistance * current + b.junctions.reduce((sum, j) => sum + junctionVoltage(j, current), 0);

describe('a branch', () => {
  test('carries the current whose drops add up to its voltage, to 1e-12, from a nanoampere to an ampere', () => {
    fc.assert(
      fc.property(branch, fc.double({ min: -9, max: 0, noNaN: true }), (b, exponent) => {
        const voltage = across(b, 10 ** exponent);
        const { current } = branchFlow(b, voltage);
        expect(Math.abs(across(b, current) / voltage - 1)).toBeLessThan(1e-12);
      }),
      { numRuns: 2000 },
    );
  });

  test('gives back a current that was turned into a voltage', () => {
    fc.assert(
      fc.property(branch, fc.double({ min: -9, max: 0, noNaN: true }), (b, exponent) => {
        const current = 10 ** exponent;
        // A microvolt of a big drop is a big share of what a small current makes of it.
        const voltage = across(b, current);
        const { conductance } = branchFlow(b, voltage);
        const blur = 1e-14 * voltage * conductance;
        expect(Math.abs(branchFlow(b, voltage).current - current)).toBeLessThan(1e-12 * current + blur);
      }),
      { numRuns: 2000 },
    );
  });

  test('never carries less at a higher voltage', () => {
    const volts = fc.double({ min: -30, max: 30, noNaN: true });
    fc.assert(
      fc.property(branch, volts, volts, (b, u, v) => {
        const [low, high] = [branchFlow(b, Math.min(u, v)).current, branchFlow(b, Math.max(u, v)).current];
        expect(high).toBeGreaterThanOrEqual(low - 1e-13 * Math.abs(low));
      }),
      { numRuns: 2000 },
    );
  });

  test('tells its conductance as the slope of its current', () => {
    fc.assert(
      fc.property(branch, fc.double({ min: -9, max: 0, noNaN: true }), (b, exponent) => {
        const at = across(b, 10 ** exponent);
        const { current, conductance } = branchFlow(b, at);
        // A step that changes the current by a ten-thousandth, whatever bends there.
        const step = (1e-4 * current) / conductance;
        if (at - step - b.drop <= 0 || step < 1e-9 * at) return;
        const slope = (branchFlow(b, at + step).current - branchFlow(b, at - step).current) / (2 * step);
        expect(Math.abs(slope / conductance - 1)).toBeLessThan(1e-5);
      }),
      { numRuns: 2000 },
    );
  });

  test('carries the same whatever current it is told to start from', () => {
    const guess = fc.double({ min: -320, max: 3, noNaN: true }).map((exponent) => 10 ** exponent);
    fc.assert(
      fc.property(branch, fc.double({ min: -9, max: 0, noNaN: true }), guess, (b, exponent, from) => {
        const voltage = across(b, 10 ** exponent);
        const { current, conductance } = branchFlow(b, voltage);
        const guessed = branchFlow(b, voltage, from);
        expect(Math.abs(guessed.current / current - 1)).toBeLessThan(1e-9);
        expect(Math.abs(guessed.conductance / conductance - 1)).toBeLessThan(1e-9);
      }),
      { numRuns: 2000 },
    );
  });

  test('without junction or drop conducts both ways alike', () => {
    const plain = { resistance: 100, drop: 0, junctions: [] };
    expect(branchFlow(plain, 5)).toEqual({ current: 0.05, conductance: 0.01 });
    expect(branchFlow(plain, -5)).toEqual({ current: -0.05, conductance: 0.01 });
  });

  test('with a junction or a drop lets nothing through backwards', () => {
    const nothing = { current: 0, conductance: 0 };
    const backwards = fc.double({ min: -100, max: -1e-12, noNaN: true });
    const led = fitJunction([{ current: 0.02, voltage: 2 }]);
    fc.assert(
      fc.property(backwards, (voltage) => {
        expect(branchFlow({ resistance: 1, drop: 0, junctions: [led] }, voltage)).toEqual(nothing);
        expect(branchFlow({ resistance: 1, drop: 0.7, junctions: [] }, voltage)).toEqual(nothing);
        // A fixed current is asked for even of a rail that collapses under it.
        expect(branchFlow({ resistance: 1, drop: 0, junctions: [], current: 0.1 }, voltage).current).toBe(0.1);
      }),
    );
  });

  test('has no current yet where it begins to conduct, but the slope beyond', () => {
    const led = fitJunction([{ current: 0.02, voltage: 2 }]);
    const { current, conductance } = branchFlow({ resistance: 1, drop: 0, junctions: [led] }, 0);
    expect(current).toBe(0);
    expect(conductance).toBeCloseTo(Math.exp(led.logSaturation) / led.slope, 25);
    expect(branchFlow({ resistance: 50, drop: 0.7, junctions: [] }, 0.7)).toEqual({ current: 0, conductance: 0.02 });
  });

  test('lets nothing through below its drop, and what is left over its resistance above', () => {
    const b = { resistance: 50, drop: 0.7, junctions: [] };
    expect(branchFlow(b, 0.69)).toEqual({ current: 0, conductance: 0 });
    expect(branchFlow(b, 5.7).current).toBeCloseTo(0.1, 15);
  });

  test('of a fixed current draws it from any voltage above zero', () => {
    const b = { resistance: 0, drop: 0, junctions: [], current: 0.08 };
    for (const volts of [1e-6, 5, 24]) expect(branchFlow(b, volts)).toEqual({ current: 0.08, conductance: 0 });
  });

  test('of an LED at once across a supply carries much, but a number', () => {
    fc.assert(
      fc.property(junction, fc.double({ min: 0.001, max: 400, noNaN: true }), (j, voltage) => {
        const { current, conductance } = branchFlow({ resistance: 0, drop: 0, junctions: [j] }, voltage);
        expect(current).toBeGreaterThan(0);
        expect(current).toBeLessThan(voltage / 1e-3);
        expect(conductance).toBeLessThan(Infinity);
      }),
    );
  });
});
