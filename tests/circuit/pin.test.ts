import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type LevelRow, pinResistance } from '../../src/circuit/pin.js';

const rail = (min: number, typ = min) => ({ min, typ });
const max = (supply: number, current: number, lost: number): LevelRow => ({ supply, current, lost: { max: lost } });
const typ = (supply: number, current: number, lost: number): LevelRow => ({ supply, current, lost: { typ: lost } });

/** 45 Ω at 5 V, 60 Ω at 3 V. */
const rows = [max(5, 0.02, 0.9), max(3, 0.01, 0.6)];

describe('the output resistance of a pin', () => {
  test('is the chord of its row', () => {
    expect(pinResistance([max(5, 0.02, 0.9)], undefined, rail(5))?.ohms.max).toBeCloseTo(45, 12);
  });

  test.each([
    [5, 45],
    [4, 52.5],
    [3.5, 56.25],
    [3, 60],
  ])('at %d V is interpolated between the rows: %d Ω', (volts, ohms) => {
    expect(pinResistance(rows, undefined, rail(volts))?.ohms.max).toBeCloseTo(ohms, 12);
  });

  test('is that of the nearest row beyond the rows', () => {
    expect(pinResistance(rows, undefined, rail(1.8))?.ohms.max).toBeCloseTo(60, 12);
    expect(pinResistance(rows, undefined, rail(5.5))?.ohms.max).toBeCloseTo(45, 12);
  });

  test('is highest at the lowest voltage of the rail, and typical at the typical one', () => {
    const both: LevelRow[] = [
      { supply: 4.5, current: 0.006, lost: { typ: 0.15, max: 0.33 } },
      { supply: 6, current: 0.0078, lost: { typ: 0.16, max: 0.33 } },
    ];
    const { ohms } = pinResistance(both, undefined, rail(4.5, 6))!;
    expect(ohms.max).toBeCloseTo(0.33 / 0.006, 12);
    expect(ohms.typ).toBeCloseTo(0.16 / 0.0078, 12);
  });

  test('does not depend on the order of the rows, nor jumps where two stand at one supply: the steeper one counts', () => {
    const mild = max(3.3, 0.008, 0.4);
    const steep = max(3.3, 0.02, 1.3);
    for (const order of [
      [mild, steep],
      [steep, mild],
    ])
      for (const volts of [3.2, 3.3, 3.4])
        expect(pinResistance(order, undefined, rail(volts))?.ohms.max).toBeCloseTo(65, 12);
  });

  test('moves steadily and stays between the rows, whatever the rail', () => {
    const row = fc.record({
      supply: fc.integer({ min: 16, max: 60 }).map((n) => n / 10),
      ohms: fc.integer({ min: 10, max: 500 }),
    });
    fc.assert(
      fc.property(
        fc.array(row, { minLength: 1, maxLength: 5 }),
        fc.double({ min: 1, max: 7, noNaN: true }),
        (all, volts) => {
          const given = all.map(({ supply, ohms }) => max(supply, 0.01, 0.01 * ohms));
          const at = (v: number): number => pinResistance(given, undefined, rail(v))!.ohms.max;
          const chords = all.map(({ ohms }) => ohms);
          expect(at(volts)).toBeGreaterThanOrEqual(Math.min(...chords) - 1e-9);
          expect(at(volts)).toBeLessThanOrEqual(Math.max(...chords) + 1e-9);
          // 490 Ω over a tenth of a volt is the steepest that rows can be.
          expect(Math.abs(at(volts + 1e-6) - at(volts))).toBeLessThanOrEqual(4900e-6 + 1e-9);
        },
      ),
    );
  });
});

describe('a bound that is not published', () => {
  test('of a typical resistance beside highest rows is half of it, at the low end', () => {
    expect(pinResistance(rows, 25, rail(5))?.ohms).toEqual({ min: 12.5, typ: 25, max: expect.closeTo(45, 12) });
    expect(pinResistance(rows, 25, rail(5))?.assumed).toContain('half the typical');
  });

  test('of typical rows alone is half and twice the typical', () => {
    const { ohms, assumed } = pinResistance([typ(3.3, 0.04, 0.66)], undefined, rail(3.3))!;
    expect(ohms).toEqual({ min: expect.closeTo(8.25, 12), typ: expect.closeTo(16.5, 12), max: expect.closeTo(33, 12) });
    expect(assumed).toContain('half and twice');
  });

  test('of highest rows alone is half of it as typical, and half of that as lowest', () => {
    const { ohms, assumed } = pinResistance([max(3.3, 0.004, 0.5)], undefined, rail(3.3))!;
    expect(ohms).toEqual({ min: 31.25, typ: 62.5, max: 125 });
    expect(assumed).toContain('half the highest');
  });

  test('of nothing at all is nothing', () => {
    expect(pinResistance([], undefined, rail(5))).toBeUndefined();
  });

  test('of a typical resistance alone is half and twice of it', () => {
    expect(pinResistance([], 25, rail(5))?.ohms).toEqual({ min: 12.5, typ: 25, max: 50 });
  });
});

test('a typical resistance above the highest gives way to it', () => {
  const { ohms } = pinResistance(rows, 80, rail(5))!;
  expect(ohms.typ).toBeCloseTo(45, 12);
  expect(ohms.min).toBeCloseTo(22.5, 12);
});

test('the bounds stand in order, whatever is published', () => {
  const row = fc.record({
    supply: fc.constantFrom(1.8, 3, 3.3, 5),
    current: fc.constantFrom(0.002, 0.008, 0.02),
    lost: fc.record(
      { typ: fc.double({ min: 0.01, max: 1, noNaN: true }), max: fc.double({ min: 0.01, max: 2, noNaN: true }) },
      { requiredKeys: [] },
    ),
  });
  const typical = fc.option(fc.double({ min: 1, max: 200, noNaN: true }), { nil: undefined });
  fc.assert(
    fc.property(fc.array(row, { maxLength: 4 }), typical, fc.constantFrom(1.8, 3.3, 5), (given, ohms, volts) => {
      const found = pinResistance(given, ohms, rail(volts * 0.95, volts));
      if (found === undefined) return;
      expect(found.ohms.min).toBeGreaterThan(0);
      expect(found.ohms.min).toBeLessThanOrEqual(found.ohms.typ);
      expect(found.ohms.typ).toBeLessThanOrEqual(found.ohms.max);
    }),
  );
});
