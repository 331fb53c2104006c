/** Every view of a project whose author attacks what shows it, and of files whose names do. */
import { beforeAll, describe, expect, it } from 'vitest';
import { print } from '../../src/cli/print.js';
import { builtIn } from '../../src/catalogue/built-in.js';
import { withOwn } from '../../src/catalogue/own.js';
import * as ampledger from '../../src/index.js';
import type { Report, UnreadReport } from '../../src/index.js';
import { adviceJson, adviceTree } from '../../src/reports/advice.js';
import { catalogueJson, catalogueTree } from '../../src/reports/catalogue.js';
import { comparisonMarkdown } from '../../src/reports/compare-markdown.js';
import type { ComparisonReport } from '../../src/reports/compare-report.js';
import { comparisonSarif } from '../../src/reports/compare-sarif.js';
import { comparisonTree } from '../../src/reports/compare-tree.js';
import { headroomJson, headroomTree } from '../../src/reports/headroom.js';
import { headOf, jsonReport, toJson } from '../../src/reports/json.js';
import { junitReport } from '../../src/reports/junit.js';
import { markdownReport } from '../../src/reports/markdown.js';
import { optionsJson, optionsTree } from '../../src/reports/options.js';
import { profileJson, profileTree } from '../../src/reports/profile.js';
import { proofJson, proofTree } from '../../src/reports/proof.js';
import { sarifReport } from '../../src/reports/sarif.js';
import { summary } from '../../src/reports/summary.js';
import { terminalReport } from '../../src/reports/terminal.js';
import type { Tree } from '../../src/reports/tree.js';
import { workingReport } from '../../src/reports/working.js';
import { renderDiagnostic } from '../../src/source/diagnostic.js';
import { sarifFaults } from '../reports/sarif-schema.js';
import { attacks } from './attacks.js';
import { expectMarkdown, expectPage, expectQuiet, expectXml } from './harmless.js';
import { evilCoil, folders, hostile, line } from './project.js';

/** A file may be called anything: all attacks are in its name, those with control characters too. */
const FILE = `${attacks.join(' ')} ${line}.yaml`;

const opened = (text: string): ampledger.WithFolders => {
  const { document, errors } = ampledger.read(text, FILE);
  if (document === undefined || errors.length > 0) throw new Error(errors.map(renderDiagnostic).join('\n'));
  return ampledger.withFolders(document, folders);
};
const onPage = (tree: Tree): string => print(tree, { width: 80, colour: false });

let document: ampledger.WithFolders;
let report: Report;
let unread: UnreadReport;
beforeAll(() => {
  document = opened(hostile());
  const audited = ampledger.audit(document, { today: '2026-11-25' });
  if (!audited.report) throw new Error(audited.errors.map(renderDiagnostic).join('\n'));
  report = audited.report;
  const { errors } = ampledger.read(
    hostile().replace('loads:', `loads:\n  ${JSON.stringify(line)}: { ${JSON.stringify(line)}: 1 }`),
    FILE,
  );
  const wrong = errors.length > 0 ? errors : ampledger.audit(opened(hostile(undefined, '"::error::x <b> `|"'))).errors;
  unread = { ampledger: 1, file: FILE, verdict: 'unread', errors: wrong };
});

