/** Cures in SARIF: whoever makes the change that a fix describes has the file that the audit promised. */
import { describe, expect, it } from 'vitest';
import { advise, audit, read } from '../../src/index.js';
import type { Report } from '../../src/reports/report.js';
import { sarifReport } from '../../src/reports/sarif.js';
import { editedText } from '../../src/source/edit.js';
import { sampleText } from '../samples/audited.js';
import { sarifFaults } from './sarif-schema.js';

interface Region {
  readonly startLine: number;
  readonly startColumn: number;
  readonly endLine: number;
  readonly endColumn: number;
}
interface Fix {
  readonly description: { readonly text: string };
  readonly artifactChanges: readonly {
    readonly artifactLocation: { readonly uri: string };
    readonly replacements: readonly {
      readonly deletedRegion: Region;
      readonly insertedContent?: { readonly text: string };
    }[];
  }[];
}
interface Result {
  readonly ruleId: string;
  readonly locations: readonly [{ readonly physicalLocation: { readonly region: Region } }];
  readonly fixes?: readonly Fix[];
}

const FILE = 'latch.yaml';
const whole = (text: string): Report => {
  const { document } = read(text, FILE);
  return audit(document!).report!;
};
function resultsOf(text: string, report: Report): readonly Result[] {
  const log = JSON.parse(sarifReport([report], '1', (file) => (file === FILE ? text : undefined))) as {
    readonly runs: readonly [{ readonly results: readonly Result[] }];
  };
  expect(sarifFaults(log)).toBeNull();
  return log.runs[0].results;
}

/** As a reader of the standard would do it: lines end with \n, columns count UTF-16 units, regions are of the text before. */
function offsetOf(text: string, line: number, column: number): number {
  let at = 0;
  for (let k = 1; k < line; k++) at = text.indexOf('\n', at) + 1;
  return at + column - 1;
}
const stretch = (text: string, r: Region): readonly [number, number] => [
  offsetOf(text, r.startLine, r.startColumn),
  offsetOf(text, r.endLine, r.endColumn),
];
function made(text: string, { artifactChanges: [change] }: Fix): string {
  expect(change!.artifactLocation.uri).toBe(FILE);
  return change!.replacements.reduceRight((now, { deletedRegion, insertedContent }) => {
    const [from, to] = stretch(text, deletedRegion);
    return now.slice(0, from) + (insertedContent?.text ?? '') + now.slice(to);
  }, text);
}

const gate = sampleText('gate-latch-on-pin');

describe.each([
  ['as it is', gate],
  ['with line ends of another system', gate.replaceAll('\n', '\r\n')],
])('the fixes of a file %s', (_, text) => {
  const report = whole(text);
  const results = resultsOf(text, report);

  it('are one a remedy, and each is what the remedy writes', () => {
    expect(report.findings.some(({ remedies }) => remedies.length > 0)).toBe(true);
    for (const [index, { fixes = [] }] of results.entries()) {
      const { remedies } = report.findings[index]!;
      expect(fixes).toHaveLength(remedies.length);
      for (const [k, fix] of fixes.entries()) {
        const changes = remedies[k]!.changes.map(({ path, value }) => ({
          path: path.split('.'),
          value: value ?? undefined,
        }));
        expect(made(text, fix)).toBe(editedText(text, changes));
      }
    }
  });

  it('stand beside regions that end where the entry does', () => {
    for (const { locations } of results) {
      const [from, to] = stretch(text, locations[0].physicalLocation.region);
      expect(text.slice(from, to)).toMatch(/^\S(?:[^]*\S)?$/);
      expect(to).toBeGreaterThan(from);
    }
    const pin = results.find(({ ruleId }) => ruleId === 'coil-on-pin')!;
    expect(text.slice(...stretch(text, pin.locations[0].physicalLocation.region))).toBe('pin: D9');
  });
});

it('the first fix of the first finding leads to the audit that was promised, and is what advise writes', () => {
  const report = whole(gate);
  const after = made(gate, resultsOf(gate, report)[0]!.fixes![0]!);
  const { document } = read(after, FILE);
  expect(audit(document!, { advice: false }).report!.verdict).toBe(report.findings[0]!.remedies[0]!.after.verdict);
  expect(after).toBe(advise(read(gate, FILE).document!).text);
});

it('a variant has none, for its changes are not in the file', () => {
  const report = { ...whole(gate), variant: 'other' };
  expect(resultsOf(gate, report).some(({ fixes }) => fixes !== undefined)).toBe(false);
});
