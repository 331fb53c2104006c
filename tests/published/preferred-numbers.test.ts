import { describe, expect, it } from 'vitest';
import { nearest, nextAbove, nextBelow, type Series } from '../../src/quantity/preferred.js';

/*
 * The series are those of IEC 60063:2015, "Preferred number series for resistors and capacitors", International
 * Electrotechnical Commission. The standard itself was not at hand; the members are as listed in "Component preferred
 * values", G4USP (web page), which reproduces its tables. The page as stored breaks off within the last block of E96: the
 * members it did not show are from memory, and equal the rounded geometric series (derived).
 */
const PUBLISHED: Readonly<Record<Series, readonly number[]>> = {
  E6: [10, 15, 22, 33, 47, 68],
  E12: [10, 12, 15, 18, 22, 27, 33, 39, 47, 56, 68, 82],
  E24: [10, 11, 12, 13, 15, 16, 18, 20, 22, 24, 27, 30, 33, 36, 39, 43, 47, 51, 56, 62, 68, 75, 82, 91],
  E96: `
    100 102 105 107 110 113 115 118 121 124 127 130 133 137 140 143 147 150 154 158 162 165 169 174
    178 182 187 191 196 200 205 210 215 221 226 232 237 243 249 255 261 267 274 280 287 294 301 309
    316 324 332 340 348 357 365 374 383 392 402 412 422 432 442 453 464 475 487 499 511 523 536 549
    562 576 590 604 619 634 649 665 681 698 715 732 750 768 787 806 825 845 866 887 909 931 953 976`
    .trim()
    .split(/\s+/)
    .map(Number),
};

/** One decade of a series, found by climbing from member to member. */
function decade(series: Series, from: number): number[] {
  const members = [from];
  for (let next = from; (next = nextAbove(series, next * 1.001)) < from * 10;) members.push(next);
  return members;
}

describe('IEC 60063', () => {
  it.each(Object.entries(PUBLISHED) as [Series, number[]][])('%s has the published members', (series, members) => {
    expect(decade(series, members[0] ?? NaN)).toEqual(members);
  });

  it('E24 is a table: rounding the geometric series gives eight other numbers', () => {
    // Derived: plain rounding of 10^(i/24)·10, against the published members.
    const rounded = Array.from({ length: 24 }, (_, i) => Math.round(10 * 10 ** (i / 24)));
    expect(rounded.filter((n) => !decade('E24', 10).includes(n))).toEqual([26, 29, 32, 35, 38, 42, 46, 83]);
  });
});

describe('snapping to the series (derived from the published members)', () => {
  it.each([
    ['E12', 150, 120],
    ['E24', 150, 130],
    ['E96', 137, 133],
  ] as const)('puts 133.3 Ω in %s up to %d and down to %d', (series, above, below) => {
    expect(nextAbove(series, 133.3)).toBe(above);
    expect(nextBelow(series, 133.3)).toBe(below);
    expect(nearest(series, 133.3)).toBe({ E12: 120, E24: 130, E96: 133 }[series]);
  });

  it.each([
    ['E6', 9.9, 10],
    ['E12', 83, 100],
    ['E96', 976.5, 1000],
  ] as const)('goes on in the next decade: %s, %d up to %d', (series, value, above) => {
    expect(nextAbove(series, value)).toBe(above);
  });

  it.each([
    ['E6', 10.5, 10],
    ['E12', 10.1, 10],
    ['E24', 0.99, 0.91],
    ['E96', 99.9, 97.6],
  ] as const)('goes back to the decade before: %s, %d down to %d', (series, value, below) => {
    expect(nextBelow(series, value)).toBe(below);
  });
});

/*
 * Series resistors of an LED, rounded up to E24: "LED notes", University of Latvia, DF wiki (web page). The last column is
 * headed both 10 V and 12 V there; the arithmetic is that of 12 V.
 */
describe('a published table of LED resistors, rounded up to E24', () => {
  const supplies = [3, 3.3, 5, 12];
  const rows = [
    { mA: 2, drop: 1.8, printed: [620, 750, 1600, 5100] },
    { mA: 2, drop: 2.1, printed: [470, 620, 1500, 5100] },
    { mA: 5, drop: 1.8, printed: [240, 300, 680, 2200] },
    { mA: 5, drop: 2.1, printed: [180, 240, 620, 2000] },
    { mA: 10, drop: 1.8, printed: [120, 150, 330, 1100] },
    { mA: 10, drop: 2.1, printed: [91, 120, 300, 1000] },
    { mA: 20, drop: 1.8, printed: [68, 75, 160, 560] },
    { mA: 20, drop: 2.1, printed: [47, 62, 150, 510] },
  ];
  const cells = rows.flatMap(({ mA, drop, printed }) =>
    supplies.map((volts, i) => ({ mA, drop, volts, printed: printed[i] ?? NaN })),
  );

  it('agrees in all cells but the two where the page goes one step too high', () => {
    const others = cells
      .map((cell) => ({ ...cell, ours: nextAbove('E24', (cell.volts - cell.drop) / (cell.mA / 1000)) }))
      .filter(({ ours, printed }) => ours !== printed);
    expect(cells).toHaveLength(32);
    expect(others).toEqual([
      // 60 Ω rounds up to 62.
      { mA: 20, drop: 1.8, volts: 3, printed: 68, ours: 62 },
      // 510 Ω is a member itself.
      { mA: 20, drop: 1.8, volts: 12, printed: 560, ours: 510 },
    ]);
  });
});
