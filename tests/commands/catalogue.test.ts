/** The catalogue at the command line: lists, filters, profiles; for programs by the schema that is published for it. */
import { readFileSync } from 'node:fs';
import { Ajv2020 } from 'ajv/dist/2020.js';
import { beforeAll, describe, expect, it } from 'vitest';
import { builtIn } from '../../src/catalogue/built-in.js';
import { profileJson } from '../../src/reports/profile.js';
import { ampledger, folder, needsBuild } from './program.js';

const schemaOf = (name: string): object =>
  JSON.parse(readFileSync(new URL(`../../schemas/${name}.schema.json`, import.meta.url), 'utf8')) as object;
const ajv = new Ajv2020({ strict: true, allowUnionTypes: true, allErrors: true });
ajv.addSchema(schemaOf('report'));
const valid = ajv.compile(schemaOf('catalogue'));
const holds = (said: unknown): unknown => {
  valid(said);
  expect(valid.errors).toBeNull();
  return said;
};

const ids = (...words: readonly string[]): readonly string[] => {
  const { status, out, err } = ampledger(['catalogue', ...words, '--format', 'json']);
  expect({ status, err }).toEqual({ status: 0, err: '' });
  return (holds(JSON.parse(out)) as { profiles: { id: string }[] }).profiles.map(({ id }) => id);
};

beforeAll(needsBuild);

describe('the list', () => {
  it('has everything, at 80 columns', () => {
    expect(ids()).toEqual([...builtIn.ids()]);
    const { out } = ampledger(['catalogue']);
    for (const id of builtIn.ids()) expect(out).toMatch(new RegExp(`^${id}( |$)`, 'm'));
    expect(Math.max(...out.split('\n').map((line) => [...line].length))).toBeLessThanOrEqual(80);
  });

  it('is filtered by kind, type, voltage, channels and words, all at once', () => {
    expect(ids('--kind', 'policy')).toEqual(builtIn.ids('policy'));
    expect(ids('--type', 'coil').every((id) => builtIn.profile(id)?.type === 'coil')).toBe(true);
    const twelve = ids('--type', 'coil', '--voltage', '12V');
    expect(twelve).toContain('relay-coil-12v-400mw');
    expect(twelve).not.toContain('relay-coil-5v-70r');
    expect(ids('--voltage', '3.3 V', '--kind', 'controller')).toContain('rp2040-board');
    expect(ids('--voltage', '30 V', '--type', 'npn')).toContain('npn-2n2222a');
    expect(ids('--voltage', '45 V', '--type', 'npn')).not.toContain('npn-2n2222a');
    expect(ids('--channels', '4', '--type', 'relay-board')).toContain('relay-board-opto-low-5v-4');
    expect(ids('--channels', '4').every((id) => builtIn.profile(id)?.['channels'] === 4)).toBe(true);
    expect(ids('--find', 'HUMIDITY bme280')).toEqual(['sensor-bme280']);
    expect(ids('--find', 'no such thing anywhere')).toEqual([]);
  });

  it.each([
    [['--kind', 'loads'], 'Do you mean load?'],
    [['--voltage', '5 mA'], '--voltage: '],
    [['--channels', 'four'], 'as in --channels 4'],
    [['npn-2n2222a', 'more'], 'go to --find'],
    [['npn-2n2222'], 'Do you mean npn-2n2222a?'],
  ])('refuses %j with what was meant', (words, hint) => {
    const { status, out, err } = ampledger(['catalogue', ...words]);
    expect({ status, out }).toEqual({ status: 2, out: '' });
    expect(err).toContain(hint);
  });
});

describe('a profile', () => {
  it('is written out with its sources, at 80 columns', () => {
    const { out } = ampledger(['catalogue', 'atmega328p']);
    expect(Math.max(...out.split('\n').map((line) => [...line].length))).toBeLessThanOrEqual(80);
    expect(out).toMatch(/^each pin +source 40 mA, sink 40 mA, +\[1\] 29\.1 Absolute/m);
    expect(out).toMatch(/^\[1\] ATmega48A.* data sheet, Atmel, 8271H,\s+2014$/m);
    expect(out).toMatch(/from memory/);
  });

  it('follows the schema as JSON, each of them, in SI units with its source', () => {
    for (const id of builtIn.ids())
      holds(JSON.parse(JSON.stringify(profileJson(builtIn.profile(id)!, builtIn.written(id)))));
    const said = holds(JSON.parse(ampledger(['catalogue', 'relay-board-opto-low-5v-4', '--format', 'json']).out));
    expect(said).toMatchObject({ id: 'relay-board-opto-low-5v-4', extends: ['relay-board-opto-low-5v-1'] });
    const { rows } = said as { rows: { path: string }[] };
    expect(rows.find(({ path }) => path === 'coil.resistance')).toMatchObject({
      value: '70 Ω ±10 %',
      quantity: { of: 'resistance', min: 63, typ: 70, max: 77 },
      from: 'relay-board-opto-low-5v-1',
      source: { document: expect.stringContaining('Hongfa') as string, where: 'Coil data', basis: 'document' },
    });
  });
});

describe('a proof', () => {
  it('follows the schema, whether it holds or not', () => {
    const good =
      'id: good\ntitle: Good\nkind: load\nextends: relay-coil-5v-70r\nvoltage: { value: 6 V, cite: [practice, ours] }\npower: null\n';
    const bench = folder({ 'good.yaml': good, 'bad.yaml': 'id: bad\ntitle: Bad\nkind: load\noops: 1\n' });
    const prove = (file: string): unknown =>
      holds(JSON.parse(ampledger(['catalogue', 'prove', file, '--format', 'json'], { cwd: bench.path }).out));
    expect(prove('good.yaml')).toMatchObject({
      proved: true,
      profiles: [{ id: 'good', file: 'good.yaml' }],
      errors: [],
    });
    expect(prove('bad.yaml')).toMatchObject({ proved: false });
    bench.remove();
  });
});
