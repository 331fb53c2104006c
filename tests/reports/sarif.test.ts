import { describe, expect, it } from 'vitest';
import type { Report, ReportFinding, UnreadReport } from '../../src/reports/report.js';
import { sarifReport } from '../../src/reports/sarif.js';
import { located } from '../../src/reports/sarif-text.js';
import { attacks, markupAttacks, poisonedReport } from '../hostile/attacks.js';
import { gardenGate } from './fixtures/garden-gate.js';
import { sarifFaults } from './sarif-schema.js';

interface Log {
  readonly runs: readonly [
    {
      readonly tool: {
        readonly driver: { readonly version: string; readonly rules: readonly { readonly id: string }[] };
      };
      readonly invocations: readonly [
        { readonly executionSuccessful: boolean; readonly toolExecutionNotifications: readonly unknown[] },
      ];
      readonly artifacts: readonly { readonly location: { readonly uri: string } }[];
      readonly results: readonly {
        readonly ruleId: string;
        readonly ruleIndex: number;
        readonly level: string;
        readonly message: { readonly text: string };
        readonly locations: readonly unknown[];
        readonly relatedLocations?: readonly { readonly id: number }[];
        readonly partialFingerprints: { readonly 'ampledgerFinding/v1': string };
        readonly suppressions: readonly { readonly justification: string }[];
        readonly properties: { readonly verdict: string };
      }[];
    },
  ];
}

function logOf(reports: readonly (Report | UnreadReport)[]): Log {
  const log = JSON.parse(sarifReport(reports, '1.2.3')) as Log;
  expect(sarifFaults(log)).toBeNull();
  return log;
}
const runOf = (reports: readonly (Report | UnreadReport)[]) => logOf(reports).runs[0];
const fingerprints = (report: Report): readonly string[] =>
  runOf([report]).results.map((each) => each.partialFingerprints['ampledgerFinding/v1']);

const unread: UnreadReport = {
  ampledger: 1,
  file: 'torn gate.yaml',
  verdict: 'unread',
  errors: [{ file: 'torn gate.yaml', line: 3, column: 5, says: 'there is no key `currant`', expected: '`current`' }],
};
const waived = (finding: ReportFinding): ReportFinding => ({
  ...finding,
  waiver: { reason: 'agreed with Ida', until: '2027-01-01', place: { file: 'garden-gate.yaml', line: 50, column: 5 } },
});

