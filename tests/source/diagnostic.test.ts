import { describe, expect, it } from 'vitest';
import { diagnosticAt, lineStarts, renderDiagnostic } from '../../src/source/diagnostic.js';
import type { Diagnostic } from '../../src/source/place.js';

/** A diagnostic about the first occurrence of `word`. */
function about(text: string, word: string, says = 'wrong', expected?: string): Diagnostic {
  const from = text.indexOf(word);
  return diagnosticAt({ file: 'x.yaml', text, starts: lineStarts(text) }, from, from + word.length, says, expected);
}

describe('a diagnostic', () => {
  it('shows place, line, mark and advice', () => {
    const text = 'loads:\n  heartbeat: { part: led, seires: 330 Ω }\n';
    expect(renderDiagnostic(about(text, 'seires', 'unknown key `seires`', 'did you mean `series`?'))).toBe(
      [
        'x.yaml:2:27  unknown key `seires`',
        '   2 |   heartbeat: { part: led, seires: 330 Ω }',
        '     |                           ^^^^^^ did you mean `series`?',
      ].join('\n'),
    );
  });

  it('puts long advice on a line of its own', () => {
    const lines = renderDiagnostic(about('a: b\n', 'b', 'wrong', 'x'.repeat(100))).split('\n');
    expect(lines).toHaveLength(4);
    expect(lines[3]).toBe(`     | ${'x'.repeat(100)}`);
  });

  it('marks a text over several lines on its first line only', () => {
    expect(about('a: "x\n  y"\nb: 1\n', '"x\n  y"')).toMatchObject({ line: 1, column: 4, width: 2 });
  });

  it('shows a line of a hundred characters whole', () => {
    const text = `${'a'.repeat(95)}: bcd\n`;
    expect(about(text, 'bcd').excerpt?.text).toBe(text.trimEnd());
  });

  it('cuts a long line to a window round the mark', () => {
    const text = `a: ${'x'.repeat(500)} HERE ${'y'.repeat(500)}\n`;
    const { excerpt } = about(text, 'HERE');
    expect(excerpt!.text.startsWith('…')).toBe(true);
    expect(excerpt!.text.endsWith('…')).toBe(true);
    expect(excerpt!.text.length).toBeLessThanOrEqual(102);
    expect(excerpt!.text.slice(excerpt!.marker.indexOf('^'), excerpt!.marker.length)).toBe('HERE');
  });

  it('does not cut a line that ends inside the window', () => {
    const text = `a: ${'x'.repeat(500)} HERE\n`;
    expect(about(text, 'HERE').excerpt!.text.endsWith('HERE')).toBe(true);
  });

  it('keeps the mark under its word after tabs, wide letters and combining marks', () => {
    const { excerpt } = about('a:\t漢字 e\u0301 HERE\n', 'HERE');
    expect(excerpt!.text).toBe('a: 漢字 e\u0301 HERE');
    // Two columns for each wide letter, none for the accent.
    expect(excerpt!.marker).toBe(`${' '.repeat(3 + 4 + 1 + 1 + 1)}^^^^`);
  });

  it.each([
    ['an escape', '\u001b[31m', '␛[31m'],
    ['a carriage return', 'a\rb', 'a␍b'],
    ['an eight-bit control', '\u009b31m', '\ufffd31m'],
    ['a direction override', 'a\u202eb', 'a\ufffdb'],
    ['a line separator', 'a\u2028b', 'a\ufffdb'],
    ['half a character', 'a\ud800b', 'a\ufffdb'],
  ])('cannot break out of a terminal by %s', (_, inside, shown) => {
    const rendered = renderDiagnostic({ ...about(`k: ${inside} END\n`, 'END', inside, inside), file: inside });
    expect(rendered).toContain(shown);
    // eslint-disable-next-line no-control-regex
    expect(rendered).not.toMatch(/[\u0000-\u0009\u000b-\u001f\u007f-\u009f\u202a-\u202e\u2028\u2029]/);
  });

  it('without an excerpt is still readable', () => {
    const bare = {
      file: 'x.yaml',
      line: 1,
      column: 1,
      width: 1,
      says: 'the file is empty',
      expected: 'write something',
    };
    expect(renderDiagnostic(bare)).toBe('x.yaml:1:1  the file is empty\n  write something');
  });
});
