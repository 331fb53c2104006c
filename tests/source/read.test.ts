import { describe, expect, it } from 'vitest';
import { readDocument } from '../../src/source/read.js';
import { marked } from './marked.js';

const bytes = (...values: number[]) => new Uint8Array(values);

/** What is wrong, the text, and every diagnostic as 'line:column [marked text] sentence'. */
const table: readonly (readonly [string, string | Uint8Array, readonly string[]])[] = [
  ['an empty file', '', ['1:1 [] the file is empty']],
  ['nothing but comments', '\n  # one\n\n# two\n', ['1:1 [] the file is empty']],
  ['zero bytes', 'a: \0b', ['1:4 [␀] the file is not text: it holds zero bytes']],
  ['bytes that are no UTF-8', bytes(97, 58, 32, 0xff, 10), ['1:4 [\ufffd] these bytes are not UTF-8']],
  ['UTF-16', bytes(0xff, 0xfe, 97, 0), ['1:1 [] the file is text in UTF-16']],
  ['a list at the root', '- a\n- b\n', ['1:1 [- a] the file holds a list, not keys with values']],
  ['a text at the root', 'ampledger:1\n', ['1:1 [ampledger:1] the file holds a text, not keys with values']],
  ['a tab as indentation', 'a:\n\tb: 1\n', ['2:1 [ ] a tab is used as indentation']],
  ['a key twice', 'a: 1\nb: 2\na: 3\n', ['3:1 [a] the key `a` stands here a second time']],
  ['a whole number as key twice', 'a:\n  1: x\n  1: y\n', ['3:3 [1] the key `1` stands here a second time']],
  ['a number and its text as keys', 'a: { 1: x, "1": y }\n', ['1:12 ["1"] the key `1` stands here a second time']],
  ['an anchor', 'a: &x { b: 1 }\n', ['1:4 [&x] `&x` is an anchor, which project files do not have']],
  [
    'an alias',
    'a: &x 1\nb: *x\n',
    [
      '1:4 [&x] `&x` is an anchor, which project files do not have',
      '2:4 [*x] `*x` is an alias, which project files do not have',
    ],
  ],
  ['a merge key', 'a:\n  <<: *x\n', ['2:3 [<<] `<<` is a merge key, which project files do not have']],
  ['a tag', 'a: !!str 5\n', ['1:4 [!!str] `!!str` is a tag, which project files do not have']],
  ['a tag of its own', 'a: !secret x\n', ['1:4 [!secret] `!secret` is a tag, which project files do not have']],
  ['an old version of YAML', '%YAML 1.1\n---\na: yes\n', ['1:1 [%YAML 1.1] a project file has no YAML directives']],
  ['a second document', 'a: 1\n---\nb: 2\n', ['2:1 [-] a second document begins here']],
  ['a key that is missing', ': x\n', ['1:1 [:] a key is missing before this']],
  ['a key that is a list', '? [a, b]\n: c\n', ['1:3 [[a, b]] a list or mapping cannot be a key']],
  ['a quote left open', 'a: "x\nb: 2\n', ['1:4 ["] this quote is never closed']],
  ['a single quote left open', "a: 'x\n", ["1:4 ['] this quote is never closed"]],
  ['a brace left open', 'a: { b: 1\nc: 2\n', ['1:4 [{] this bracket is never closed']],
  [
    'a line inside brackets that is not indented',
    'a: [\n1\n]\n',
    ['2:1 [1] this line stands inside brackets and is indented too little'],
  ],
  ['a bracket too much', 'a: {b: 1}}\n', ['1:10 [}] this was not expected here']],
  ['a comma too much', 'a: {b: 1,, c: 2}\n', ['1:10 [,] there is a comma too much']],
  ['two keys on one line', 'title: Shed: lights\n', ['1:8 [S] a second key stands on this line']],
  ['two keys in braces without comma', 'a: {b: c: d}\n', ['1:8 [c: d] a key stands inside the value of another']],
  ['a colon without a space', 'a:b\nc: 1\n', ['1:1 [a:b] a space is missing after the colon']],
  ['a list on the line of its key', 'a: - 1\n', ['1:4 [-] a list cannot begin on the line of its key']],
  ['a key indented too much', 'a: 1\n b: 2\n', ['1:4 [1] the line after this is indented more than its neighbours']],
  [
    'a key between two columns',
    'a:\n    b: 1\n  c: 2\n',
    ['3:1 [ ] this line is indented unlike the ones it belongs to'],
  ],
  ['an entry between two columns', 'a:\n  - b\n - c\n', ['3:1 [ ] this entry is indented unlike the ones before it']],
  ['a text after a quoted text', "a: 'it's'\n", ["1:8 [s'] this stands after the closing quote"]],
  ['words after the sign of a block', 'a: |x\n  b\n', ['1:5 [x] only a comment may follow `|` or `>` on its line']],
  [
    'several broken lines, once each',
    'a: [1,,, 2]\nb: "x" y\nc: {d: 1,,}\n',
    [
      '1:7 [,] there is a comma too much',
      '2:8 [y] this stands after the closing quote',
      '3:10 [,] there is a comma too much',
    ],
  ],
  ['a sign that no text begins with', 'a: @x\n', ['1:4 [@] a text cannot begin with this sign']],
  ['an escape that means nothing', 'a: "\\q"\n', ['1:5 [\\] this escape means nothing in a double-quoted text']],
  [
    'an escape sequence of terminals',
    'a: "\\e[31m"\n',
    ['1:4 ["\\e[31m"] this text holds a control character (U+001B)'],
  ],
  [
    'a text that turns the line round',
    'a: x\u202ey\n',
    ['1:4 [x\ufffdy] this text holds a control character (U+202E)'],
  ],
];

