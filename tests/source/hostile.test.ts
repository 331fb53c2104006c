import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { checkEntry, checkFrame } from '../../src/source/check.js';
import { renderDiagnostic } from '../../src/source/diagnostic.js';
import { readDocument } from '../../src/source/read.js';
import { marked } from './marked.js';

/** A text of some length, made of one piece or of numbered ones. */
const many = (length: number, piece: (index: number) => string): string => {
  let text = '';
  for (let index = 0; text.length < length; index++) text += piece(index);
  return text;
};

/** Everything that a caller does with a file that is wrong. */
function readAndShow(text: string | Uint8Array): string[] {
  const { document, errors } = readDocument(text, 'x.yaml');
  const problems = document ? checkFrame(document.data).map((problem) => document.diagnostic(problem)) : [];
  return [...errors, ...problems].map(renderDiagnostic);
}

describe('a hostile file', () => {
  it('of 10 MB is refused at once, with its size', () => {
    const start = performance.now();
    const { document, errors } = readDocument('x'.repeat(10_000_000), 'x.yaml');
    expect(document).toBeUndefined();
    expect(errors.map(marked)).toEqual(['1:1 [] the file has 10.0 MB, and no more than 1 MB is read']);
    expect(readDocument(new Uint8Array(10_000_000), 'x.yaml').errors[0]?.says).toContain('10.0 MB');
    expect(performance.now() - start).toBeLessThan(200);
  });

  it('is measured in bytes, not in characters', () => {
    expect(readDocument(`# ${'漢'.repeat(400_000)}\na: 1\n`, 'x.yaml').errors[0]?.says).toContain('1.2 MB');
  });

  it.each([
    ['brackets', '['.repeat(20_000), '1:62 [[]'],
    ['braces', '{a: '.repeat(20_000), '1:245 [{]'],
    ['dashes', `${'- '.repeat(20_000)}x`, '1:123 [-]'],
    ['question marks', '? '.repeat(20_000), '1:123 [?]'],
    ['colons', `a${': '.repeat(20_000)}`, '1:124 [:]'],
    ['lines', many(20_000, (index) => `${' '.repeat(index)}a:\n`), '62:62 [a]'],
    ['lists in mappings', many(20_000, (index) => `${' '.repeat(2 * index)}- a:\n`), '31:63 [a]'],
  ])('nested 20,000 levels by %s is refused twice in one process', (_, text, place) => {
    for (const _again of [1, 2]) {
      const { document, errors } = readDocument(text, 'x.yaml');
      expect(document).toBeUndefined();
      const deep = errors.find(({ says }) => says === 'this is nested more than 60 levels deep');
      expect(deep).toBeDefined();
      expect(marked(deep!)).toContain(place);
    }
  });

  it('may be nested sixty levels', () => {
    expect(readDocument(`a: ${'['.repeat(59)}${']'.repeat(59)}`, 'x.yaml').errors).toEqual([]);
    expect(readDocument(`a: ${'['.repeat(61)}${']'.repeat(61)}`, 'x.yaml').errors).toHaveLength(1);
  });

  it('with a bomb of aliases is refused without expanding it', () => {
    const names = 'abcdefghi'.split('');
    const bomb = names.map((name, index) => {
      const inside = index === 0 ? 'x' : names[index - 1]!;
      return `${name}: &${name} [${Array.from({ length: 9 }, () => (index === 0 ? inside : `*${inside}`)).join(', ')}]`;
    });
    const start = performance.now();
    const { errors } = readDocument(bomb.join('\n'), 'x.yaml');
    expect(errors.length).toBeGreaterThan(9);
    expect(errors.some(({ says }) => says.includes('alias'))).toBe(true);
    expect(performance.now() - start).toBeLessThan(500);
  });

  const long = 900_000;
  it.each([
    ['list entries', many(long, () => 'a:\n- b\n')],
    ['keys', many(long, (index) => `k${index}: 1\n`)],
    ['equal keys', many(long, () => 'a: 1\n')],
    ['braces on one line', `a: {${many(long, (index) => `k${index}: 1,`)}}`],
    ['closing brackets', ']'.repeat(long)],
    ['quotes', '"'.repeat(long)],
    ['open quotes', many(long, () => 'a: "x\n')],
    ['backslashes', `a: "${'\\'.repeat(long)}"`],
    ['spaces', ' '.repeat(long)],
    ['line ends', '\n'.repeat(long)],
    ['documents', '---\n'.repeat(long / 4)],
    ['anchors', '&a '.repeat(long / 3)],
    ['tags', '!a '.repeat(long / 3)],
    ['digits', `a: ${'9'.repeat(long)}`],
    ['one key', `"${'k'.repeat(long)}": 1`],
    ['wrong loads', `ampledger: 1\ntitle: x\nloads: {${many(150_000, (index) => `l${index}: { tipe: led },`)}}`],
    ['unknown keys', `ampledger: 1\ntitle: x\n${many(150_000, (index) => `u${index}: 1\n`)}`],
  ])('of a million characters, all %s, is done with in bounded time, with a bounded answer', (_, text) => {
    const start = performance.now();
    const said = readAndShow(text);
    expect(said.length).toBeGreaterThan(0);
    expect(said.length).toBeLessThanOrEqual(300);
    for (const each of said) expect(each.length).toBeLessThan(1000);
    // Some tenths of a second on an idle machine; the bound is for a busy one. What grows by the square takes minutes.
    expect(performance.now() - start).toBeLessThan(8000);
  });

  it('never makes the reader throw, nor the check, and never a line that a terminal would obey', () => {
    const pieces = fc.constantFrom(
      ...[
        'a',
        'loads',
        'ampledger: 1\n',
        'title: x\n',
        'loads:\n',
        '  h: {',
        '}',
        '[',
        ']',
        ': ',
        '- ',
        '? ',
        ', ',
        '\n',
        '  ',
      ],
      ...[
        '"',
        "'",
        '|\n',
        '>\n',
        '&a ',
        '*a',
        '!t ',
        '# ',
        '%YAML 1.1\n',
        '---\n',
        '...\n',
        '\t',
        '\r',
        '\0',
        '\u001b[1m',
        '\\e',
      ],
      ...[
        '<<: ',
        '__proto__',
        'null',
        '1',
        '0x1F',
        '.inf',
        '± 5 %',
        '\u202e',
        '\ud800',
        '🌱',
        'type: coil',
        'driver: ',
        'part: ',
      ],
    );
    fc.assert(
      fc.property(fc.array(pieces, { maxLength: 60 }), (parts) => {
        const text = parts.join('');
        const { document } = readDocument(text, 'x.yaml');
        if (document)
          for (const kind of ['load', 'supply', 'clamp'] as const) checkEntry(kind, document.data, ['loads', 'h']);
        for (const line of readAndShow(text)) {
          // eslint-disable-next-line no-control-regex
          expect(line).not.toMatch(/[\u0000-\u0009\u000b-\u001f\u007f-\u009f\u2028-\u202e]|\p{Surrogate}/u);
        }
      }),
      { numRuns: 500 },
    );
  });
});
