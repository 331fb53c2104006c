import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { parse } from 'yaml';
import { checkProfile } from '../../src/source/check-profile.js';
import { readDocument } from '../../src/source/read.js';
import { checkData } from '../source/check-text.js';
import { readSchema, says, strict } from './schema-of.js';

const project = strict().compile(readSchema('project'));
const profile = strict().compile(readSchema('profile'));
const head = 'ampledger: 1\ntitle: x\n';

/** Projects, right and wrong: what an editor underlines and what the program refuses are to be the same. */
const projects: readonly (readonly [boolean, string])[] = [
  [true, ''],
  [true, 'ambient: 5 to 45 °C\npolicy: everyday\nnote: mine\n'],
  [true, 'policy: { current: 20 %, drive: 25 % }\n'],
  [true, 'parts: { gate: { extends: relay-coil-5v-70r, resistance: 62 Ω ±10 % } }\n'],
  [true, 'supplies: { laptop: { type: usb2-port }, brick: { voltage: 5 V ±4 %, current: 2 A, note: old } }\n'],
  [
    true,
    'controllers: { main: { board: b, powered: { usb: { type: usb2-port } }, pins: { D8: { drive: 12 mA } } } }\n',
  ],
  [true, 'expanders: { bar: { chip: 74hc595, supply: main.5v, control: { data: D11, clock: D12, latch: D10 } } }\n'],
  [true, 'arrays: { sink: { part: darlington-array-7, common: brick-12v } }\n'],
  [
    true,
    'loads: { v: { part: p, inputs: { 1: D4, 4: { pin: D7, pull-up: 10 kΩ } }, jumper: fitted, grounds: joined } }\n',
  ],
  [
    true,
    'loads: { m: { type: coil, supply: s, driver: { type: npn, pin: D8, base-resistor: 1 kΩ }, clamp: { type: diode } } }\n',
  ],
  [true, 'loads: { b: { type: coil, driver: { array: sink.1, pin: D2 } } }\n'],
  [true, 'loads: { l: { type: led, pins: [bar.q0..q7], series: 220 Ω ±5 %, active: low, count: 2 } }\n'],
  [true, 'loads: { c: { type: module, active: 20 mA, idle: 1 mA, signals: { sda: A4 }, switched: elsewhere } }\n'],
  [true, 'loads: { o: { type: other, current: 30 mA } }\n'],
  [true, 'modes: { a: { active: [x.1, y.*], share: 20 %, during: running } }\n'],
  [
    true,
    'interlocks: [{ at-most: 1, of: [a, b], by: wiring }, { needs: a, for: b }, { excludes: a, for: b, by: firmware }]\n',
  ],
  [
    true,
    'controllers: { m: { chip: c, limits: [{ applies-to: [PC0..PC5], name: left, source: 100 mA, when: { supply: 5 V } }] } }\n',
  ],
  [false, 'titel: y\n'],
  [false, 'loads: { a: { type: led, stall: 3 A } }\n'],
  [false, 'loads: { a: { type: led, seires: 3 Ω } }\n'],
  [false, 'loads: { a: { part: some-led, seires: 3 Ω } }\n'],
  [false, 'loads: { a: { type: toaster } }\n'],
  [false, 'loads: { a: {} }\n'],
  [false, 'loads: { a.b: { type: led } }\n'],
  [false, 'loads: { a: { type: coil, driver: { type: npn, gate-resistor: 3 Ω } } }\n'],
  [
    true,
    'loads: { a: { type: coil, driver: { pin: D8, stages: [ { type: npn, base-resistor: 1 kΩ }, { type: pmos, pull-up: 10 kΩ } ] } } }\n',
  ],
  [false, 'loads: { a: { type: coil, driver: { pin: D8, stages: [ { base-resistor: 1 kΩ } ] } } }\n'],
  [false, 'loads: { a: { type: coil, driver: { type: toaster } } }\n'],
  [false, 'loads: { a: { type: coil, clamp: { type: diode, zener: 3 V } } }\n'],
  [false, 'loads: { a: { type: coil, pwm: { duty: 5 % } } }\n'],
  [false, 'loads: { v: { type: relay-board, jumper: yes } }\n'],
  [true, 'supplies: { a: { from: b, type: linear-regulator, voltage: 3 V } }\n'],
  [true, 'supplies: { a: { type: fuse, from: b } }\n'],
  [false, 'supplies: { a: { current: 3 A } }\n'],
  [true, 'controllers: { a: { board: b, removed: [led] } }\n'],
  [false, 'controllers: { a: { board: b, pins: { D8: { strap: up } } } }\n'],
  [true, 'controllers: { a: { board: b, pins: { D8: { pull: up, pull-down: 10 kΩ } } } }\n'],
  [false, 'modes: { free: { active: [] } }\n'],
  [true, 'modes: { a: { active: [], during: boot } }\n'],
  [false, 'interlocks: [{ at-most: 1 }]\n'],
  [false, 'interlocks: [{ at-most: 1, of: [a], needs: b, for: c }]\n'],
  [true, 'wires: [{ from: a, to: [b, c], length: 2 m, gauge: AWG 24, bundled: true, note: x }]\n'],
  [false, 'wires: [{ from: a, length: 2 m, gauge: AWG 24 }]\n'],
  [false, 'wires: [{ from: a, to: b, conductors: 3 }]\n'],
];

