import { stripVTControlCharacters } from 'node:util';
import { describe, expect, it } from 'vitest';
import { print } from '../../src/cli/print.js';
import { columns } from '../../src/source/visible.js';
import type { Report, ReportAccount, ReportFinding } from '../../src/reports/report.js';
import { summary } from '../../src/reports/summary.js';
import { terminalReport } from '../../src/reports/terminal.js';
import { workingReport } from '../../src/reports/working.js';
import { gardenGate, gardenGateSound } from './fixtures/garden-gate.js';

const plain = (report: Report, width = 80, all = false): string =>
  print(terminalReport(report, { all }), { width, colour: false });

const lines = (text: string): readonly string[] => text.split('\n');

/** The text on one line, whatever its layout. */
const flowing = (text: string): string => text.replace(/\s+/g, ' ');

/** The rows of the table of accounts. */
const rows = (text: string): readonly string[] => {
  const from = lines(text).findIndex((line) => line.startsWith('─'));
  const to = lines(text).findIndex((line, at) => at > from && (line === '' || line.startsWith('…')));
  return lines(text).slice(from + 1, to);
};

const find = <T>(list: readonly T[], is: (each: T) => boolean): T => {
  const found = list.find(is);
  if (found === undefined) throw new Error('the fixture has changed');
  return found;
};

const valveFinding = find(gardenGate.findings, ({ rule }) => rule === 'coil-pulls-in');
const valveCoil = find(gardenGate.accounts, ({ id }) => id === 'valve.coil');

/** The fixture with `count` accounts of a verdict, each with its finding and a cure of its own. */
function crowd(count: number): Report {
  const finding = find(gardenGate.findings, ({ rule }) => rule === 'coil-on-pin');
  const account = find(gardenGate.accounts, ({ id }) => id === 'main.D6');
  const names = Array.from({ length: count }, (_, index) => `latch-${index + 1}`);
  return {
    ...gardenGate,
    counts: { ...gardenGateSound.counts, breach: count },
    accounts: [...gardenGateSound.accounts, ...names.map((id) => ({ ...account, id, title: id }))],
    findings: names.map((id) => ({
      ...finding,
      about: id,
      account: id,
      rule: `rule-of-${id.slice(6)}`,
      remedies: finding.remedies.map((remedy) => ({ ...remedy, title: `${remedy.title} (${id})` })),
    })),
  };
}

