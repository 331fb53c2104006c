import { readdirSync, readFileSync } from 'node:fs';
import { basename, join } from 'node:path';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { builtIn } from '../../src/catalogue/built-in.js';
import type { Catalogue } from '../../src/catalogue/catalogue.js';
import { foldersAsked } from '../../src/catalogue/folders.js';
import { withOwn } from '../../src/catalogue/own.js';
import { audit, read, withFolders } from '../../src/index.js';
import { sized } from '../sizes.js';

const coil = `id: gate-coil
title: Gate coil
kind: load
type: coil
documents:
  sheet: { title: Gate relay, publisher: us, year: 2026 }
voltage:    { value: 5 V, cite: [sheet, p. 1] }
resistance: { value: 62 Ω ±10 %, cite: [sheet, p. 1] }
pull-in:    { value: max 75 %, cite: [sheet, p. 2] }
`;
const child = `id: gate-coil
title: Gate coil
kind: load
extends: relay-coil-5v-70r
documents:
  sheet: { title: Gate relay, publisher: us, year: 2026 }
resistance: { value: 62 Ω ±10 %, cite: [sheet, p. 1] }
power: null
`;

/** 'file:line:column sentence' of everything that is wrong. */
const said = (files: Readonly<Record<string, string>>, twins = false): readonly string[] =>
  withOwn(
    builtIn,
    Object.entries(files).map(([file, text]) => ({ file, text })),
    { twins },
  ).errors.map(({ file, line, column, says }) => `${file}:${line}:${column} ${says}`);

describe('own profiles', () => {
  test('stand beside those of the catalogue', () => {
    const { catalogue, errors, profiles } = withOwn(builtIn, [{ file: 'a/gate-coil.yaml', text: coil }]);
    expect(errors).toEqual([]);
    expect(profiles.map(({ file, profile }) => [file, profile.id])).toEqual([['a/gate-coil.yaml', 'gate-coil']]);
    expect(catalogue.profile('gate-coil')?.['resistance']).toMatchObject({ value: '62 Ω ±10 %' });
    expect(catalogue.profile('usb2-port')).toBe(builtIn.profile('usb2-port'));
    expect(catalogue.ids('load')).toEqual([...builtIn.ids('load'), 'gate-coil']);
    expect(catalogue.ids()).toEqual([...builtIn.ids(), 'gate-coil']);
  });

  test('may extend those of the catalogue and one another, in any order', () => {
    const second =
      'id: second\ntitle: Second\nkind: load\nextends: gate-coil\nvoltage: { value: 6 V, cite: [practice, ours] }\n';
    const { catalogue, errors } = withOwn(builtIn, [
      { file: 'second.yaml', text: second },
      { file: 'gate-coil.yaml', text: child },
    ]);
    expect(errors).toEqual([]);
    expect(catalogue.profile('second')).toMatchObject({ type: 'coil', voltage: { value: '6 V' }, title: 'Second' });
    expect(catalogue.profile('second')?.['drop-out']).toEqual(builtIn.profile('relay-coil-5v-70r')?.['drop-out']);
  });

  test('never take a name that is there already', () => {
    const taken = coil.replace('gate-coil', 'relay-coil-5v-70r');
    const { catalogue, errors } = withOwn(builtIn, [{ file: 'relay-coil-5v-70r.yaml', text: taken }]);
    expect(errors).toMatchObject([
      { line: 1, column: 5, says: 'the catalogue has a profile `relay-coil-5v-70r` already' },
    ]);
    expect(errors[0]?.expected).toContain('`extends: relay-coil-5v-70r`');
    expect(catalogue.profile('usb2-port')).toBe(builtIn.profile('usb2-port'));
    expect(said({ 'a/gate-coil.yaml': coil, 'b/gate-coil.yaml': coil })).toEqual([
      'b/gate-coil.yaml:1:5 this is the id of a/gate-coil.yaml too',
    ]);
  });

  test('bear the name of their file', () => {
    expect(said({ 'ours/coil.yaml': coil })).toEqual(['ours/coil.yaml:1:5 the id is not the name of the file']);
    expect(said({ '-': coil })).toEqual([]);
  });

  test('are told all that is wrong with them at once, each at its place', () => {
    const broken = coil
      .replace('75 %, cite: [sheet, p. 2]', '3.75 V, cite: [shet, p. 2]')
      .replace('value: 62 Ω ±10 %, cite: [sheet, p. 1]', 'value: 62 Ω ±10 %')
      .replace('voltage:    { value: 5 V', 'voltage:    { value: 5 A')
      .concat('power: { value: 900 mW, cite: [practice, a guess] }\ncolor: red\n');
    expect(said({ 'gate-coil.yaml': broken, 'other.yaml': 'id: [\n' })).toEqual([
      'gate-coil.yaml:7:13 `5 A` is a current',
      'gate-coil.yaml:8:1 `cite` is missing in `resistance`',
      'gate-coil.yaml:9:13 the source ["shet","p. 2"] says nothing',
      'gate-coil.yaml:11:1 unknown key `color` at the top level',
      expect.stringMatching(/^other\.yaml:\d+:\d+ /),
    ]);
  });

  test('have figures that agree, and documents that are complete and cited', () => {
    expect(said({ 'gate-coil.yaml': `${coil}power: { value: 900 mW, cite: [practice, a guess] }\n` })).toEqual([
      'gate-coil.yaml:10:8 5 V across 62 Ω ±10 % is 403 mW, not 900 mW',
    ]);
    expect(said({ 'gate-coil.yaml': coil.replace(', year: 2026', '') }).join()).toContain('does not say what it is');
    expect(said({ 'gate-coil.yaml': coil.replaceAll('[sheet, p.', '[practice, p.') })).toEqual([
      'gate-coil.yaml:6:10 no figure cites this document',
    ]);
  });

  test('that extend another need not take away the documents that they no longer cite', () => {
    const all = ['voltage: 5 V', 'pull-in: max 75 %', 'drop-out: min 10 %'].map((line) => {
      const [key, value] = line.split(': ');
      return `${key}: { value: ${value}, cite: [sheet, p. 1] }\n`;
    });
    expect(said({ 'gate-coil.yaml': `${child}${all.join('')}contact-rating: null\n` })).toEqual([]);
  });

  test('that extend nothing that is there are told the nearest name', () => {
    const { errors } = withOwn(builtIn, [{ file: 'gate-coil.yaml', text: child.replace('5v-70r', '5v-70') }]);
    expect(errors).toMatchObject([
      { line: 4, says: 'there is no profile `relay-coil-5v-70`', expected: 'did you mean `relay-coil-5v-70r`?' },
    ]);
    expect(said({ 'gate-coil.yaml': child.replace('relay-coil-5v-70r', 'gate-coil') })).toEqual([
      'gate-coil.yaml:4:10 these extend each other: gate-coil, gate-coil',
    ]);
  });

  test('are no project files, and no empty ones', () => {
    expect(said({ 'gate-coil.yaml': 'ampledger: 1\ntitle: A project\n' })).toEqual([
      'gate-coil.yaml:1:1 this is a project file, where a profile is wanted',
    ]);
    const { errors } = withOwn(builtIn, [{ file: 'gate-coil.yaml', text: '# nothing\n' }]);
    expect(errors[0]?.expected).toContain('id, title and kind');
  });

  test('are held against the catalogue for twins where that is asked', () => {
    const twin = 'id: gate-coil\ntitle: Gate coil\nkind: load\nextends: relay-coil-5v-70r\n';
    expect(said({ 'gate-coil.yaml': twin })).toEqual([]);
    expect(said({ 'gate-coil.yaml': twin }, true).join()).toContain('`relay-coil-5v-70r` states the same figures');
  });

  test('whose file could not be read say so', () => {
    const { errors } = withOwn(builtIn, [{ file: 'a.yaml', problem: 'this may not be read' }]);
    expect(errors).toMatchObject([{ file: 'a.yaml', line: 1, says: 'this may not be read' }]);
  });
});

