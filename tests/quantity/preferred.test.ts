import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { nearest, nextAbove, nextBelow, type Series } from '../../src/quantity/preferred.js';

const seriesNames: readonly Series[] = ['E6', 'E12', 'E24', 'E96'];
const series = fc.constantFrom(...seriesNames);
const value = fc.double({ min: -9, max: 9, noNaN: true }).map((exponent) => 10 ** exponent);
const DUST = 1e-9;

describe('preferred numbers', () => {
  it('enclose every value', () => {
    fc.assert(
      fc.property(series, value, (s, v) => {
        expect(nextBelow(s, v)).toBeLessThanOrEqual(v * (1 + DUST));
        expect(nextAbove(s, v)).toBeGreaterThanOrEqual(v * (1 - DUST));
      }),
    );
  });

  it('have no other member between the two that enclose a value', () => {
    fc.assert(
      fc.property(series, value, (s, v) => {
        const [below, above] = [nextBelow(s, v), nextAbove(s, v)];
        if (below === above) return;
        expect(nextAbove(s, below * 1.0001)).toBe(above);
        expect(nextBelow(s, above / 1.0001)).toBe(below);
      }),
    );
  });

  it('map to themselves, up, down and nearest', () => {
    fc.assert(
      fc.property(series, value, (s, v) => {
        const member = nextAbove(s, v);
        expect([nextAbove(s, member), nextBelow(s, member), nearest(s, member)]).toEqual([member, member, member]);
      }),
    );
  });

  it('are the same in every decade', () => {
    fc.assert(
      fc.property(series, value, fc.integer({ min: -6, max: 6 }), (s, v, decades) => {
        const scale = 10 ** decades;
        for (const snap of [nearest, nextAbove, nextBelow]) {
          expect(Math.abs(snap(s, v * scale) / (snap(s, v) * scale) - 1)).toBeLessThan(DUST);
        }
      }),
    );
  });

  it('are nearest by ratio', () => {
    fc.assert(
      fc.property(series, value, (s, v) => {
        const ratio = (member: number): number => Math.max(member / v, v / member);
        expect(ratio(nearest(s, v))).toBe(Math.min(ratio(nextAbove(s, v)), ratio(nextBelow(s, v))));
      }),
    );
    // By difference both neighbours are equally near.
    expect(nearest('E12', 110)).toBe(120);
  });

  it('recognise a member that arithmetic missed by its last bits', () => {
    expect((12 - 1.8) / 0.02).not.toBe(510);
    expect(nextAbove('E24', (12 - 1.8) / 0.02)).toBe(510);
    expect(nextBelow('E24', 0.1 * 3 * 1000)).toBe(300);
    expect(nextBelow('E24', 509.9999999999)).toBe(510);
    expect(nextAbove('E24', 510.0000000001)).toBe(510);
    expect(nextAbove('E24', 510.0001)).toBe(560);
    expect(nextBelow('E24', 509.9999)).toBe(470);
  });

  it('are exact decimal numbers in small decades', () => {
    expect(nextAbove('E12', 0.0046)).toBe(0.0047);
    expect(nextAbove('E96', 1.2e-8)).toBe(1.21e-8);
  });

  it.each([0, -1, NaN, Infinity, -Infinity])('are not defined for %d', (v) => {
    for (const snap of [nearest, nextAbove, nextBelow]) expect(() => snap('E24', v)).toThrow(RangeError);
  });
});
