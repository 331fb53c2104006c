/** LEDs behind resistors against published worked examples: the branch law, and the next resistor of E24. */
import { describe, expect, test } from 'vitest';
import { branchFlow } from '../../src/circuit/branch.js';
import { nextAbove, nextBelow } from '../../src/quantity/preferred.js';

/** Current of an LED of fixed forward voltage behind a resistor. */
const current = (supply: number, forward: number, ohms: number): number =>
  branchFlow({ resistance: ohms, drop: forward, junctions: [] }, supply).current;

/** The resistor that gives a current: what is left of the voltage, over the current. */
const resistor = (supply: number, forward: number, amps: number): number => (supply - forward) / amps;

/**
 * "LED notes", DF wiki, University of Latvia: resistors in ohms for currents in mA at 3.0, 3.3, 5 and 12 V. The last column is
 * headed 10 V in one place and 12 V in another; the arithmetic says 12 V.
 */
const SUPPLIES = [3, 3.3, 5, 12];
const LED_NOTES: readonly (readonly [milliamps: number, forward: number, ...ohms: number[]])[] = [
  [2, 1.8, 620, 750, 1600, 5100],
  [2, 2.1, 470, 620, 1500, 5100],
  [5, 1.8, 240, 300, 680, 2200],
  [5, 2.1, 180, 240, 620, 2000],
  [10, 1.8, 120, 150, 330, 1100],
  [10, 2.1, 91, 120, 300, 1000],
  [20, 1.8, 68, 75, 160, 560],
  [20, 2.1, 47, 62, 150, 510],
];

/** Two cells are one step of E24 higher than rounding up: 60 Ω exactly is 62, printed 68; 510 Ω is E24, printed 560. */
const ONE_STEP_HIGH: Readonly<Record<string, number>> = { '20 mA, 1.8 V on 3 V': 62, '20 mA, 1.8 V on 12 V': 510 };

const CELLS = LED_NOTES.flatMap(([milliamps, forward, ...row]) =>
  row.map((ohms, k) => {
    const supply = SUPPLIES[k]!;
    return { name: `${milliamps} mA, ${forward} V on ${supply} V`, supply, forward, amps: milliamps / 1000, ohms };
  }),
);

describe('"LED notes", University of Latvia', () => {
  test.each(CELLS.filter(({ name }) => ONE_STEP_HIGH[name] === undefined))(
    '$name: $ohms Ω is the least of E24 that lets no more through',
    ({ supply, forward, amps, ohms }) => {
      expect(nextAbove('E24', resistor(supply, forward, amps))).toBe(ohms);
      expect(current(supply, forward, ohms)).toBeLessThanOrEqual(amps * (1 + 1e-9));
      expect(current(supply, forward, nextBelow('E24', ohms * 0.999))).toBeGreaterThan(amps * (1 + 1e-9));
    },
  );

  test.each(CELLS.filter(({ name }) => ONE_STEP_HIGH[name] !== undefined))(
    '$name: $ohms Ω is printed, one step more than needed',
    ({ name, supply, forward, amps, ohms }) => {
      const least = nextAbove('E24', resistor(supply, forward, amps));
      expect(least).toBe(ONE_STEP_HIGH[name]);
      expect(nextAbove('E24', least * 1.001)).toBe(ohms);
      expect(current(supply, forward, least)).toBeLessThanOrEqual(amps * (1 + 1e-9));
    },
  );

  test('has 32 cells, of which 30 are rounded up strictly', () => {
    expect(CELLS).toHaveLength(32);
    expect(CELLS.filter((c) => nextAbove('E24', resistor(c.supply, c.forward, c.amps)) === c.ohms)).toHaveLength(30);
  });
});

describe('an LED behind a resistor', () => {
  /** "Elektronik Grundlagen" of the repository datag/uC-docs: a red LED of 2 V on 5 V. */
  test('of 150 Ω on 5 V carries 20 mA at 2 V', () => {
    expect(resistor(5, 2, 0.02)).toBeCloseTo(150, 9);
    expect(current(5, 2, 150)).toBeCloseTo(0.02, 12);
  });

  /** A question about TLP621-4 in the collection Nemotron-CC-Math: 760 Ω for a coupler's LED of 1.2 V. */
  test('of 760 Ω on 5 V carries 5 mA at 1.2 V', () => {
    expect(resistor(5, 1.2, 0.005)).toBeCloseTo(760, 9);
    expect(current(5, 1.2, 760)).toBeCloseTo(0.005, 12);
  });

  /**
   * README of the repository rihan97/Calculate-Resistor-Value prints 0.36 and 0.15 for 20 and 20.5 mA: it takes milliamperes for
   * amperes. Right are 360 Ω and 146.3 Ω (derived).
   */
  test('of 360 Ω on 9 V carries 20 mA at 1.8 V, and of 146.3 Ω on 5 V 20.5 mA at 2 V', () => {
    expect(current(9, 1.8, 360)).toBeCloseTo(0.02, 12);
    expect(current(5, 2, 146.3)).toBeCloseTo(0.0205, 4);
    expect(current(9, 1.8, 0.36)).toBeGreaterThan(10);
  });

  /** Derived: every part at its worse end. */
  test('of 150 Ω ±5 % on 5 V ±5 % carries 16.190 to 24.211 mA at 2.0 ±0.2 V', () => {
    expect(1000 * current(4.75, 2.2, 157.5)).toBeCloseTo(16.19, 3);
    expect(1000 * current(5.25, 1.8, 142.5)).toBeCloseTo(24.211, 3);
  });

  /** "LED lighting and resistors", Riedon, slide 8: little head-room makes a string sensitive to its supply (rule; derived). */
  test('changes by ΔV/R with its supply: with less to spare the same 5 % are more', () => {
    const rise = (supply: number): number => {
      const ohms = resistor(supply, 18, 0.35);
      return current(1.05 * supply, 18, ohms) / 0.35 - 1;
    };
    expect(rise(24)).toBeCloseTo((0.05 * 24) / (24 - 18), 9);
    expect(rise(20)).toBeGreaterThan(2 * rise(24));
  });
});
