import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { columns } from '../../src/source/visible.js';
import { textOf, wrap } from '../../src/cli/wrap.js';

const lines = (text: Parameters<typeof wrap>[0], width: number): readonly string[] => wrap(text, width).map(textOf);

describe('wrapping', () => {
  it('breaks between words', () => {
    expect(lines('the quick brown fox', 10)).toEqual(['the quick', 'brown fox']);
  });

  it('keeps a number and its unit together', () => {
    expect(lines('it draws 71 mA there', 12)).toEqual(['it draws', '71 mA there']);
    expect(lines('it has 8 % of it', 9)).toEqual(['it has', '8 % of it']);
    expect(lines('it has 8 mice', 8)).toEqual(['it has 8', 'mice']);
  });

  it('cuts a word that is wider than a line', () => {
    expect(lines('abcdefgh ij', 3)).toEqual(['abc', 'def', 'gh', 'ij']);
  });

  it('keeps the role of every stretch across lines', () => {
    expect(wrap(['one ', { text: 'two three', role: 'strong' }, ' four'], 8)).toEqual([
      [{ text: 'one ' }, { text: 'two', role: 'strong' }],
      [{ text: 'three', role: 'strong' }],
      [{ text: 'four' }],
    ]);
  });

  it('gives one empty line for an empty text', () => {
    expect(lines('', 10)).toEqual(['']);
  });

  it('never makes a line too wide and never loses a letter', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'grapheme' }), fc.integer({ min: 2, max: 40 }), (text, width) => {
        const wrapped = lines(text, width);
        expect(Math.max(...wrapped.map(columns))).toBeLessThanOrEqual(width);
        const [all] = [wrap(text, 10_000).map(textOf).join('')];
        expect(wrapped.join('').replaceAll(' ', '')).toBe(all?.replaceAll(' ', ''));
      }),
    );
  });
});