/** A board of relays, each of which gets so many volts in the worst case and needs 3.77 V. */
function board(...volts: readonly number[]): Report {
  const channels = volts.map((draw, index) => ({ draw, name: `vents.${index + 1}`, column: 15 + 7 * index }));
  return {
    ...gardenGate,
    verdict: 'strain',
    counts: { ...gardenGateSound.counts, note: 0, strain: volts.length },
    accounts: [
      ...gardenGateSound.accounts,
      ...channels.map(({ draw, name }): ReportAccount => ({
        ...valveCoil,
        id: `${name}.coil`,
        title: `coil of ${name}, pull-in`,
        margin: draw / 3.769 - 1,
        limits: valveCoil.limits.map((limit) => ({ ...limit, draw })),
      })),
    ],
    findings: channels.map(({ draw, name, column }): ReportFinding => ({
      ...valveFinding,
      about: name,
      account: `${name}.coil`,
      says: `The coil of ${name} gets ${draw.toFixed(2)} V and needs 3.77 V.`,
      place: { ...valveFinding.place, column },
      remedies: valveFinding.remedies.map((remedy) => ({
        ...remedy,
        after: { ...remedy.after, accounts: remedy.after.accounts.map((each) => ({ ...each, id: `${name}.coil` })) },
      })),
    })),
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

describe('the head', () => {
  const modeless = (...moments: readonly (readonly string[])[]): Report => ({
    ...gardenGate,
    modes: [],
    accounts: gardenGate.accounts.map((account, at) => ({ ...account, moment: moments[at % moments.length] ?? [] })),
  });

  it('says once how the worst moments were chosen, for a file without modes', () => {
    const text = plain(modeless(['valve', 'pump'], ['pump'], []));
    expect(text).toMatch(/^ +no modes given: every circuit may be on with every other$/m);
    expect(text).not.toContain('with valve and pump on');
    expect(plain(gardenGate)).not.toContain('no modes given');
  });

  it('does not say that all may be on together where they never are', () => {
    const text = plain(modeless(['valve', 'pump'], ['valve', 'bell', 'lamp']));
    expect(text).toMatch(/^ +no modes given: each figure is that of its worst combination$/m);
    expect(text).toMatch(/^ +when +.*with valve, bell and lamp on$/m);
  });
});

describe('the headline', () => {
  it('tells three causes and counts the rest', () => {
    const text = plain(crowd(5));
    expect(text).toContain('5 things must change before power goes on.');
    expect(text.match(/^ {8}\d {2}The coil of latch/gm)).toHaveLength(3);
    expect(text).toContain('… and 2 more below.');
  });

  it('takes for one thing what one change settles, whatever it is about', () => {
    const [coil] = board(3.61).findings;
    const other = { ...valveFinding, about: 'main.fuse-usb', rule: 'fuse-of-main' };
    const findings = [{ ...(coil ?? valveFinding), verdict: 'breach' as const }, other];
    const text = plain({ ...board(3.61), verdict: 'breach', findings });
    expect(text).toContain('BREACH  One thing must change before power goes on.');
    expect(flowing(text)).toMatch(
      /goes on\. 1 The coil of vents\.1 gets 3\.61 V and needs 3\.77 V\. \(and 1 more of it: 2\) →/,
    );
    expect(text.match(/→ Feed valve from brick-5v/g)).toHaveLength(1);
  });

  it('takes for two things what two changes settle, and tells strains after breaches', () => {
    const text = plain({ ...gardenGate, findings: gardenGate.findings.toReversed() });
    expect(flowing(text)).toContain(
      'BREACH One thing must change before power goes on; at the worst case one more is not promised.',
    );
    expect(text).toMatch(/^ {8}1 {2}The coil of latch[^]*^ {8}2 {2}Hot, the coil of valve/m);
  });

  it('keeps sums of a controller apart that no change is known to settle together', () => {
    const bare = { ...valveFinding, remedies: [], related: [] };
    const findings = [
      { ...bare, about: 'main.right-group', family: 'groups' },
      { ...bare, about: 'main.supply-pins', family: 'groups' },
      { ...bare, about: 'main.regulator-5v', family: 'supplies' },
    ];
    expect(plain({ ...board(3.61), findings })).toMatch(/2 things are not\s+promised/);
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
  it('starts with what calls for a change, worst verdict first, then the tightest of the rest', () => {
    expect(rows(plain(gardenGate)).map((row) => row.slice(3, 31).trim())).toEqual([
      expect.stringMatching(/^−32 % {2}pin D6/),
      expect.stringMatching(/^−5 % {2}valve coil/),
      expect.stringMatching(/^\? {2}pump transistor/),
      expect.stringMatching(/^8 % {2}fuse on USB/),
      expect.stringMatching(/^40 % {2}5 V regulator/),
      expect.stringMatching(/^60 % {2}pin A6/),
      expect.stringMatching(/^65 % {2}pin A5/),
    ]);
  });

  it('numbers an account with the number of its finding', () => {
    const text = plain(gardenGate);
    expect(rows(text)[3]).toMatch(/^4 .* fuse on USB/);
    expect(text).toMatch(/^4 {2}thin /m);
  });

  it('shows no more than twelve rows, and says what it hides', () => {
    const text = plain(crowd(15));
    expect(rows(text)).toHaveLength(12);
    expect(text).toContain('… 3 more have their findings below; 7 are sound: --all');
    expect(rows(plain(crowd(15), 80, true))).toHaveLength(22);
  });

  it('shows what a margin is the margin of: the draw where it leaves least of the limit', () => {
    const [, valve, , fuse] = rows(plain(gardenGate));
    expect(valve).toMatch(/ −5 % .* 3\.61 to 4\.71 V .* 3\.77 V /);
    expect(fuse).toMatch(/ 8 % .* 302 to 398 mA .* 434 mA /);
  });

  it('has one row for the channels of a load that are alike, and for their pins', () => {
    expect(rows(plain(board(3.61, 3.61, 3.61, 3.61)))[0]).toMatch(/^1 +−5 % {2}coil of vents\.1 to 4, pull-in /);
    const pins = [9, 10, 11].map((pin, index) => ({
      ...find(gardenGate.accounts, ({ id }) => id === 'main.A1'),
      id: `main.D${pin}`,
      title: `pin D${pin}, sink`,
      entries: [{ circuit: `vents.${index + 1}`, min: 0, typ: 0, max: 0.003 }],
    }));
    const text = plain({ ...gardenGateSound, accounts: pins.toReversed() });
    expect(rows(text)).toEqual([expect.stringContaining('pins D9 to D11, sink ')]);
  });

  it('counts accounts, not rows, among those that it hides', () => {
    const many = board(...new Array<number>(8).fill(3.9)).accounts.map((each) => ({
      ...each,
      verdict: 'sound' as const,
    }));
    const text = plain({
      ...gardenGateSound,
      findings: [],
      accounts: many.map((each, at) => ({ ...each, margin: at < 7 ? 0.1 : 0.5 })),
    });
    expect(text).toContain('… 9 more are sound: --all');
  });
});

describe('the channels of a load', () => {
  it('are told once where they fare alike to three digits, with every place and the count', () => {
    const text = plain(board(3.612, 3.6118, 3.6122, 3.612));
    expect(text).toMatch(/^1 {2}strain ×4 {2}vents\.1\.coil {2}garden-gate\.yaml:19:15, 22, 29, 36 +coil-pulls-in$/m);
    expect(flowing(text)).toContain(
      'The coil of vents.1 gets 3.61 V and needs 3.77 V. The same is true of vents.2 to 4. ',
    );
    expect(text).not.toMatch(/^2 {2}strain/m);
    expect(text).toContain('STRAIN  4 strains');
    expect(text).toMatch(/one thing is not\s+promised\.\n +1 {2}The coil of vents\.1 gets/);
  });

  it('are told apart where a digit differs, with what is the same by reference', () => {
    const text = plain(board(3.61, 3.6, 3.61));
    expect(text).toMatch(/^1 {2}strain ×2 .*:19:15, 29 /m);
    expect(flowing(text)).toContain('The same is true of vents.3. ');
    expect(text).toMatch(/^2 {2}strain {2}vents\.2\.coil {2}garden-gate\.yaml:19:22 /m);
    expect(flowing(text)).toContain(
      'cure as in 1: now 3.60 V where 3.77 V is needed, then 4.60 V where 3.77 V is needed, 22 % in hand.',
    );
  });

  it('are alike in moments that are alike but for the channel', () => {
    const report = board(3.61, 3.61, 3.61);
    const moments = [
      ['vents.1', 'vents.2', 'bell'],
      ['vents.1', 'vents.2', 'bell'],
      ['vents.1', 'vents.3', 'bell'],
    ];
    const isCoil = ({ id }: ReportAccount) => id.endsWith('.coil');
    const apart = report.accounts.filter(isCoil).map((each, at) => ({ ...each, moment: moments[at] ?? [] }));
    expect(plain({ ...report, accounts: apart })).toMatch(/^1 {2}strain ×3 /m);
    const alone = apart.map((each, at) => (at === 2 ? { ...each, moment: ['vents.1', 'vents.3'] } : each));
    expect(plain({ ...report, accounts: alone })).toMatch(/^1 {2}strain ×2 /m);
  });
});

describe('what was told before', () => {
  const [first] = gardenGate.findings.filter(({ rule }) => rule === 'coil-on-pin');
  const again = {
    ...gardenGate,
    findings: [...gardenGate.findings, { ...first, rule: 'pin-current', says: 'Too much.' }],
  } as Report;

  it('is not told again of the same account: neither its sum nor what the same cure does to it', () => {
    const text = plain(again);
    expect(text).toMatch(/^2 {2}breach {2}main\.D6 .* pin-current\n {3}Too much\.\n {3}sum {5}as in 1\n/m);
    expect(text).toMatch(/^ {3}cure {4}as in 1\n {3}or {6}as in 1$/m);
    expect(text.match(/Take the coil off D6/g)).toHaveLength(1);
    expect(text.match(/now 52\.7 mA of 40 mA/g)).toHaveLength(1);
  });

  it('is a source, unless it is shorter than the reference', () => {
    const text = plain(crowd(2));
    expect(text.match(/ATmega328P data sheet 8271H, Table 28-1/g)).toHaveLength(1);
    expect(text).toContain('limit   40 mA, damage limit (source as in 1)');
    expect(text.match(/relay data sheet, Coil data/g)).toHaveLength(1);
    expect(plain(gardenGate)).toContain('(this file)');
  });

  it('is a remedy in full, not one that was only named as another choice', () => {
    const [, choice] = first?.remedies ?? [];
    const second = { ...valveFinding, remedies: choice ? [choice] : [] };
    const text = plain({ ...gardenGate, findings: [...(first ? [first] : []), second] });
    expect(text).toMatch(/^ {3}cure {4}Move latch to a spare channel of the array\n +1\. Connect the coil/m);
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

describe('likelier bounds', () => {
  const accounts = gardenGate.accounts.map((a) =>
    a.draw === null ? a : { ...a, statistics: { low: a.draw.typ, middle: a.draw.typ, high: a.draw.max } },
  );

  it.each([
    [{ method: 'rss' }, 'root of squares', 'the root of the sum of the squares'],
    [
      { method: 'monte-carlo', builds: 500, seed: 7, percentiles: [0.135, 50, 99.865] },
      'sampled',
      'between 0.135 % and 99.865 % of 500 builds (seed 7)',
    ],
  ] as const)('by %j stand beside the extremes, with what they are', (statistics, title, words) => {
    const text = plain({ ...gardenGate, statistics, accounts });
    expect(lines(text).find((line) => line.startsWith('#'))).toContain(title);
    expect(flowing(text)).toContain(words);
    expect(flowing(text)).toContain('Verdicts are those of the extremes.');
    expect(rows(text)[0]).toContain('27.8 to 52.7 mA  40.0 to 52.7 mA');
  });

  it('stand nowhere when nobody asked', () => {
    expect(plain(gardenGate)).not.toMatch(/sampled|root of squares/);
  });
});
