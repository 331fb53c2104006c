import { describe, expect, it } from 'vitest';
import { checkText } from './check-text.js';

const yet = 'is part of the format, but this version does not compute it yet';

/** Every key and value of the format that is closed for now, in an entry that is fine without it. */
const keys: readonly (readonly [string, readonly string[]])[] = [];

const values: readonly (readonly [string, readonly string[]])[] = [
  ['loads: { a: { type: relay-board, output: { type: VALUE } } }', ['h-bridge', 'gate-driver']],
];

const rows = (table: typeof keys, word: string): [string, string][] =>
  table.flatMap(([body, words]) =>
    words.map((each): [string, string] => [each, body.replace(word, word === 'KEY' ? `${each}: 1` : each)]),
  );

describe('what the format defines and this version does not compute', () => {
  it.each(rows(keys, 'KEY'))('refuses the key %s in %s, and names it', (key, body) => {
    expect(checkText(body).map(({ says }) => says)).toEqual([`\`${key}\` ${yet}`]);
  });

  it.each(rows(values, 'VALUE'))('refuses the value %s in %s, and names it', (value, body) => {
    expect(checkText(body).map(({ says }) => says)).toEqual([`\`${value}\` ${yet}`]);
  });

  it('lets a mode during running pass, and the same words where they are computed', () => {
    expect(checkText('modes: { a: { active: [], during: running, share: 5 % } }')).toEqual([]);
    expect(checkText('modes: { a: { active: [], during: boot } }')).toEqual([]);
    expect(checkText('loads: { a: { type: relay-board, inputs: { 1: { pin: D4, pull-up: 10 kΩ } } } }')).toEqual([]);
    expect(checkText('loads: { a: { type: coil, driver: { type: npn, pull-down: 10 kΩ } } }')).toEqual([]);
  });
});
