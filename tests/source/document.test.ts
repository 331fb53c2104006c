import { describe, expect, it } from 'vitest';
import type { Document, Extent } from '../../src/source/document.js';
import { readDocument } from '../../src/source/read.js';

function read(text: string): Document {
  const { document, errors } = readDocument(text, 'x.yaml');
  expect(errors).toEqual([]);
  return document!;
}

describe('the data of a document', () => {
  it('has texts, numbers, truth values, lists and mappings, as YAML 1.2 reads them', () => {
    const { data } = read('a: 4k7\nb: 5\nc: 0.5\nd: true\ne: [x, ~]\nf: { g: on, h: no, i: off, j: yes }\n');
    const f = { g: 'on', h: 'no', i: 'off', j: 'yes' };
    expect(data).toEqual({ a: '4k7', b: 5, c: 0.5, d: true, e: ['x', null], f });
  });

  it('loses no digits of a whole number', () => {
    expect(read('a: 12345678901234567890\nb: 9007199254740991\nc: 9007199254740993\n').data).toEqual({
      a: '12345678901234567890',
      b: 9007199254740991,
      c: '9007199254740993',
    });
  });

  it('keeps numbers that are not finite as they were written', () => {
    expect(read('a: .inf\nb: .nan\nc: 1e999\n').data).toEqual({ a: '.inf', b: '.nan', c: '1e999' });
  });

  it('knows how a number was written', () => {
    const document = read('pin: 0x1F\nlist: [08, 1e3, "x"]\nmap: {}\n');
    expect(document.data).toEqual({ pin: 31, list: [8, 1000, 'x'], map: {} });
    expect(document.source(['pin'])).toBe('0x1F');
    expect(document.source(['list', 0])).toBe('08');
    expect(document.source(['list', 1])).toBe('1e3');
    expect(document.source(['list', 2])).toBe('x');
    expect(document.source(['map'])).toBeUndefined();
    expect(document.source(['nothing'])).toBeUndefined();
  });

  it('has all keys as text', () => {
    expect(Object.keys(read('a: { 1: x, 2: y, true: z, null: w }\n').data as object)).toEqual(['a']);
    expect((read('a: { 1: x, true: z, null: w }\n').data as { a: object }).a).toEqual({
      '1': 'x',
      true: 'z',
      null: 'w',
    });
  });

  it('pollutes no prototype', () => {
    const { data } = read('__proto__: { polluted: 1 }\nconstructor: { prototype: { polluted: 2 } }\n');
    expect(({} as { polluted?: number }).polluted).toBeUndefined();
    expect(Object.getPrototypeOf(data)).toBeNull();
    expect(Object.keys(data as object)).toEqual(['__proto__', 'constructor']);
  });

  it('keeps the first of two equal keys', () => {
    expect(readDocument('a: 1\na: 2\n', 'x.yaml').document?.data).toEqual({ a: 1 });
  });
});

describe('places in a document', () => {
  const text = `title: x
loads:
  vents:
    inputs: { 1: D4, 2: { pin: D5 } }
  horn: { part: relay, pins: [D1, D2] }
  empty:
`;
  const document = read(text);
  const stretchOf = ({ line, column, endLine, endColumn }: Extent): string => {
    const starts = text.split('\n').map((_, k, lines) => lines.slice(0, k).join('\n').length + Math.min(k, 1));
    return text.slice(starts[line - 1]! + column - 1, starts[endLine - 1]! + endColumn - 1);
  };

  it.each([
    [['title'], 'key', 1, 1, 'title: x'],
    [['title'], 'value', 1, 8, 'x'],
    [['loads', 'vents'], 'key', 3, 3, 'vents:\n    inputs: { 1: D4, 2: { pin: D5 } }'],
    [['loads', 'vents', 'inputs', '1'], 'key', 4, 15, '1: D4'],
    [['loads', 'vents', 'inputs', 1], 'value', 4, 18, 'D4'],
    [['loads', 'vents', 'inputs', '2', 'pin'], 'value', 4, 32, 'D5'],
    [['loads', 'horn', 'pins', 1], 'value', 5, 35, 'D2'],
    [['loads', 'horn', 'pins', 1], 'key', 5, 35, 'D2'],
    [['loads', 'empty'], 'value', 6, 3, 'empty'],
    [[], 'value', 1, 1, text.trimEnd()],
    [['wires', 0], 'key', 1, 1, 'title: x'],
    [['loads', 'horn', 'clamp', 'part'], 'key', 5, 3, 'horn'],
  ] as const)('finds %j by its %s, to its end', (path, on, line, column, stretch) => {
    const place = document.place(path, on);
    expect(place).toMatchObject({ file: 'x.yaml', line, column });
    expect(stretchOf(place)).toBe(stretch);
  });

  it('gives the key when not told otherwise', () => {
    expect(document.place(['loads', 'horn'])).toEqual(document.place(['loads', 'horn'], 'key'));
  });

  it('ends a block before the blank lines and comments behind it', () => {
    const spaced = read('loads:\n  vents:\n    pin: D4   \n\n  # the next one\n  horn: 1\n');
    expect(spaced.place(['loads', 'vents'])).toMatchObject({ line: 2, endLine: 3, endColumn: 12 });
  });

  it('gives the nearest key above for what is not there', () => {
    const start = ({ line, column }: Extent) => ({ line, column });
    expect(start(document.place(['loads', 'horn', 'pins', 9], 'value'))).toEqual(
      start(document.place(['loads', 'horn', 'pins'])),
    );
  });

  it('does not take what JavaScript inherits for a key', () => {
    expect(stretchOf(document.place(['loads', 'constructor']))).toBe('loads');
  });

  it('gives the stretch of text of a value, for edits', () => {
    const [from, to] = document.span(['loads', 'vents', 'inputs', '2', 'pin'])!;
    expect(text.slice(from, to)).toBe('D5');
    const [keyFrom, keyTo] = document.span(['loads', 'horn'], 'key')!;
    expect(text.slice(keyFrom, keyTo)).toBe('horn');
    expect(document.span(['loads', 'horn', 'clamp'])).toBeUndefined();
  });
});
