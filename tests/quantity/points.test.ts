import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { exactly } from '../../src/quantity/interval.js';
import { interpolate, type Point } from '../../src/quantity/points.js';

const points: readonly Point[] = [
  { at: 10, value: { min: 0.9, typ: 1, max: 1.2 } },
  { at: 20, value: { min: 1.8, typ: 2, max: 2.4 } },
  { at: 40, value: { min: 2.8, typ: 3, max: 3.4 } },
];

describe('a figure between its points', () => {
  it.each([
    [10, { min: 0.9, typ: 1, max: 1.2 }],
    [15, { min: 1.35, typ: 1.5, max: 1.8 }],
    [20, { min: 1.8, typ: 2, max: 2.4 }],
    [30, { min: 2.3, typ: 2.5, max: 2.9 }],
    [40, { min: 2.8, typ: 3, max: 3.4 }],
  ])('is linear, at %d', (at, value) => {
    const found = interpolate(points, at);
    expect(found.extended).toBe(false);
    expect(found.value.min).toBeCloseTo(value.min, 12);
    expect(found.value.typ).toBeCloseTo(value.typ, 12);
    expect(found.value.max).toBeCloseTo(value.max, 12);
  });

  it.each([
    [5, 0.5],
    [0, 0],
    [60, 4],
  ])('is extended along the outermost pair, and says so, at %d', (at, typ) => {
    const found = interpolate(points, at);
    expect(found.extended).toBe(true);
    expect(found.value.typ).toBeCloseTo(typ, 12);
  });

  it('does not care in which order the points stand', () => {
    const shuffled = [points[1], points[2], points[0]] as Point[];
    for (const at of [5, 10, 15, 30, 60]) expect(interpolate(shuffled, at)).toEqual(interpolate(points, at));
  });

  it('is constant with one point, extended anywhere but at it', () => {
    const one: readonly Point[] = [{ at: 20, value: exactly(2) }];
    expect(interpolate(one, 20)).toEqual({ value: exactly(2), extended: false });
    expect(interpolate(one, 1)).toEqual({ value: exactly(2), extended: true });
    expect(interpolate(one, 99)).toEqual({ value: exactly(2), extended: true });
  });

  it('keeps its bounds in order where extended lines cross', () => {
    const narrowing: readonly Point[] = [
      { at: 1, value: { min: 1, typ: 2, max: 3 } },
      { at: 2, value: { min: 2, typ: 2, max: 2.2 } },
    ];
    const { value } = interpolate(narrowing, 4);
    expect(value.min).toBeLessThanOrEqual(value.typ);
    expect(value.typ).toBeLessThanOrEqual(value.max);
    expect(value.min).toBeCloseTo(0.6, 12);
    expect(value.max).toBeCloseTo(4, 12);
  });

  it('stays a number when two points hold at the same condition', () => {
    const twice: readonly Point[] = [
      { at: 1, value: exactly(1) },
      { at: 2, value: exactly(5) },
      { at: 2, value: exactly(6) },
    ];
    expect(interpolate(twice, 2).value.typ).toBe(6);
    expect(interpolate(twice, 3).value.typ).toBe(6);
    expect(interpolate(twice, 1.5).value.typ).toBe(3);
  });

  it('throws without any point', () => {
    expect(() => interpolate([], 1)).toThrow(RangeError);
  });

  it('lies between its two neighbours', () => {
    const rising = fc
      .array(fc.tuple(fc.integer({ min: -1000, max: 1000 }), fc.double({ min: -100, max: 100, noNaN: true })), {
        minLength: 2,
        maxLength: 8,
      })
      .map((pairs) => [...new Map(pairs)].map(([at, y]): Point => ({ at, value: exactly(y) })))
      .filter((row) => row.length > 1);
    fc.assert(
      fc.property(rising, fc.double({ min: 0, max: 1, noNaN: true }), (row, share) => {
        const sorted = [...row].sort((a, b) => a.at - b.at);
        const low = sorted[0]?.at ?? 0;
        const at = low + share * ((sorted.at(-1)?.at ?? 0) - low);
        const before = sorted.findLast((point) => point.at <= at) ?? sorted[0];
        const after = sorted.find((point) => point.at >= at) ?? sorted.at(-1);
        const ends = [before?.value.typ ?? NaN, after?.value.typ ?? NaN];
        const { value, extended } = interpolate(row, at);
        expect(extended).toBe(false);
        expect(value.typ).toBeGreaterThanOrEqual(Math.min(...ends) - 1e-9);
        expect(value.typ).toBeLessThanOrEqual(Math.max(...ends) + 1e-9);
      }),
    );
  });
});
