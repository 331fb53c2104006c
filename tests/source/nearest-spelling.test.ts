import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { distance, nearestSpelling } from '../../src/source/nearest-spelling.js';

const keys = ['part', 'type', 'pin', 'pins', 'supply', 'series', 'driver', 'clamp', 'signals', 'forward-voltage'];

describe('the nearest spelling', () => {
  it.each([
    ['seires', 'series'],
    ['SERIES', 'series'],
    ['suply', 'supply'],
    ['supplly', 'supply'],
    ['forward voltage', 'forward-voltage'],
    ['forwardvoltage', 'forward-voltage'],
    ['pni', 'pin'],
    ['drvier', 'driver'],
    ['pinns', 'pins'],
  ])('of %s is %s', (word, expected) => {
    expect(nearestSpelling(word, keys)).toBe(expected);
  });

  it.each(['banana', 'x', '', 'resistance', 'x'.repeat(1_000_000)])('of %s is none', (word) => {
    expect(nearestSpelling(word, keys)).toBeUndefined();
  });

  it('prefers the nearer of two', () => {
    expect(nearestSpelling('pins', ['pin', 'pins'])).toBe('pins');
    expect(nearestSpelling('brick5v', ['brick-12v', 'brick-5v'])).toBe('brick-5v');
  });

  it('counts a swap of neighbours as one slip', () => {
    expect(distance('ab', 'ba')).toBe(1);
    expect(distance('seires', 'series')).toBe(1);
    expect(distance('kitten', 'sitting')).toBe(3);
  });

  it('is the same from both sides, nothing for the same word, and never more than the longer word', () => {
    fc.assert(
      fc.property(fc.string({ maxLength: 12 }), fc.string({ maxLength: 12 }), (a, b) => {
        expect(distance(a, b)).toBe(distance(b, a));
        expect(distance(a, a)).toBe(0);
        expect(distance(a, b)).toBeLessThanOrEqual(Math.max(a.length, b.length));
        expect(distance(a, b)).toBeGreaterThanOrEqual(Math.abs(a.length - b.length));
      }),
    );
  });
});