describe('the profiles of boards/', () => {
  const boards = new URL('../../boards/', import.meta.url).pathname;
  const files = readdirSync(boards, { recursive: true, encoding: 'utf8' }).filter((name) => name.endsWith('.yaml'));

  test('are proved clean by the same hand as own ones', () => {
    // Some of each folder: that all of them make sense is held by `profiles.test.ts`.
    const given = files
      .filter((_, k) => k % sized(12, 1) === 0)
      .map((file) => ({ file, text: readFileSync(join(boards, file), 'utf8') }));
    const taken = new Set(given.map(({ file }) => basename(file, '.yaml')));
    const others: Catalogue = {
      ids: (kind) => builtIn.ids(kind).filter((id) => !taken.has(id)),
      profile: (id) => (taken.has(id) ? undefined : builtIn.profile(id)),
    };
    const { errors, catalogue } = withOwn(others, given, { twins: true });
    expect(errors.map(({ file, line, says }) => `${file}:${line} ${says}`)).toEqual([]);
    expect(catalogue.ids()).toHaveLength(files.length);
  });

  test('may be spoilt anywhere: what is said has a place, and nothing breaks', () => {
    const texts = [
      'atmega328p',
      'atmega328p-5v-board',
      'relay-board-opto-low-5v-1',
      'darlington-array-7',
      'led-red-5mm',
    ]
      .map((id) => files.find((file) => basename(file) === `${id}.yaml`)!)
      .map((file) => readFileSync(join(boards, file), 'utf8').replace(/^id: .*$/m, 'id: ours'));
    const odd = fc.constantFrom(
      'null',
      '[]',
      '{}',
      '-1',
      '1e999',
      'true',
      '[a, [b]]',
      '{ value: 5 }',
      'PA0..PA511',
      "''",
      '∞ V',
    );
    const spoilt = fc
      .tuple(fc.constantFrom(...texts), fc.nat(), odd, fc.nat(), odd)
      .map(([text, from, by, next, more]) =>
        // The value of some pair is exchanged, twice.
        [[from, by] as const, [next, more] as const].reduce((sofar, [at, value]) => {
          const pairs = [...sofar.matchAll(/(?<=: )[^{[\n,}\]]+|(?<=: )\[[^\]\n]*\]/g)];
          const pair = pairs[at % pairs.length]!;
          return sofar.slice(0, pair.index) + value + sofar.slice(pair.index + pair[0].length);
        }, text),
      );
    fc.assert(
      fc.property(spoilt, (text) => {
        const { errors } = withOwn(builtIn, [{ file: 'ours.yaml', text }]);
        for (const { line, column, says } of errors)
          expect([line > 0, column > 0, says !== '']).toEqual([true, true, true]);
      }),
      { numRuns: sized(60, 300) },
    );
  });
});

