import { expect, it } from 'vitest';
import { builtIn } from '../../src/catalogue/built-in.js';
import type { Profile } from '../../src/catalogue/profile.js';
import { rowsOfProfile } from '../../src/catalogue/rows.js';
import { print } from '../../src/cli/print.js';
import { catalogueTree } from '../../src/reports/catalogue.js';
import { profileTree } from '../../src/reports/profile.js';

const page = { width: 80, colour: false };
const profile = {
  id: 'npn-of-ours',
  title: 'NPN of ours',
  kind: 'driver' as const,
  type: 'npn',
  documents: { datasheet: { title: 'NPN transistor', publisher: 'a maker', number: 'N1', year: 2013 } },
  'maximum-current': { value: '600 mA', cite: ['datasheet', 'maximum ratings'] },
  gain: { value: 'min 75', at: '10 mA', cite: ['datasheet', 'DC current gain'], note: 'at 10 V' },
  saturation: [
    { value: 'max 0.3 V', at: '150 mA', cite: ['datasheet', 'saturation'] },
    { value: 'max 1 V', at: '500 mA', cite: ['datasheet', 'saturation'] },
  ],
  pins: { base: 1, collector: 2 },
  limits: [
    {
      'applies-to': 'each-pin',
      source: '5 mA',
      sink: '6 mA',
      grade: 'absolute',
      when: { supply: '5 V' },
      cite: ['practice', 'usual'],
    },
  ],
  input: {
    active: 'low',
    coupling: 'none',
    cite: ['practice', 'usual'],
    series: { value: '1 kΩ', cite: ['memory', 'a board seen'] },
  },
} satisfies Profile;

it('writes a profile out: each figure with what it holds at, its grade, its note and its source', () => {
  expect(print(profileTree(profile, [profile]), page)).toBe(
    [
      'NPN of ours                                               driver npn npn-of-ours',
      '600 mA, gain min 75 at 10 mA',
      '6 figures: 4 from documents, 1 common practice, 1 from memory.',
      '',
      'figure           value                      source',
      '───────────────  ─────────────────────────  ───────────────────',
      'maximum-current  600 mA                     [1] maximum ratings',
      'gain             min 75 at 10 mA (at 10 V)  [1] DC current gain',
      'saturation       max 0.3 V at 150 mA        [1] saturation',
      '                 max 1 V at 500 mA          [1] saturation',
      'pins             base 1, collector 2',
      '',
      'limits',
      'figure    value                                           source',
      '────────  ──────────────────────────────────────────────  ──────────────────────',
      'each pin  source 5 mA, sink 6 mA, supply 5 V, damage      common practice: usual',
      '          limit',
      '',
      'input',
      'figure  value                      source',
      '──────  ─────────────────────────  ─────────────────────────',
      'input   active low, coupling none  common practice: usual',
      'series  1 kΩ                       from memory: a board seen',
      '',
      'Documents',
      '[1] NPN transistor, a maker, N1, 2013',
      '',
    ].join('\n'),
  );
});

it('says of a profile that extends another which of them states each figure', () => {
  const board = builtIn.profile('relay-board-opto-low-5v-1-no-indicator')!;
  const written = builtIn.written(board.id);
  expect(written.map(({ id }) => id)).toEqual([board.id, 'relay-board-opto-low-5v-1']);
  const from = new Map(rowsOfProfile(board, written).map((row) => [row.path.join('.'), row.from]));
  expect(from.get('input.series')).toBe('relay-board-opto-low-5v-1');
  expect(from.get('coil.resistance')).toBe('relay-board-opto-low-5v-1');
  expect(
    rowsOfProfile(builtIn.profile('relay-board-opto-low-5v-4')!, builtIn.written('relay-board-opto-low-5v-4')).find(
      ({ name }) => name === 'channels',
    )?.from,
  ).toBe('relay-board-opto-low-5v-4');
  const told = print(profileTree(board, written), page);
  expect(told).toMatch(/^A +relay-board-opto-low-5v-1-no-indicator, this profile/m);
  expect(told).toMatch(/^B +relay-board-opto-low-5v-1, which\s+relay-board-opto-low-5v-1-no-indicator\s+extends/m);
});

it('leaves out nothing of any profile: every source of every figure is there', () => {
  const wide = { width: 100_000, colour: false };
  for (const id of builtIn.ids()) {
    const each = builtIn.profile(id)!;
    const told = print(profileTree(each, builtIn.written(id)), wide);
    const places: string[] = [];
    const visit = (node: unknown): void => {
      if (Array.isArray(node)) return node.forEach(visit);
      if (typeof node !== 'object' || node === null) return;
      for (const [key, value] of Object.entries(node)) {
        if (key === 'cite') places.push(String((value as unknown[])[1]));
        else if (key === 'value') places.push(String(value));
        else if (key === 'note') places.push(String(value));
        else if (key !== 'documents') visit(value);
      }
    };
    visit(each);
    expect([id, places.filter((place) => !told.includes(place))]).toEqual([id, []]);
  }
});

it('lists everything by kind and type, with figures where few are left', () => {
  const others = [
    { ...profile, id: 'led-of-ours', title: 'LED of ours', kind: 'load' as const, type: 'led', colour: 'red' },
    { ...profile, id: 'fet-of-ours', title: 'FET of ours', type: 'nmos' },
  ];
  expect(
    print(catalogueTree([profile, ...others], ['find ours'], 9), page)
      .split('\n')
      .slice(0, 11),
  ).toEqual([
    'Catalogue                                                        3 of 9 profiles',
    'find ours',
    '',
    'LEDs  1                                                               --type led',
    'led-of-ours  LED of ours',
    '             red, 600 mA',
    '',
    'NPN transistors  1                                                    --type npn',
    'npn-of-ours  NPN of ours',
    '             600 mA, gain min 75 at 10 mA',
    '',
  ]);
  expect(print(catalogueTree([], ['kind chip', 'find xyz'], 9), page)).toContain(
    'Nothing in it is kind chip, find xyz.',
  );
});
