import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type Replacement, replacements } from '../../src/source/replacements.js';

/** Each stretch is of the former text, so that they may be put in from the last to the first. */
const applied = (text: string, found: readonly Replacement[]): string =>
  found.reduceRight((now, { from, to, by }) => now.slice(0, from) + by + now.slice(to), text);

describe('replacements', () => {
  it('are no more than what differs', () => {
    const text = 'a: 1\nb: { c: 2, d: 3 }\ne: 4\n';
    expect(replacements(text, text)).toEqual([]);
    expect(replacements(text, text.replace('c: 2', 'c: 20'))).toEqual([{ from: 14, to: 14, by: '0' }]);
    expect(replacements(text, `${text.replace('d: 3', 'd: 9')}f: 5\n`)).toEqual([
      { from: 19, to: 20, by: '9' },
      { from: 28, to: 28, by: 'f: 5\n' },
    ]);
    expect(replacements(text, text.replace('e: 4\n', ''))).toEqual([{ from: 23, to: 28, by: '' }]);
  });

  it('make the one text of the other, in order and apart, and halve no character or line end', () => {
    const text = fc.string({ unit: fc.constantFrom('a', 'b', ' ', '\n', '\r\n', '😀', '😁'), maxLength: 40 });
    fc.assert(
      fc.property(text, text, (before, after) => {
        const found = replacements(before, after);
        expect(applied(before, found)).toBe(after);
        let last = -1;
        for (const { from, to, by } of found) {
          expect(from).toBeGreaterThan(last);
          expect(to).toBeGreaterThanOrEqual(from);
          last = to;
          for (const at of [from, to])
            expect(before.slice(at - 1, at + 1)).not.toMatch(/^(?:[\uD800-\uDBFF][\uDC00-\uDFFF]|\r\n)$/);
          expect(by).not.toMatch(/\p{Surrogate}/u);
        }
      }),
      { numRuns: 500, seed: 7 },
    );
  });
});
