/** Changes written into the text: the same data as changes made to the data, and everything else byte for byte. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { read } from '../../src/index.js';
import { withChanges } from '../../src/remedies/change.js';
import { editedText } from '../../src/source/edit.js';
import { sampleText } from '../samples/audited.js';

const dataOf = (text: string): unknown => {
  const { document, errors } = read(text, 'x.yaml');
  expect(errors).toEqual([]);
  return plain(document!.data);
};
const plain = (data: unknown): unknown => JSON.parse(JSON.stringify(data));

const TEXT = `# a comment at the top
ampledger: 1
title:   Odd   spacing      # kept

supplies:   # two of them
  laptop: {type: usb2-port}     # tight braces
  brick:  { voltage: 5 V ±4 %, current: 2 A, }
  # before the loads

loads:
  horn: { part: relay-coil-5v-70r, pin: D9 } # the last thing fitted
  lamp:
    part: led-red-5mm   # red
    pin: D5
    series: 330 Ω

  # at the end
  bell: { part: relay-coil-5v-70r, pin: D8 }
`;

describe('a change in the text', () => {
  test.each([
    ['a value', ['loads', 'lamp', 'series'], '470 Ω', 'series: 330 Ω', 'series: 470 Ω'],
    ['a value in braces', ['loads', 'horn', 'pin'], 'D10', 'pin: D9 }', 'pin: D10 }'],
    ['the last key in braces', ['loads', 'horn', 'pin'], undefined, ', pin: D9 }', ' }'],
    [
      'the first key in braces',
      ['loads', 'horn', 'part'],
      undefined,
      '{ part: relay-coil-5v-70r, pin: D9',
      '{ pin: D9',
    ],
    ['a line', ['loads', 'lamp', 'pin'], undefined, '    pin: D5\n', ''],
    ['the last line of a block', ['loads', 'lamp', 'series'], undefined, '    series: 330 Ω\n', ''],
    ['a new key in braces', ['loads', 'horn', 'supply'], 'brick', 'pin: D9 }', 'pin: D9, supply: brick }'],
    ['a new key behind a comma', ['supplies', 'brick', 'resistance'], '1 Ω', '2 A, }', '2 A, resistance: 1 Ω }'],
    ['a new key in tight braces', ['supplies', 'laptop', 'note'], 'mine', 'usb2-port}', 'usb2-port, note: mine}'],
    ['a new line', ['loads', 'lamp', 'active'], 'low', '330 Ω\n', '330 Ω\n    active: low\n'],
    [
      'a new entry',
      ['supplies', 'coils'],
      { voltage: '5 V ±5 %', current: '500 mA' },
      '2 A, }\n',
      '2 A, }\n  coils: { voltage: 5 V ±5 %, current: 500 mA }\n',
    ],
    ['a new mapping', ['loads', 'bell', 'driver', 'pin'], 'D3', 'pin: D8 }\n', 'pin: D8, driver: { pin: D3 } }\n'],
    ['a text that needs quotes', ['loads', 'lamp', 'note'], 'a: b, # c', '330 Ω\n', '330 Ω\n    note: "a: b, # c"\n'],
  ])('of %s touches nothing else', (_, path, value, was, is) => {
    const edited = editedText(TEXT, [{ path, value }]);
    expect(TEXT.split(was)).toHaveLength(2);
    expect(edited).toBe(TEXT.replace(was, is));
    expect(dataOf(edited)).toEqual(plain(withChanges(dataOf(TEXT), [{ path, value }])));
  });

  test('a whole section that is missing is written line by line', () => {
    const text = 'ampledger: 1\ntitle: Bare';
    expect(editedText(text, [{ path: ['supplies', 'brick'], value: { voltage: '5 V', current: '1 A' } }])).toBe(
      'ampledger: 1\ntitle: Bare\nsupplies:\n  brick: { voltage: 5 V, current: 1 A }\n',
    );
  });

  test('the ends of lines stay as they are', () => {
    const crlf = TEXT.replaceAll('\n', '\r\n');
    const changes = [
      { path: ['loads', 'lamp', 'active'], value: 'low' },
      { path: ['loads', 'lamp', 'pin'], value: undefined },
    ];
    expect(editedText(crlf, changes)).toBe(editedText(TEXT, changes).replaceAll('\n', '\r\n'));
  });
});

/** Paths of a document, with those of keys that it does not have. */
function pathsOf(data: unknown, at: readonly (string | number)[] = []): (readonly (string | number)[])[] {
  if (typeof data !== 'object' || data === null) return [at];
  const inside = Object.entries(data).flatMap(([key, value]) =>
    pathsOf(value, [...at, Array.isArray(data) ? Number(key) : key]),
  );
  return [...(at.length > 0 && !Array.isArray(data) ? [at, [...at, 'note']] : []), ...inside];
}

const names = ['seedling-house', 'greenhouse-vents-usb', 'gate-latch-on-pin', 'rain-barrel-shift-register'];
const values = fc.oneof(
  fc.constantFrom(
    'D5',
    '1 kΩ ±5 %',
    'main.5v',
    'yes',
    '12',
    'a # b',
    'it’s "so"',
    '- x',
    '5 to 40 °C',
    '',
    'null',
    '0x1F',
  ),
  fc.constant({ part: 'npn-2n2222a', 'base-resistor': '1 kΩ', pin: 'D8' }),
  fc.constant(['D5', 'D6..D7']),
  fc.string({ unit: fc.constantFrom(...'ab #:,{}[]"\'&*%-1 é') }),
);

describe.each(names)('any changes to %s', (name) => {
  const text = sampleText(name);
  const data = dataOf(text);
  const mappings = pathsOf(data).filter((path) => !path.some((key) => typeof key === 'number'));
  const change = fc.record({
    path: fc.constantFrom(...mappings),
    value: fc.option(values, { nil: undefined }),
  });
  test('come to the same in the text and in the data', () => {
    fc.assert(
      fc.property(fc.array(change, { minLength: 1, maxLength: 4 }), (changes) => {
        // Below a plain value there is no key to set: in the data it would be thrown away.
        const edited = editedText(text, changes);
        expect(dataOf(edited)).toEqual(plain(withChanges(data, changes)));
      }),
      { numRuns: 300 },
    );
  });
  test('leave every line alone that they do not name', () => {
    fc.assert(
      fc.property(fc.constantFrom(...mappings.filter((p) => p.length > 1)), (path) => {
        const edited = editedText(text, [{ path, value: 'D5' }]);
        const [was, is] = [text.split('\n'), edited.split('\n')];
        const lost = was.filter((line) => !is.includes(line));
        const owner = lost.filter((line) => /^\s*#/.test(line));
        expect(owner).toEqual([]);
      }),
      { numRuns: 100 },
    );
  });
});
