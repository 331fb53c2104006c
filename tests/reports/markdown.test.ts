import { describe, expect, it } from 'vitest';
import { code, inline } from '../../src/reports/markdown-text.js';
import { markdownReport } from '../../src/reports/markdown.js';
import type { Report, UnreadReport } from '../../src/reports/report.js';
import { attacks, markupAttacks, poisonedReport } from '../hostile/attacks.js';
import { gardenGate } from './fixtures/garden-gate.js';

const unread: UnreadReport = {
  ampledger: 1,
  file: 'torn.yaml',
  verdict: 'unread',
  errors: [{ file: 'torn.yaml', line: 3, column: 5, says: 'there is no key `currant`' }],
};

/** What each line is as a block: its first sign, or the number of cells of a table's row. */
const shapes = (text: string): readonly string[] =>
  text.split('\n').map((line) => {
    if (line.startsWith('|')) return `${line.replace(/\\\|/g, '').split('|').length} cells`;
    return /^(?:#+ |- |\*\*|<details><summary>|<\/details>|$)/.exec(line)?.[0] ?? 'text';
  });

describe('a report as Markdown', () => {
  const text = markdownReport([gardenGate]);

  it('says the verdict first, then accounts, then every finding', () => {
    const [title, , verdict] = text.split('\n');
    expect(title).toMatch(/^## /);
    expect(verdict).toMatch(/^\*\*BREACH\*\* .* must change before power goes on/);
    expect(text.indexOf('| # |')).toBeLessThan(text.indexOf('**1 breach**'));
    for (const { rule, waiver } of gardenGate.findings) if (!waiver) expect(text).toContain(code(rule));
  });

  it('has the means of supplies and what loads are for, as tables', () => {
    expect(text).toContain('| brick | 100 mA | 500 mW | 12.0 Wh | valve 100 % |');
    expect(text).toContain('| valve | closed | 6 h | 2.4 Wh | 7.2 Wh | runs, not safe | runs | open (safety) |');
  });

  it('opens and closes what it folds, each with an empty line around it', () => {
    expect(text.match(/^<details><summary>.*<\/summary>\n\n/gm)?.length).toBe(text.match(/\n\n<\/details>$/gm)?.length);
    expect(text.match(/<details>/g)?.length).toBe(text.match(/<\/details>/g)?.length);
  });

  it('has several files in order below a table, one that was not read among them', () => {
    const several = markdownReport([unread, gardenGate]);
    expect(several).toMatch(
      /^\| verdict \| file \| findings \|\n.*\n\| \*\*unread\*\* \| `torn\.yaml` \| not audited \|\n/,
    );
    expect(several).toContain('**UNREAD** This file was not audited.');
    expect(several).toContain('- `torn.yaml:3:5` there is no key');
  });

  it('has the reason of what is set aside', () => {
    const [finding] = gardenGate.findings;
    const waiver = { reason: 'agreed with Ida', until: '2027-01-01', place: finding!.place };
    const report: Report = { ...gardenGate, findings: [{ ...finding!, waiver }] };
    expect(markdownReport([report])).toContain('Set aside until 2027-01-01: agreed with Ida');
  });

  it('is the same each time', () => {
    expect(markdownReport([gardenGate])).toBe(markdownReport([structuredClone(gardenGate)]));
  });
});

describe.each([...attacks, ...markupAttacks].map((attack) => [JSON.stringify(attack), attack]))(
  'Markdown of a file full of %s',
  (_, attack) => {
    const names = ['about', 'id', 'account'];
    const mild = markdownReport([poisonedReport(gardenGate, 'a name', names), unread]);
    const text = markdownReport([poisonedReport(gardenGate, attack, names), unread]);

    it('has the blocks and tags that it would have with plain names', () => {
      expect(shapes(text)).toEqual(shapes(mild));
      const inMarkup = text.replace(/\\[^]|`[^`\n]*`/g, '');
      expect(inMarkup).not.toMatch(/<(?!\/?(?:details|summary|span)>)/);
    });

    it('shows nothing that acts', () => {
      expect(text.replaceAll('\n', '')).not.toMatch(/[\p{Cc}\p{Cf}\p{Cs}\p{Zl}\p{Zp}]/u);
      expect(text).not.toMatch(/^\s*::|##\w*\[/m);
      const prose = text
        .replace(/^<details>.*/gm, '')
        .replace(/\\[^]|`[^`\n]*`/g, '')
        .replaceAll('&#8203;', '\0');
      expect(prose).not.toMatch(/[`[\]~_\\]|@(?!\0)|:\/\/|#\d|www\./);
    });
  },
);

it.each([
  ['a|b `c` <d> & *e*', 'a\\|b \\`c\\` &lt;d&gt; &amp; \\*e\\*'],
  ['# a', '\\# a'],
  ['- a', '\\- a'],
  ['1. a', '1\\. a'],
  ['27.8 mA', '27.8 mA'],
  ['@all #1', '@&#8203;all #&#8203;1'],
  ['http://a.b', 'http:&#8203;//a.b'],
  ['x :100: $y$', 'x :&#8203;100: <span>$</span>y<span>$</span>'],
])('the text %j is written %j', (text, written) => {
  expect(inline(text)).toBe(written);
});