describe('project.schema.json', () => {
  it.each(projects)('and the program agree (%s): %s', (right, body) => {
    const { document, errors } = readDocument(head + body, 'x.yaml');
    expect(errors).toEqual([]);
    const problems = checkData(document!.data as Record<string, unknown>);
    expect(problems.length === 0, problems.map((problem) => problem.says).join('; ')).toBe(right);
    // The editor's validator gets plain objects, as an editor makes them.
    expect(project(parse(head + body)), says(project).join('; ')).toBe(right);
  });
});

const boards = readdirSync(new URL('../../boards', import.meta.url), { recursive: true, encoding: 'utf8' })
  .filter((name) => name.endsWith('.yaml'))
  .map((name): [string, unknown] => [
    name,
    parse(readFileSync(new URL(`../../boards/${name}`, import.meta.url), 'utf8')),
  ]);

const good = {
  id: 'diode-x',
  title: 'Diode',
  kind: 'clamp',
  type: 'diode',
  documents: { datasheet: { title: 'Data sheet', publisher: 'Maker', year: 2020 } },
  'forward-voltage': [{ value: 'max 1 V', at: '10 mA', cite: ['datasheet', 'Table 1'] }],
};

/** A profile with one thing changed. */
const profiles: readonly (readonly [boolean, string, object])[] = [
  [true, 'is complete', good],
  [true, 'has a figure without points', { ...good, current: { value: '1 A', cite: ['practice', 'usual'], note: 'x' } }],
  [false, 'has a figure without source', { ...good, current: { value: '1 A' } }],
  [false, 'has a plain figure', { ...good, current: '1 A' }],
  [false, 'has a point without source', { ...good, 'forward-voltage': [{ value: '1 V', at: '1 mA' }] }],
  [false, 'has a source without place', { ...good, current: { value: '1 A', cite: ['datasheet'] } }],
  [false, 'has an unknown key', { ...good, colour: 'red' }],
  [false, 'has a document without publisher', { ...good, documents: { d: { title: 'x', year: 2020 } } }],
  [
    false,
    'has a document without number, revision or year',
    { ...good, documents: { d: { title: 'x', publisher: 'y' } } },
  ],
  [false, 'calls a document practice', { ...good, documents: { practice: good.documents.datasheet } }],
  [false, 'has no documents', { ...good, documents: undefined }],
  [false, 'is of no kind', { ...good, kind: 'thing' }],
  [false, 'is a load of no type', { ...good, kind: 'load', type: 'toaster', 'forward-voltage': undefined }],
];

describe('profile.schema.json', () => {
  it.each(profiles)('and the program agree (%s) on a profile that %s', (right, _, data) => {
    const plain: unknown = JSON.parse(JSON.stringify(data));
    expect(profile(plain), says(profile).join('; ')).toBe(right);
    expect(checkProfile(plain).length === 0).toBe(right);
  });

  it('demands the source of a row of limits', () => {
    const chip = { ...good, kind: 'chip', type: undefined, 'forward-voltage': undefined };
    const row = { 'applies-to': 'each-pin', source: '20 mA', grade: 'operating' };
    const found = checkProfile(JSON.parse(JSON.stringify({ ...chip, limits: [row] })));
    expect(found.map((problem) => problem.says)).toEqual(['`cite` is missing in entry 1 of `limits`']);
    expect(
      checkProfile(JSON.parse(JSON.stringify({ ...chip, limits: [{ ...row, cite: ['datasheet', 'p. 3'] }] }))),
    ).toEqual([]);
  });

  it('is kept by every file of boards/', () => {
    expect(boards.length).toBeGreaterThan(20);
    for (const [name, data] of boards) expect(profile(data), `${name}: ${says(profile).join('; ')}`).toBe(true);
  });
});
