/** Parts of a run put together are what one machine would have given, byte for byte, whatever the format. */
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import fc from 'fast-check';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { FORMATS } from '../../src/cli/formats.js';
import { filesInPart, isInPart, type PartHead } from '../../src/reports/part.js';
import { captured } from './captured.js';

const torn = 'ampledger: 1\ntitle: Torn\nsupplies: { brick: { voltage: 5 V, currant: 1 A } }\n';
const sound = 'ampledger: 1\ntitle: "Empty | <bench> ✓"\nsupplies: { brick: { voltage: 5 V, current: 1 A } }\n';
const gate = `ampledger: 1
title: Gate latch
controllers: { main: { board: atmega328p-5v-board, powered: { usb: { type: usb2-port } } } }
loads: { latch: { part: relay-coil-5v-70r, pin: D9 } }
waivers: [{ rule: coil-no-clamp, about: latch, reason: "on the *bench* only", accepts: damage }]
`;
let root: string;
const inside = (name: string): string => join(root, name);

beforeAll(() => {
  root = mkdtempSync(join(tmpdir(), 'ampledger-'));
  for (const [name, text] of Object.entries({ gate, torn, sound, bench: sound }))
    writeFileSync(inside(`${name}.yaml`), text);
});
afterAll(() => rmSync(root, { recursive: true, force: true }));

/** Every format but the printed one goes into a file. */
const written = ['txt', 'json', 'sarif', 'xml', 'md', 'part'];
const outputs = (name: string): readonly string[] =>
  written.flatMap((ending) => ['--output', inside(`${name}.${ending}`)]);
const texts = (name: string): readonly string[] =>
  written.map((ending) => readFileSync(inside(`${name}.${ending}`), 'utf8'));

/** An audit takes longer than all else here: parts of the same files are made once. */
let made: { of: number; words: string; files: readonly string[] } = { of: 0, words: '', files: [] };

async function parts(of: number, ...words: readonly string[]): Promise<readonly string[]> {
  if (made.of === of && made.words === words.join()) return made.files;
  const files = Array.from({ length: of }, (_, at) => inside(`${at + 1}-of-${of}.part`));
  for (const [at, file] of files.entries())
    await captured('audit', ...words, '--part', `${at + 1}/${of}`, '--format', 'json', '--output', file);
  made = { of, words: words.join(), files };
  return files;
}

describe('parts that are put together', () => {
  it.each([
    ['a folder', () => [root], []],
    ['a folder, every report', () => [root], ['--all', '--fail-at', 'thin']],
    ['files by name', () => ['torn', 'gate', 'nowhere', 'torn'].map((name) => inside(`${name}.yaml`)), []],
    ['one file', () => [inside('gate.yaml')], ['--fail-at', 'never']],
  ])('are what one machine gives: %s', async (_, names, words) => {
    const one = await captured('audit', ...names(), ...words, ...outputs('one'));
    const files = await parts(3, ...names());
    const merged = await captured('merge', ...files.toReversed(), ...words, ...outputs('merged'));
    expect(merged).toEqual(one);
    expect(texts('merged')).toEqual(texts('one'));
  });

  it('have every format there is', () => {
    expect(written).toHaveLength(FORMATS.length);
  });

  it('have every file of the list exactly once, and as many as they say', () => {
    const run = fc.record({ files: fc.nat(200), of: fc.integer({ min: 1, max: 40 }) });
    fc.assert(
      fc.property(run, ({ files, of }) => {
        const shares = Array.from({ length: of }, (_, at) => ({ part: at + 1, of }));
        const list = Array.from({ length: files }, (_, at) => at);
        for (const at of list) expect(shares.filter((share) => isInPart(at, share))).toHaveLength(1);
        for (const share of shares)
          expect(filesInPart({ ...share, files } as PartHead)).toBe(list.filter((at) => isInPart(at, share)).length);
      }),
      { seed: 20261126 },
    );
  });
});

describe('parts that do not fit', () => {
  const refused = async (...files: readonly string[]): Promise<string> => {
    const { status, out, err } = await captured('merge', ...files);
    expect({ status, out }).toEqual({ status: 2, out: '' });
    return err.replaceAll(`${root}/`, '');
  };

  it('are refused, and what is wrong is said', async () => {
    const [first, second, third] = (await parts(3, inside('sound.yaml'), inside('torn.yaml'))) as [
      string,
      string,
      string,
    ];
    const [other] = await parts(4, inside('sound.yaml'), inside('torn.yaml'));
    expect(await refused(first, third)).toBe('Of 3 parts one is missing: 2.\n');
    expect(await refused(third)).toBe('Of 3 parts 2 are missing: 1, 2.\n');
    expect(await refused(first, second, third, first)).toContain('Part 1 is there twice: ');
    expect(await refused(first, second, other!)).toContain('no parts of one run: one is of 4 parts, the other of 3.');
    await captured('audit', inside('sound.yaml'), '--part', '2/3', '--output', inside('list.part'));
    expect(await refused(first, inside('list.part'), third)).toContain('their lists of files are not the same');
    const warm = ['--ambient', '0 to 60 °C', '--part', '2/3', '--output', inside('warm.part')];
    await captured('audit', inside('sound.yaml'), inside('torn.yaml'), ...warm);
    expect(await refused(first, inside('warm.part'), third)).toMatch(/was asked of one, .* of the other\.$/m);
    expect(await refused(inside('sound.yaml'))).toContain(
      'sound.yaml: this is no JSON; audit --part I/N --format part writes one',
    );
    expect(await refused(inside('nowhere.part'))).toContain('nowhere.part: there is no such file.');
  });
});