describe('a report as SARIF', () => {
  it('has every finding in order, with its rule, level, place and what belongs to it', () => {
    const { tool, results, invocations, artifacts } = runOf([gardenGate]);
    expect(tool.driver.version).toBe('1.2.3');
    expect(results.map(({ ruleId }) => ruleId)).toEqual(gardenGate.findings.map(({ rule }) => rule));
    for (const [index, result] of results.entries()) {
      const finding = gardenGate.findings[index]!;
      const { line, column } = finding.place;
      expect(tool.driver.rules[result.ruleIndex]?.id ?? result.ruleId).toBe(finding.rule);
      expect(result.message.text.startsWith(finding.says)).toBe(true);
      expect(result.locations).toMatchObject([
        {
          physicalLocation: {
            artifactLocation: { uri: 'garden-gate.yaml' },
            region: { startLine: line, startColumn: column },
          },
        },
      ]);
      expect(result.relatedLocations ?? []).toHaveLength(finding.related.length);
      expect(result.suppressions).toHaveLength(finding.waiver ? 1 : 0);
    }
    expect(invocations[0]).toEqual({ executionSuccessful: true, toolExecutionNotifications: [] });
    expect(artifacts.map(({ location }) => location.uri)).toEqual(['garden-gate.yaml']);
  });

  it('has a breach and a strain as errors, what is unproven or thin as warnings', () => {
    const [finding] = gardenGate.findings;
    const verdicts = ['breach', 'strain', 'unproven', 'thin', 'note'] as const;
    const report = { ...gardenGate, findings: verdicts.map((verdict) => ({ ...finding!, verdict })) };
    expect(runOf([report]).results.map(({ level }) => level)).toEqual(['error', 'error', 'warning', 'warning', 'note']);
  });

  it('has what is set aside as accepted, with the reason', () => {
    const report = { ...gardenGate, findings: gardenGate.findings.map(waived) };
    for (const { suppressions } of runOf([report]).results)
      expect(suppressions).toMatchObject([
        { kind: 'inSource', status: 'accepted', justification: 'agreed with Ida', properties: { until: '2027-01-01' } },
      ]);
  });

  it('tells a finding apart from all others, and knows it again after lines moved and figures changed', () => {
    const before = fingerprints(gardenGate);
    expect(new Set(before).size).toBe(before.length);
    const moved = gardenGate.findings.map((finding) => ({
      ...finding,
      says: `${finding.says} 12.3 mA.`,
      mode: 'another',
      place: { ...finding.place, line: finding.place.line + 7 },
    }));
    expect(fingerprints({ ...gardenGate, findings: moved })).toEqual(before);
    const [first] = gardenGate.findings;
    for (const other of [
      { rule: 'x' },
      { about: 'x' },
      { account: 'x' },
      { quantity: 'power' },
      { direction: 'sink' },
    ] as const) {
      const changed = { ...first!, quantity: 'current' as const, direction: 'source' as const };
      expect(fingerprints({ ...gardenGate, findings: [{ ...changed, ...other }] })).not.toEqual(
        fingerprints({ ...gardenGate, findings: [changed] }),
      );
    }
    expect(new Set(fingerprints({ ...gardenGate, findings: [first!, first!] })).size).toBe(2);
  });

  it('has files in the order they were given, one that could not be read as a notification', () => {
    const { artifacts, invocations, results } = runOf([unread, gardenGate, unread]);
    expect(artifacts.map(({ location }) => location.uri)).toEqual(['torn%20gate.yaml', 'garden-gate.yaml']);
    expect(invocations[0].executionSuccessful).toBe(false);
    expect(invocations[0].toolExecutionNotifications[0]).toMatchObject({
      level: 'error',
      message: { text: 'there is no key `currant`: `current`' },
      locations: [{ physicalLocation: { artifactLocation: { uri: 'torn%20gate.yaml' }, region: { startLine: 3 } } }],
    });
    expect(results).toHaveLength(gardenGate.findings.length);
  });

  it('is the same each time', () => {
    expect(sarifReport([gardenGate], '1')).toBe(sarifReport([structuredClone(gardenGate)], '1'));
  });
});

describe.each([...attacks, ...markupAttacks].map((attack) => [JSON.stringify(attack), attack]))(
  'SARIF of a file full of %s',
  (_, attack) => {
    it('is valid, and nothing in a message is a link, a placeholder or a control', () => {
      const report = poisonedReport(gardenGate, attack);
      const text = sarifReport([report, { ...unread, file: attack }], '1');
      expect(text.replaceAll('\n', '')).not.toMatch(/[\p{Cc}\p{Cf}\p{Cs}\p{Zl}\p{Zp}]/u);
      expect(text).not.toMatch(/^\s*::/m);
      expect(text).not.toMatch(/##\w*\[/);
      const [run] = logOf([report, { ...unread, file: attack }]).runs;
      for (const { message } of run.results) {
        expect(message.text).not.toMatch(/[\p{Cc}\p{Cf}]/u);
        expect(message.text.replace(/\\[\\[\]]/g, '')).not.toMatch(/[[\]\\]/);
        expect(message.text.replace(/\{\{|\}\}/g, '')).not.toMatch(/[{}]/);
      }
    });
  },
);

it.each([
  ['a/b c.yaml', 'a/b%20c.yaml'],
  ['../é#?.yaml', '../%C3%A9%23%3F.yaml'],
  ['/tmp/a:b.yaml', 'file:///tmp/a%3Ab.yaml'],
  ['a:b.yaml', 'a%3Ab.yaml'],
  ['C:\\my files\\a.yaml', 'file:///C:/my%20files/a.yaml'],
  ['//server/share/a.yaml', 'file://server/share/a.yaml'],
  ['\uD800.yaml', '%EF%BF%BD.yaml'],
])('the file %j is %s', (file, uri) => {
  expect(located(file).uri).toBe(uri);
});

it.each([
  ['a.yaml', 'firmware/b c', 'firmware/b%20c/a.yaml'],
  ['./x/../a.yaml', 'firmware', 'firmware/a.yaml'],
  ['../../a.yaml', 'firmware', '../a.yaml'],
  ['/x/a.yaml', 'firmware', 'file:///x/a.yaml'],
])('%j in the folder %j is %s from the root of the repository', (file, folder, uri) => {
  expect(located(file, folder)).toEqual({ uri, ...(uri.startsWith('file:') ? {} : { uriBaseId: '%SRCROOT%' }) });
});