describe('the folders that a project asks for', () => {
  test('lead further in, and on every system to the same place', () => {
    const names = ['./our-boards', 'ours/parts', '.'];
    expect(foldersAsked({ catalogue: names })).toEqual(names.map((name, i) => ({ name, path: ['catalogue', i] })));
    for (const name of ['/etc', '../ours', 'a/../../b', '~/x', 'C:\\x', 'c:/x', '\\\\host\\x', 'a\\b', ' ', 'ours/..'])
      expect(foldersAsked({ catalogue: [name] })[0]?.problem).toMatchObject({ path: ['catalogue', 0], on: 'value' });
    for (const data of [undefined, null, {}, { catalogue: 'ours' }, { catalogue: [1, null] }])
      expect(foldersAsked(data)).toEqual([]);
  });
});

describe('a project with folders of profiles', () => {
  const project = `ampledger: 1
title: Gate
catalogue: [./our-boards]
supplies: { brick: { voltage: 5 V ±4 %, current: 2 A } }
controllers: { main: { board: atmega328p-5v-board, powered: { usb: { type: usb2-port } } } }
loads:
  gate: { part: gate-coil, supply: brick, clamp: { part: diode-1n4148 },
          driver: { part: npn-2n2222a, pin: D8, base-resistor: 1 kΩ ±5 %, pull-down: 10 kΩ } }
`;
  const given = (name: string, text: string) => {
    const { document } = read(project, 'gate.yaml');
    return withFolders(document!, [{ name, files: [{ file: 'our-boards/gate-coil.yaml', text }] }]);
  };

  test('is audited with them, given as data', () => {
    const { report, errors } = audit(given('./our-boards', child), { advice: false });
    expect(errors).toEqual([]);
    expect(
      report?.accounts.find(({ id, direction }) => id === 'gate.clamp' && direction === 'at-most')?.draw?.max,
    ).toBeCloseTo(
      // 5.2 V less 0.0 V in the transistor, across 62 Ω less 10 % at 10 °C.
      5.2 / ((62 * 0.9 * 244.5) / 254.5),
      4,
    );
  });

  test('is not audited without them, nor with what is wrong in them', () => {
    const { document } = read(project, 'gate.yaml');
    expect(audit(document!).errors).toMatchObject([
      { file: 'gate.yaml', line: 3, column: 13, says: 'the folder `./our-boards` was not read' },
    ]);
    expect(audit(given('./others', child)).errors).toHaveLength(1);
    expect(audit(given('./our-boards', child.replace('[sheet, p. 1]', '[sheet]'))).errors).toMatchObject([
      { file: 'our-boards/gate-coil.yaml', line: 7 },
    ]);
    const problem = { name: './our-boards', files: [], problem: { says: 'there is no such folder' } };
    expect(audit(withFolders(document!, [problem])).errors).toMatchObject([
      { file: 'gate.yaml', line: 3, column: 13, says: 'there is no such folder' },
    ]);
  });

  test('is refused in words where a part of its own names a chip that is not there', () => {
    const odd =
      'ampledger: 1\ntitle: Odd\nparts: { b: { kind: controller, chip: nope } }\ncontrollers: { main: { board: b } }\n';
    expect(audit(read(odd, 'odd.yaml').document!).errors).toMatchObject([
      { line: 4, says: 'the profile `b` has no chip that the catalogue knows' },
    ]);
  });

  test('may not have a part of the same name besides', () => {
    const twice = project.concat('parts: { gate-coil: { extends: relay-coil-5v-70r, resistance: 60 Ω } }\n');
    const { document } = read(twice, 'gate.yaml');
    const files = [{ file: 'our-boards/gate-coil.yaml', text: child }];
    expect(audit(withFolders(document!, [{ name: './our-boards', files }])).errors).toMatchObject([
      { file: 'gate.yaml', line: 9, says: 'the catalogue has a profile `gate-coil` already' },
    ]);
  });
});
