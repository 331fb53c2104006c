import { describe, expect, it } from 'vitest';
import { read, compare } from '../../src/index.js';
import { comparisonMarkdown } from '../../src/reports/compare-markdown.js';
import type { ComparisonReport, FileComparison } from '../../src/reports/compare-report.js';
import { MOST_CHARACTERS } from '../../src/reports/compare-sheet.js';
import { comparisonTree } from '../../src/reports/compare-tree.js';
import { print } from '../../src/cli/print.js';

const SHED = (more: string, title = 'Shed'): string => `ampledger: 1
title: ${title}
ambient: 25 °C
controllers: { main: { board: atmega328p-5v-board, powered: { usb: { type: usb2-port } } } }
loads:
  lamp: { part: led-red-5mm, pin: D3, series: 330 Ω ±5 % }
${more}`;
const HORN = '  horn: { part: relay-coil-5v-70r, pin: D9 }\n';

function fileOf(before: string, after: string): FileComparison {
  const [was, is] = [before, after].map((text) => read(text, 'shed.yaml').document);
  const { report, errors } = compare(was, is, { file: 'shed.yaml' });
  if (report === undefined) throw new Error(JSON.stringify(errors));
  return report;
}
const reportOf = (files: readonly FileComparison[], rest: Partial<ComparisonReport> = {}): ComparisonReport => ({
  ampledger: 1,
  before: 'main',
  after: 'working tree',
  change: 'worse',
  fails: true,
  unchanged: 2,
  files,
  ...rest,
});
const worse = fileOf(SHED(''), SHED(HORN));

describe('a comparison in a terminal', () => {
  it.each([false, true])('begins with what the change comes to and fits 80 columns (all: %s)', (all) => {
    const text = print(comparisonTree(reportOf([worse]), all), { width: 80, colour: false });
    const lines = text.split('\n');
    expect(lines[0]).toMatch(/^Shed +shed\.yaml, main → working tree$/);
    expect(lines[2]).toMatch(/^WORSE {2}\d findings are new/);
    expect(text).toContain('+ load horn: part: relay-coil-5v-70r; pin: D9');
    expect(text).toContain('+ pin main.D9: horn, free before');
    for (const line of lines) expect([...line].length).toBeLessThanOrEqual(80);
  });
});

describe('a comparison in Markdown', () => {
  it.each([
    [{ change: 'worse', fails: true }, '❌ Currents: worse'],
    [{ change: 'worse', fails: false }, '⚠️ Currents: worse'],
    [{ change: 'changed', fails: false }, '✅ Currents: no worse'],
    [{ change: 'unread', fails: false }, '❌ Currents: not all read'],
  ] as const)('%j is headed %s', (whole, head) => {
    expect(comparisonMarkdown(reportOf([], whole), 'breach')).toContain(`## ${head}\n`);
  });

  it('says an entry of a list that came or went, what a load was, and likes of a row once', () => {
    const lamps = SHED('  b: { part: led-red-5mm, pin: D4, series: 330 Ω ±5 % }\n');
    const modes = (...active: readonly string[]) => `${lamps}modes: { all: { active: [${active.join(', ')}] } }\n`;
    const page = (before: string, after: string) =>
      comparisonMarkdown(reportOf([fileOf(before, after)], { change: 'changed', fails: false }), 'breach');
    expect(page(modes('lamp'), modes('b', 'lamp'))).toContain('| changed | mode all | active: with b |');
    expect(page(lamps, SHED(''))).toContain('| removed | load b | part: led-red-5mm; pin: D4; series: 330 Ω ±5 % |');
    expect(page(lamps, lamps.replaceAll('330 Ω', '270 Ω'))).toMatch(/\| pins D3 and D4, source \|/);
  });

  it('tells what is set aside in the open, with its reason and its last day', () => {
    const waived = `${SHED(HORN)}waivers: [ { rule: coil-on-pin, about: horn, accepts: damage, reason: 'bench | use', until: 2099-01-31 } ]\n`;
    const text = comparisonMarkdown(
      reportOf([fileOf(SHED(HORN), waived)], { change: 'changed', fails: false }),
      'breach',
    );
    expect(text).toContain('## ⚠️ Currents: no worse');
    expect(text).toContain('One finding is set aside now (breach).');
    expect(text).toContain('  - The reason is: bench \\| use, until 2099-01-31.');
  });

  it('tells what is worse in the open and folds the rest', () => {
    const text = comparisonMarkdown(reportOf([worse]), 'breach');
    expect(text).toMatch(/^## ❌ Currents: worse\n\n\*\*\d findings are new/);
    expect(text).toContain('The check fails: the change brings a breach or makes one worse.');
    const open = text.replace(/<details>[^]*?<\/details>/g, '');
    expect(open).toContain('The coil of horn hangs straight on pin D9');
    expect(open).toMatch(
      /coil-on-pin`\)\n  - Cure: Drive horn with an NPN .*\. The verdict on the whole is then sound\./,
    );
    expect(open).toMatch(/`pin-current`\)\n  - Cure: as of coil-on-pin, horn\./);
    expect(open).not.toContain('| in hand |');
    expect(text).toMatch(
      /<details><summary>Accounts before and after \(\d+; \d+ more are as before\)<\/summary>\n\n\| in hand/,
    );
    expect(text).not.toContain('Left out');
  });

  it('never holds more than a comment, and counts what it leaves out', () => {
    const many = Array.from({ length: 400 }, (_, i) => ({ ...worse, file: `shed-${i}.yaml` }));
    const text = comparisonMarkdown(reportOf(many), 'breach');
    expect(text.length).toBeLessThanOrEqual(MOST_CHARACTERS);
    expect(text.length).toBeGreaterThan(MOST_CHARACTERS / 2);
    const [, left] = /_Left out, since a comment holds no more: .*?(\d+) findings/.exec(text) ?? [];
    const shown = text.match(/^- \*\*/gm)?.length ?? 0;
    const all = many.length * worse.findings.filter((f) => f.before !== 'note' && f.after !== 'note').length;
    expect(shown + Number(left)).toBe(all);
    expect(text.match(/<details>/g)?.length ?? 0).toBe(text.match(/<\/details>/g)?.length ?? 0);
    const tiny = comparisonMarkdown(reportOf([worse]), 'breach', 1500);
    expect(tiny.length).toBeLessThanOrEqual(1500);
    expect(tiny).toContain('Left out');
  });

  it('lets nothing of a file out', () => {
    const title = `'x</details> <img src=y> @team #12 https://z www.z [a](b) | **c** \`d\` ::error ##[e] $f$'`;
    const file = { ...fileOf(SHED(''), SHED(HORN, title)), file: 'a`|<b>.yaml' };
    const whole = comparisonMarkdown(reportOf([file, file], { before: '`<x>' }), 'breach');
    // Between backticks nothing is read; those of the file are escaped outside and replaced inside.
    const text = whole.replace(/(?<!\\)`[^`\n]*`/g, '');
    expect(text).not.toMatch(/(?<!\\)`/);
    expect(text).not.toMatch(/<(?!\/?details>|\/?summary>|\/?span>)/);
    expect(text).not.toMatch(/@team|#12|https:\/\/|www\.z|(?<!\\)\[a|::error|##\[/);
    expect(text).not.toContain('**c**');
  });
});
