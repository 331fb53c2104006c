import { stripVTControlCharacters } from 'node:util';
import { describe, expect, it } from 'vitest';
import { print } from '../../src/cli/print.js';
import { columns } from '../../src/source/visible.js';
import type { Report } from '../../src/reports/report.js';
import { summary } from '../../src/reports/summary.js';
import { terminalReport } from '../../src/reports/terminal.js';
import { workingReport } from '../../src/reports/working.js';
import { gardenGate, gardenGateSound } from './fixtures/garden-gate.js';

const plain = (report: Report, width = 80, all = false): string =>
  print(terminalReport(report, { all }), { width, colour: false });

const lines = (text: string): readonly string[] => text.split('\n');

/** The rows of the table of accounts. */
const rows = (text: string): readonly string[] => {
  const from = lines(text).findIndex((line) => line.startsWith('─'));
  const to = lines(text).findIndex((line, at) => at > from && (line === '' || line.startsWith('…')));
  return lines(text).slice(from + 1, to);
};

/** The fixture with `count` accounts of a verdict, each with its finding. */
function crowd(count: number): Report {
  const [finding] = gardenGate.findings.filter(({ rule }) => rule === 'coil-on-pin');
  const account = gardenGate.accounts.find(({ id }) => id === 'main.D6');
  if (!finding || !account) throw new Error('the fixture has changed');
  const ids = Array.from({ length: count }, (_, index) => `crowd.${index + 1}`);
  return {
    ...gardenGate,
    counts: { ...gardenGateSound.counts, breach: count },
    accounts: [...gardenGateSound.accounts, ...ids.map((id) => ({ ...account, id, title: id }))],
    findings: ids.map((id) => ({ ...finding, account: id, rule: `rule-of-${id.slice(6)}` })),
  };
}

describe('the whole report at 80 columns', () => {
  it('tells a build with everything wrong, from the verdict to the last note', async () => {
    await expect(plain(gardenGate)).toMatchFileSnapshot('fixtures/garden-gate.txt');
  });

  it('tells a sound build plainly, with its tightest account', async () => {
    await expect(plain(gardenGateSound)).toMatchFileSnapshot('fixtures/garden-gate-sound.txt');
  });

  it('leaves nothing out when all is asked for', async () => {
    await expect(plain(gardenGate, 80, true)).toMatchFileSnapshot('fixtures/garden-gate-all.txt');
  });

  it('sets the working as a textbook does', async () => {
    const steps = gardenGate.findings.flatMap(({ working }) => working);
    const text = print(workingReport({ title: 'pin D6, source', steps }, 'garden-gate.yaml'), {
      width: 80,
      colour: false,
    });
    await expect(text).toMatchFileSnapshot('fixtures/working.txt');
  });
});

describe('the page', () => {
  it.each([40, 60, 80, 110])('has no line wider than %i columns', (width) => {
    for (const report of [gardenGate, gardenGateSound, crowd(20)]) {
      const widest = Math.max(...lines(plain(report, width, true)).map(columns));
      expect(widest).toBeLessThanOrEqual(width);
    }
  });

  it('has no escape code when plain, and says the same in colour', () => {
    const coloured = print(terminalReport(gardenGate), { width: 80, colour: true });
    expect(plain(gardenGate)).not.toContain('\u001B');
    expect(coloured).toContain('\u001B[');
    // Where a line ends in a mark, the spaces that fill its cell stand before the code that ends the colour.
    const stripped = stripVTControlCharacters(coloured);
    expect(lines(stripped).map((line) => line.trimEnd())).toEqual(lines(plain(gardenGate)));
  });

  it('adds the typical draw, the name and the mode where there is room', () => {
    expect(plain(gardenGate, 80)).not.toContain('main.D6  free');
    expect(plain(gardenGate, 110)).toMatch(/52\.7 mA {2}40\.0 mA .* main\.D6/);
    expect(plain(gardenGate, 140)).toMatch(/main\.D6 +free/);
  });
});

describe('the headline', () => {
  it('tells three findings of the worst verdict and counts the rest', () => {
    const text = plain(crowd(5));
    expect(text).toContain('5 things must change before power goes on.');
    expect(text.match(/^ {8}\d {2}The coil of latch/gm)).toHaveLength(3);
    expect(text).toContain('… and 2 more like them below.');
  });

  it('asks the question of an unproven finding', () => {
    const findings = gardenGate.findings.filter(({ verdict }) => verdict === 'unproven');
    const text = plain({
      ...gardenGateSound,
      verdict: 'unproven',
      findings,
      counts: { ...gardenGateSound.counts, unproven: 1 },
    });
    expect(text).toMatch(/UNPROVEN {2}Nothing is known to be wrong, but one question is open\./);
    expect(text).toMatch(/→ What is its thermal resistance/);
  });

  it('does not call a file sound that has nothing in it without saying so', () => {
    expect(plain({ ...gardenGateSound, accounts: [], findings: [] })).toContain('the file names no load');
  });
});

describe('the table of accounts', () => {
  it('starts with what calls for a change, worst margin first, then the tightest of the rest', () => {
    expect(rows(plain(gardenGate)).map((row) => row.slice(3, 31).trim())).toEqual([
      expect.stringMatching(/^−32 % {2}pin D6/),
      expect.stringMatching(/^−5 % {2}valve coil/),
      expect.stringMatching(/^8 % {2}fuse on USB/),
      expect.stringMatching(/^\? {2}pump transistor/),
      expect.stringMatching(/^40 % {2}5 V regulator/),
      expect.stringMatching(/^60 % {2}pin A6/),
      expect.stringMatching(/^65 % {2}pin A5/),
    ]);
  });

  it('numbers an account with the number of its finding', () => {
    const text = plain(gardenGate);
    expect(rows(text)[2]).toMatch(/^4 .* fuse on USB/);
    expect(text).toMatch(/^4 {2}thin /m);
  });

  it('shows no more than twelve rows, and says what it hides', () => {
    const text = plain(crowd(15));
    expect(rows(text)).toHaveLength(12);
    expect(text).toContain('… 3 more have their findings below; 7 are sound: --all');
    expect(rows(plain(crowd(15), 80, true))).toHaveLength(22);
  });
});

describe('the findings', () => {
  it('has exactly one entry each', () => {
    const text = plain(crowd(20));
    for (let index = 1; index <= 20; index += 1) {
      expect(text.match(new RegExp(`\\brule-of-${index}$`, 'gm'))).toHaveLength(1);
    }
    for (const { rule } of gardenGate.findings) {
      expect(plain(gardenGate).match(new RegExp(`[ ]${rule}\\)?$`, 'gm'))).toHaveLength(1);
    }
  });

  it('takes them in the order of severity whatever order they come in', () => {
    const reversed = { ...gardenGate, findings: gardenGate.findings.toReversed() };
    const verdicts = plain(reversed).match(/^\d {2}(breach|strain|unproven|thin)\b/gm);
    expect(verdicts).toEqual(['1  breach', '2  strain', '3  unproven', '4  thin']);
  });
});

it('sums several files up in one row each', () => {
  const unread = { ampledger: 1, file: 'broken.yaml', verdict: 'unread', errors: [] } as const;
  expect(print(summary([gardenGate, gardenGateSound, unread]), { width: 80, colour: false })).toBe(
    [
      'verdict  file              findings',
      '───────  ────────────────  ───────────────────────────────────────────────',
      'breach   garden-gate.yaml  1 breach, 1 strain, 1 unproven, 1 thin, 2 notes',
      'sound    garden-gate.yaml  1 note',
      'unread   broken.yaml       not audited',
      '',
    ].join('\n'),
  );
});