describe('reading a file', () => {
  it.each(table)('refuses %s, with its place', (_, text, expected) => {
    const { errors } = readDocument(text, 'x.yaml');
    expect(errors.map(marked)).toEqual(expected);
    expect(errors.every(({ file }) => file === 'x.yaml')).toBe(true);
  });

  it('says all that is wrong at once, in the order of the lines', () => {
    const { errors } = readDocument('b: *x\na: &y 1\na: !z 2\nc: !z "\\e"\n', 'x.yaml');
    expect(errors.map(({ line, column }) => [line, column])).toEqual([
      [1, 4],
      [2, 4],
      [3, 1],
      [4, 4],
      [4, 7],
    ]);
  });

  it('still gives a document when only words of YAML are wrong that a project file does not have', () => {
    const { document, errors } = readDocument('a: &y 1\nb: !z 2\n', 'x.yaml');
    expect(errors).toHaveLength(2);
    expect(document?.data).toEqual({ a: 1, b: '2' });
  });

  it('names `like` and `parts` where somebody looks for aliases', () => {
    for (const text of ['a: &x 1\n', 'a: &x 1\nb: *x\n', 'a: &x {}\nb: { <<: *x }\n'])
      for (const { expected } of readDocument(text, 'x.yaml').errors) {
        expect(expected).toContain('`like:');
        expect(expected).toContain('`parts`');
      }
  });

  it('lets a byte order mark, Windows line ends, one document with its marks and YAML 1.2 pass', () => {
    for (const text of ['\ufeffa: 1\n', 'a: 1\r\nb: 2\r\n', '---\na: 1\n...\n', '%YAML 1.2\n---\na: 1\n', 'a: {}\n'])
      expect(readDocument(text, 'x.yaml')).toMatchObject({ errors: [], document: { data: {} } });
  });

  it('counts columns behind a byte order mark as an editor does', () => {
    expect(readDocument('\ufeffa: @x\n', 'x.yaml').errors[0]).toMatchObject({ line: 1, column: 4 });
  });

  it('counts lines that end the Windows way once', () => {
    expect(readDocument('a: 1\r\nb: 2\r\nc: @x\r\n', 'x.yaml').errors[0]).toMatchObject({ line: 3, column: 4 });
  });
});
