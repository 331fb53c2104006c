import { describe, expect, it } from 'vitest';
import { compare, read } from '../../src/index.js';
import type { ComparisonReport } from '../../src/reports/compare-report.js';
import { comparisonSarif } from '../../src/reports/compare-sarif.js';
import { sarifReport } from '../../src/reports/sarif.js';
import { reportOf as audited } from '../samples/audited.js';
import { attacks, markupAttacks, poisonedReport } from '../hostile/attacks.js';
import { sarifFaults } from './sarif-schema.js';

const shed = (ohms: string, more = ''): string => `ampledger: 1
title: Shed
ambient: 25 °C
controllers: { main: { board: atmega328p-5v-board, powered: { usb: { type: usb2-port } } } }
loads:
${more}  lamp: { part: led-red-5mm, pin: D3, series: ${ohms} }
`;
const HORN = '  horn: { part: relay-coil-5v-70r, pin: D9 }\n';
const BELL = '  bell: { part: relay-coil-5v-70r, pin: D9 }\n';

interface Result {
  readonly ruleId: string;
  readonly baselineState: string;
  readonly suppressions: readonly { readonly justification: string; readonly location: object }[];
  readonly partialFingerprints: { readonly 'ampledgerFinding/v1': string };
  readonly properties: { readonly about: string };
}

function reportOf(before: string, after: string): ComparisonReport {
  const [was, is] = [before, after].map((text) => read(text, 'shed.yaml').document);
  const { report } = compare(was, is, { file: 'shed.yaml' });
  const parts = { before: 'main', after: 'working tree', change: 'worse', fails: true, unchanged: 0 } as const;
  return { ampledger: 1, ...parts, files: [report!] };
}
function resultsOf(report: ComparisonReport): readonly Result[] {
  const log = JSON.parse(comparisonSarif(report, '1')) as {
    readonly runs: readonly [{ readonly results: readonly Result[] }];
  };
  expect(sarifFaults(log)).toBeNull();
  return log.runs[0].results;
}
const stateOf = (results: readonly Result[], rule: string, about: string) =>
  results.find((each) => each.ruleId === rule && each.properties.about === about)?.baselineState;

describe('a comparison as SARIF', () => {
  it('says of each finding whether it is new, the same, another or gone', () => {
    const added = resultsOf(reportOf(shed('330 Ω'), shed('330 Ω', HORN)));
    expect(stateOf(added, 'coil-on-pin', 'horn')).toBe('new');
    const removed = resultsOf(reportOf(shed('330 Ω', HORN), shed('330 Ω')));
    expect(stateOf(removed, 'coil-on-pin', 'horn')).toBe('absent');
    const kept = resultsOf(reportOf(shed('330 Ω', HORN), shed('1 kΩ', HORN)));
    expect(stateOf(kept, 'coil-on-pin', 'horn')).toBe('unchanged');
    const worse = resultsOf(reportOf(shed('130 Ω'), shed('68 Ω')));
    expect(worse.map(({ baselineState }) => baselineState)).toContain('updated');
    const renamed = resultsOf(reportOf(shed('330 Ω', HORN), shed('330 Ω', BELL)));
    expect(stateOf(renamed, 'coil-on-pin', 'bell')).toBe('unchanged');
  });

  it('has what is set aside with its reason, whatever it was before', () => {
    const waived = `${shed('330 Ω', HORN)}waivers: [ { rule: coil-on-pin, about: horn, accepts: damage, reason: bench use } ]\n`;
    const of = (before: string, after: string) => {
      const found = resultsOf(reportOf(before, after)).find((each) => each.ruleId === 'coil-on-pin');
      return [found?.baselineState, found?.suppressions[0]?.justification];
    };
    expect(of(shed('330 Ω', HORN), waived)).toEqual(['updated', 'bench use']);
    expect(of(shed('330 Ω'), waived)).toEqual(['new', 'bench use']);
    expect(of(waived, waived)).toEqual(['unchanged', 'bench use']);
    expect(of(waived, shed('330 Ω', HORN))).toEqual(['updated', undefined]);
  });

  it('knows a finding by what an audit knows it by, wherever its lines have moved to', () => {
    const moved = `# a line\n\n${shed('330 Ω', HORN)}`;
    const of = (text: string) =>
      (JSON.parse(sarifReport([audited(text, 'shed.yaml')], '1')) as { runs: [{ results: Result[] }] }).runs[0].results;
    const prints = (results: readonly Result[]) =>
      results.map((each) => each.partialFingerprints['ampledgerFinding/v1']).sort();
    expect(prints(of(moved))).toEqual(prints(of(shed('330 Ω', HORN))));
    const compared = resultsOf(reportOf(shed('330 Ω', HORN), moved));
    expect(new Set(compared.map(({ baselineState }) => baselineState))).toEqual(new Set(['unchanged']));
    expect(prints(compared)).toEqual(prints(of(moved)));
  });

  const report = reportOf(shed('330 Ω'), shed('330 Ω', HORN));
  it.each([...attacks, ...markupAttacks])('lets nothing of %j out', (attack) => {
    const keep = ['change', 'state', 'before', 'after', 'rule'];
    const poisoned = poisonedReport(report as never, attack, keep) as never;
    const text = comparisonSarif(poisoned, '1');
    expect(sarifFaults(JSON.parse(text))).toBeNull();
    expect(text.replaceAll('\n', '')).not.toMatch(/[\p{Cc}\p{Cf}\p{Cs}\p{Zl}\p{Zp}]/u);
    expect(text).not.toMatch(/^\s*::|##\w*\[/m);
  });
});
