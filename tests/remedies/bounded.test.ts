/** A report judges only so many changed projects: what is worst first, and what costs nothing besides. */
import { expect, test } from 'vitest';
import { builtIn, read } from '../../src/index.js';
import { curesFor } from '../../src/remedies/cures.js';
import { reportOf } from '../../src/reports/report-of.js';
import { sampleText } from '../samples/audited.js';
import { judgedText } from './cured.js';

const text = sampleText('seedling-house');
const judgement = judgedText(text);
const { document } = read(text, 'case.yaml');

function reported(most: number) {
  if (typeof judgement === 'string') throw new Error(judgement);
  const cures = curesFor(document!.data, 'case.yaml', { catalogue: builtIn }, judgement, most);
  return reportOf(judgement, document!, { cures });
}

test('the worst has its cure, with all that the same change cures; how many are left out is said', () => {
  const report = reported(1);
  const cured = report.findings.filter((f) => f.remedies.length > 0);
  expect(new Set(cured.flatMap((f) => f.remedies.map((r) => JSON.stringify(r.changes)))).size).toBe(1);
  expect(cured.length).toBeGreaterThan(1);
  expect(report.findings[0]!.remedies).toHaveLength(1);
  const [note] = report.notes.filter(({ about }) => about === 'cures');
  const all = reported(Infinity).findings.filter((f) => f.remedies.length > 0);
  expect(note!.text).toContain(`for ${all.length - cured.length} findings none was tried`);
});

test('none at all where none may be judged, and nothing is said where all were', () => {
  expect(reported(0).findings.flatMap((f) => f.remedies)).toEqual([]);
  expect(reported(Infinity).notes.map(({ about }) => about)).not.toContain('cures');
});
