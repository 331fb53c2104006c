import { describe, expect, it } from 'vitest';
import { columns, quote, quoteList, visible } from '../../src/source/visible.js';

describe('echoed words', () => {
  it('leave ordinary text alone, in any script', () => {
    const text = '4k7 ±5 % Ω µA °C Lüfter 漢字 שלום 🌱';
    expect(visible(text)).toBe(text);
  });

  it('stand between backticks and cannot leave them', () => {
    expect(quote('seires')).toBe('`seires`');
    expect(quote('a`b` c')).toBe("`a'b' c`");
    expect(quote('a\nb\u001b')).toBe('`a␊b␛`');
  });

  it('are cut when they are long', () => {
    expect(quote('x'.repeat(1_000_000))).toBe(`\`${'x'.repeat(49)}…\``);
    expect(quote('🌱'.repeat(60), 10)).toBe(`\`${'🌱'.repeat(9)}…\``);
  });

  it('are listed as a sentence lists them', () => {
    expect(quoteList(['a'])).toBe('`a`');
    expect(quoteList(['a', 'b'])).toBe('`a` or `b`');
    expect(quoteList(['a', 'b', 'c'], 'and')).toBe('`a`, `b` and `c`');
  });

  it('take two columns for a wide letter and none for a combining mark', () => {
    expect(columns('ab')).toBe(2);
    expect(columns('漢字')).toBe(4);
    expect(columns('e\u0301')).toBe(1);
  });
});
