/** What the commands say to other programs follows the schemas that are published for it. */
import { readFileSync } from 'node:fs';
import { Ajv2020 } from 'ajv/dist/2020.js';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { sampleText } from '../samples/audited.js';
import { ampledger, folder, needsBuild } from './program.js';

const schemaOf = (name: string): object =>
  JSON.parse(readFileSync(new URL(`../../schemas/${name}.schema.json`, import.meta.url), 'utf8')) as object;
const names = ['options', 'headroom', 'advice', 'working', 'compare', 'rule'] as const;
/** Its own answers are held against it in catalogue.test.ts. */
const published = [...names, 'catalogue'] as const;
const ajv = new Ajv2020({ strict: true, allowUnionTypes: true, allErrors: true });
ajv.addSchema(schemaOf('report'));
const valid = Object.fromEntries(names.map((name) => [name, ajv.compile(schemaOf(name))]));

const SAMPLES = ['greenhouse-vents-usb', 'greenhouse-vents-own-supply', 'loft-fan-four-ways', 'gate-latch-on-pin'];
interface OptionsSaid {
  readonly boards: readonly { readonly options: readonly object[] }[];
}
const wrong = `ampledger: 1
title: Wrong
controllers: { main: { board: no-such-board } }
`;

let bench: ReturnType<typeof folder>;
beforeAll(() => {
  needsBuild();
  bench = folder({ 'wrong.yaml': wrong, ...Object.fromEntries(SAMPLES.map((s) => [`${s}.yaml`, sampleText(s)])) });
});
afterAll(() => bench?.remove());

function check(name: (typeof names)[number], ...words: readonly string[]): unknown {
  const { out, err } = ampledger([...words, '--format', 'json'], { cwd: bench.path });
  expect(err).toBe('');
  const said: unknown = JSON.parse(out);
  const of = valid[name]!;
  of(said);
  expect({ words, errors: of.errors }).toEqual({ words, errors: null });
  return said;
}

describe('JSON follows its schema:', () => {
  it.each([
    ['options', ['options', 'greenhouse-vents-usb.yaml', 'vents']],
    ['headroom', ['headroom', 'gate-latch-on-pin.yaml', '--more', 'latch']],
    ['headroom', ['headroom', 'loft-fan-four-ways.yaml', '--more', 'fan-relay', '--variant', 'mosfet']],
    ['advice', ['advise', 'gate-latch-on-pin.yaml']],
    ['advice', ['advise', 'loft-fan-four-ways.yaml', '--variant', 'no-diode']],
    ['working', ['working', 'gate-latch-on-pin.yaml', 'latch.coil']],
    ['working', ['working', 'loft-fan-four-ways.yaml', 'fan-relay', '--variant', 'own-supply']],
    ['compare', ['compare', 'greenhouse-vents-usb.yaml', 'greenhouse-vents-own-supply.yaml']],
    ['compare', ['compare', 'gate-latch-on-pin.yaml', 'gate-latch-on-pin.yaml']],
    ['rule', ['rule']],
    ['rule', ['rule', 'coil-pull-in']],
  ] as const)(
    '%s of %j',
    (name, words) => {
      const said = check(name, ...words);
      if (name === 'options')
        expect((said as OptionsSaid).boards[0]!.options[0]).toMatchObject({ verdict: 'sound', isolates: true });
      const variant = words.indexOf('--variant' as never);
      expect((said as { variant?: string }).variant).toBe(variant < 0 ? undefined : words[variant + 1]);
    },
    120_000,
  );

  it.each([
    ['options', ['options', 'wrong.yaml']],
    ['headroom', ['headroom', 'wrong.yaml', '--more', 'x']],
    ['advice', ['advise', 'wrong.yaml']],
    ['working', ['working', 'wrong.yaml', 'x']],
  ] as const)('%s of a file that cannot be audited', (name, words) => {
    expect(check(name, ...words)).toMatchObject({ verdict: 'unread' });
  });

  it('compare of a file that cannot be audited', () => {
    expect(check('compare', 'compare', 'wrong.yaml', 'gate-latch-on-pin.yaml')).toMatchObject({ change: 'unread' });
  });
});

describe('the schemas', () => {
  it.each(published)('are closed, and say of every key what it is: %s', (name) => {
    const silent: string[] = [];
    const walk = (at: unknown, path: string): void => {
      if (typeof at !== 'object' || at === null) return;
      const { properties, additionalProperties } = at as { properties?: object; additionalProperties?: unknown };
      if (properties !== undefined && additionalProperties !== false) silent.push(`${path}: open`);
      for (const [key, each] of Object.entries(properties ?? {}) as [string, { description?: string; $ref?: string }][])
        if (each.description === undefined && each.$ref === undefined) silent.push(`${path}/${key}`);
      for (const [key, each] of Object.entries(at)) walk(each, `${path}/${key}`);
    };
    walk(schemaOf(name), '');
    expect(silent).toEqual([]);
  });
});
