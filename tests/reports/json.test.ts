import { readFileSync } from 'node:fs';
import { Ajv2020 } from 'ajv/dist/2020.js';
import { describe, expect, it } from 'vitest';
import { audit, read } from '../../src/index.js';
import { jsonReport, toJson } from '../../src/reports/json.js';
import type { UnreadReport } from '../../src/reports/report.js';
import { sampleText } from '../samples/audited.js';
import { gardenGate, gardenGateSound } from './fixtures/garden-gate.js';

const schema = JSON.parse(readFileSync(new URL('../../schemas/report.schema.json', import.meta.url), 'utf8')) as {
  readonly $defs: { readonly [name: string]: unknown };
};
const valid = new Ajv2020({ strict: true, allErrors: true }).compile(schema);

const unread: UnreadReport = {
  ampledger: 1,
  file: 'broken.yaml',
  verdict: 'unread',
  errors: [
    {
      file: 'broken.yaml',
      line: 3,
      column: 5,
      says: 'There is no pin D99.',
      expected: 'D9',
      excerpt: { text: '  pin: D99', marker: '       ^^^' },
    },
    { file: 'broken.yaml', line: 9, column: 1, says: 'This is no key.' },
  ],
};

type Tree = { [key: string]: unknown };

/** Every object in `value`, with its path. */
function objects(value: unknown, path: readonly string[] = []): (readonly [readonly string[], Tree])[] {
  if (typeof value !== 'object' || value === null) return [];
  const inside = Object.entries(value).flatMap(([key, each]) => objects(each, [...path, key]));
  return Array.isArray(value) ? inside : [[path, value as Tree], ...inside];
}

describe('the JSON report', () => {
  it.each([
    ['one report', [gardenGate]],
    ['a sound one', [gardenGateSound]],
    ['a file that could not be audited', [unread]],
    ['several files', [gardenGate, unread, gardenGateSound]],
  ])('is valid: %s', (_, reports) => {
    valid(JSON.parse(jsonReport(reports)));
    expect(valid.errors).toBeNull();
  });

  it.each(['rss', 'monte-carlo'] as const)('is valid with likelier bounds by %s', (corners) => {
    const { document } = read(sampleText('gate-latch-on-pin'), 'gate.yaml');
    const { report } = audit(document!, { corners, builds: 100, seed: 3 });
    expect(report!.accounts.every((a) => a.statistics !== undefined)).toBe(true);
    valid(JSON.parse(jsonReport([report!])));
    expect(valid.errors).toBeNull();
  });

  it('is one object for one file and an array for several', () => {
    expect(JSON.parse(jsonReport([gardenGate]))).toMatchObject({ project: 'Garden gate' });
    expect(JSON.parse(jsonReport([gardenGate, unread]))).toMatchObject([{ verdict: 'breach' }, { verdict: 'unread' }]);
  });

  it('has no key that the schema does not know, at any depth', () => {
    // What a change sets, and which symbols a formula has, is open.
    const open = (path: readonly string[]): boolean => path.includes('with') || path.includes('value');
    for (const report of [gardenGate, unread]) {
      for (const [path] of objects(report).filter(([where]) => !open(where))) {
        const copy = structuredClone(report) as unknown as Tree;
        const target = path.reduce<Tree>((inside, key) => inside[key] as Tree, copy);
        target['surprise'] = 1;
        expect(valid(copy), path.join('.')).toBe(false);
      }
    }
  });

  it('needs every key that is not optional', () => {
    for (const key of Object.keys(gardenGate)) {
      // What a file says of no load nobody tells.
      if (key === 'choices') continue;
      const { [key as keyof typeof gardenGate]: _, ...rest } = gardenGate;
      expect(valid(rest), key).toBe(false);
    }
  });

  it('has figures that do not depend on the machine, to twelve digits', () => {
    expect(toJson({ sum: 0.1 + 0.2, small: 1.23456789012345e-7, count: 41 })).toBe(
      '{\n  "sum": 0.3,\n  "small": 1.23456789012e-7,\n  "count": 41\n}\n',
    );
  });
});

describe('the schema of the report', () => {
  it('says of everything what it is', () => {
    const silent = objects(schema.$defs)
      .filter(([path]) => path.at(-1) !== 'properties' && path.at(-1) !== '$defs')
      .filter(([path]) => path.length === 1 || path.at(-2) === 'properties')
      .filter(([, each]) => !('$ref' in each) && !('title' in each && 'description' in each))
      .map(([path]) => path.join('.'));
    expect(silent).toEqual([]);
  });
});
