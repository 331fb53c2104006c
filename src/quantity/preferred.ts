/**
 * Preferred numbers of resistors and capacitors: IEC 60063:2015, "Preferred number series for resistors and capacitors".
 */
export type Series = 'E6' | 'E12' | 'E24' | 'E96';

/** A table, because rounding 10^(i/24) gives eight other numbers: 26 29 32 35 38 42 46 83. */
const E24 = [10, 11, 12, 13, 15, 16, 18, 20, 22, 24, 27, 30, 33, 36, 39, 43, 47, 51, 56, 62, 68, 75, 82, 91];

/** One decade of each series as whole numbers, and the power of ten that brings its first member to 1. */
const DECADES: Readonly<Record<Series, { readonly members: readonly number[]; readonly power: number }>> = {
  E6: { members: E24.filter((_, i) => i % 4 === 0), power: -1 },
  E12: { members: E24.filter((_, i) => i % 2 === 0), power: -1 },
  E24: { members: E24, power: -1 },
  // Here the rounded formula has no exception.
  E96: { members: Array.from({ length: 96 }, (_, i) => Math.round(100 * 10 ** (i / 96))), power: -2 },
};

/** A member that arithmetic missed by the last bits is that member still. */
const SAME = 1e-9;

/** The member nearest by ratio: in E12, 110 Ω is nearer to 120 (×1.09) than to 100 (×1.10). */
export function nearest(series: Series, value: number): number {
  const below = nextBelow(series, value);
  const above = nextAbove(series, value);
  return value / below <= above / value ? below : above;
}

/** The least member that is not below the value: 133.3 Ω in E24 → 150 Ω; 83 in E12 → 100. */
export function nextAbove(series: Series, value: number): number {
  const candidates = around(series, value);
  return candidates.find((member) => member >= value * (1 - SAME)) ?? Infinity;
}

/** The greatest member that is not above the value: 133.3 Ω in E24 → 130 Ω. */
export function nextBelow(series: Series, value: number): number {
  const candidates = around(series, value);
  return candidates.findLast((member) => member <= value * (1 + SAME)) ?? 0;
}

/** The members of the value's decade, with the last one before and the first one after it. */
function around(series: Series, value: number): readonly number[] {
  if (!(value > 0 && value < Infinity)) throw new RangeError(`no preferred number is near ${value}`);
  const { members, power } = DECADES[series];
  const decade = power + Math.floor(Math.log10(value));
  // Through text, so that 4.7·10^-3 is the number 0.0047 and not its neighbour.
  const scaled = (member: number, exponent: number): number => Number(`${member}e${exponent}`);
  return [
    scaled(members.at(-1) ?? NaN, decade - 1),
    ...members.map((member) => scaled(member, decade)),
    scaled(members[0] ?? NaN, decade + 1),
  ];
}
