/**
 * No remedy makes anything worse: of samples and of projects at random every remedy of every finding is written into the text, the
 * text is read and judged anew, and every account is held against what it was.
 */
import fc from 'fast-check';
import { readdirSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { stringify } from 'yaml';
import { findingKey } from '../../src/checks/finding.js';
import { faultsOf, judgedText, remediesOf } from '../remedies/cured.js';
import { sampleText } from '../samples/audited.js';
import { sized } from '../sizes.js';
import { projects } from './projects.js';

/** @returns what remedies do wrong @param most findings that are tried, spread over all of them */
function faultsIn(text: string, most: number): { readonly tried: number; readonly faults: readonly string[] } {
  const before = judgedText(text);
  if (typeof before === 'string') throw new Error(before);
  const cures = remediesOf(text, before);
  const found = before.findings.filter((f) => f.verdict !== 'note');
  const every = Math.max(1, Math.ceil(found.length / most));
  let tried = 0;
  const faults = found
    .filter((_, k) => k % every === 0)
    .flatMap((finding) =>
      cures(finding).flatMap((remedy) => {
        tried++;
        return faultsOf(text, before, finding, remedy).map(
          (fault) => `${findingKey(finding)}: ${remedy.title} ${fault}`,
        );
      }),
    );
  return { tried, faults };
}

const samples = readdirSync(new URL('../../samples/', import.meta.url))
  .filter((name) => name.endsWith('.yaml'))
  .map((name) => name.replace('.yaml', ''));

describe('the remedies of a sample', () => {
  it.each(samples)(
    '%s make nothing worse',
    (name) => {
      expect(faultsIn(sampleText(name), sized(3, 1000)).faults).toEqual([]);
    },
    sized(120_000, 3_600_000),
  );
});

describe('the remedies of a project at random', () => {
  it(
    'make nothing worse',
    () => {
      let tried = 0;
      fc.assert(
        fc.property(projects({ most: 5 }), (data) => {
          const { tried: many, faults } = faultsIn(stringify(data, { aliasDuplicateObjects: false }), sized(2, 10));
          tried += many;
          expect(faults).toEqual([]);
        }),
        { seed: 41, numRuns: sized(6, 150), endOnFailure: true },
      );
      expect(tried).toBeGreaterThan(0);
    },
    sized(240_000, 3_600_000),
  );
});