describe('a hostile project', () => {
  it('gets as far as the reports with its texts', () => {
    expect(report.project).toContain('<script>');
    expect(report.notes.length).toBeGreaterThan(3);
    expect(report.findings.some(({ waiver }) => waiver?.reason.includes('# heading'))).toBe(true);
    expect(report.findings.some(({ remedies }) => remedies.length > 0)).toBe(true);
    expect(JSON.stringify(report.accounts)).toContain(line.slice(0, 20));
    expect(unread.errors.length).toBeGreaterThan(0);
  });

  it('is harmless in every format of an audit', () => {
    expectPage(onPage(terminalReport(report, { all: true })));
    expectPage(onPage(terminalReport(report)));
    expectPage(onPage(summary([report, unread])));
    expectQuiet(jsonReport([report, unread]));
    expectMarkdown(markdownReport([report, unread]));
    expectXml(junitReport([report, unread], 'note'));
    const sarif = sarifReport([report, unread], '1', () => document.text);
    expectQuiet(sarif);
    expect(sarifFaults(JSON.parse(sarif))).toBeNull();
  });

  it('is harmless in its sums', () => {
    for (const name of ['latch', 'lamp', 'vents.1']) {
      const working = ampledger.workingOf(document, name);
      expect(working.steps.length).toBeGreaterThan(0);
      expectPage(onPage(workingReport(working, FILE)));
      expectQuiet(toJson({ file: FILE, ...working }));
    }
  });

  it('is harmless in options, headroom and advice', () => {
    const board = opened(hostile(['vents']));
    const { boards, project } = ampledger.optionsOf(board);
    const head = headOf(project, FILE, undefined);
    expect(JSON.stringify(optionsJson(boards, head))).toContain(line.slice(0, 20));
    expectPage(onPage(optionsTree(boards, project, FILE, true)));
    expectQuiet(toJson(optionsJson(boards, head)));
    const { headroom } = ampledger.headroom(opened(hostile(['latch'])), 'latch');
    expectPage(onPage(headroomTree(headroom!, project, FILE)));
    expectQuiet(toJson(headroomJson(headroom!, head)));
    const { advice, text } = ampledger.advise(opened(hostile(['latch'])));
    expectPage(onPage(adviceTree(advice!, project, FILE, true)));
    expectQuiet(toJson(adviceJson(advice!, head)));
    // What is written back into the file is the author's own text, and reads as before.
    expect(ampledger.read(text, FILE).errors).toEqual([]);
  });

  it('is harmless in a comparison', () => {
    const before = opened(hostile().replace('330 Ω', '68 Ω').replace('title: ', 'title: "x" # '));
    const { report: file } = ampledger.compare(before, document, { file: FILE, was: `${line}.yaml` });
    const comparison: ComparisonReport = {
      ...{ ampledger: 1, before: attacks.join(' '), after: line, change: 'worse', fails: true, unchanged: 0 },
      files: [
        file!,
        { ...file!, state: 'unread', change: 'unread', unread: [{ side: 'after', errors: unread.errors }] },
      ],
    };
    expectPage(onPage(comparisonTree(comparison, true)));
    expectQuiet(toJson(comparison));
    expectMarkdown(comparisonMarkdown(comparison, 'breach'));
    expectMarkdown(comparisonMarkdown(comparison, 'breach', 3000));
    const sarif = comparisonSarif(comparison, '1');
    expectQuiet(sarif);
    expect(sarifFaults(JSON.parse(sarif))).toBeNull();
  });

  it('is harmless in the catalogue, with profiles of its own', () => {
    const { catalogue, profiles, errors } = withOwn(builtIn, [{ file: `${FILE}/evil-coil.yaml`, text: evilCoil }], {
      twins: true,
    });
    expect(errors).toEqual([]);
    const profile = catalogue.profile('evil-coil')!;
    expectPage(onPage(proofTree(profiles)));
    expectQuiet(toJson(proofJson(profiles, errors)));
    expectPage(onPage(profileTree(profile, [profile])));
    expectQuiet(toJson(profileJson(profile, [profile])));
    expectPage(onPage(catalogueTree([profile], [line, ...attacks], 1)));
    expectQuiet(toJson(catalogueJson([profile], { words: attacks })));
  });
});

describe('an error message', () => {
  it.each([...attacks, line])('is harmless where the file or a value is %j', (attack) => {
    for (const text of [
      `ampledger: 1\ntitle: ${attack}\n${attack}: 1\n`,
      `ampledger: 1\ntitle: x\nloads: { ${JSON.stringify(attack)}: ${JSON.stringify(attack)} }\n`,
    ]) {
      const { document: read, errors } = ampledger.read(text, attack);
      const all = [...errors, ...(read && errors.length === 0 ? ampledger.audit(read).errors : [])];
      for (const error of all) {
        // As the command prints it: each line by itself.
        const said = renderDiagnostic(error);
        expect(said.replaceAll('\n', '')).not.toMatch(/[\p{Cc}\u202a-\u202e\u2066-\u2069\p{Cs}\p{Zl}\p{Zp}]/u);
      }
      expectQuiet(jsonReport([{ ampledger: 1, file: attack, verdict: 'unread', errors: all }]));
      expectMarkdown(markdownReport([{ ampledger: 1, file: attack, verdict: 'unread', errors: all }]));
      expectXml(junitReport([{ ampledger: 1, file: attack, verdict: 'unread', errors: all }], 'breach'));
    }
  });
});
