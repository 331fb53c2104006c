/** A comparison for a person at a terminal: what the change comes to, then the accounts, the findings and the wiring. */
import { foldedAccounts, foldedFindings } from './compare-folds.js';
import type {
  AccountReport,
  ComparedFinding,
  ComparisonReport,
  FileComparison,
  WiringReport,
} from './compare-report.js';
import { wiringName, wiringWords } from './compare-wiring.js';
import {
  CHANGE_WORDS,
  changeSentence,
  cureTeller,
  drawWords,
  isMoved,
  isTold,
  limitWords,
  marginWords,
  reasonWords,
  STATE_WORDS,
  verdictWay,
  wayWords,
  weighs,
} from './compare-words.js';
import { placeWords } from './places.js';
import type { Verdict } from './report.js';
import { callsForChange } from './severity.js';
import {
  type Block,
  heading,
  type Item,
  item,
  list,
  mark,
  paragraph,
  type Role,
  table,
  type Text,
  type Tree,
} from './tree.js';

/** Rows, findings and entries that are shown without being asked for all. */
const most = { accounts: 10, findings: 6, wiring: 10 };

const ROLES: { readonly [change in ComparisonReport['change']]: Role } = {
  worse: 'breach',
  mixed: 'strain',
  better: 'sound',
  changed: 'sound',
  same: 'sound',
  unread: 'breach',
};

export function comparisonTree(report: ComparisonReport, all: boolean): Tree {
  const { files, unchanged, before, after, change } = report;
  const [only] = files;
  const single = files.length === 1 && only !== undefined;
  const title = single && only.project !== '' ? only.project : 'What the change does';
  const told = files.filter((f) => f.change !== 'same');
  // Two files that were named are what is compared.
  const whose = single && only.file !== after && before !== only.file ? `${only.file}, ` : '';
  const sections: Tree = [
    [heading(mark('strong', title), mark('quiet', `${whose}${before} → ${after}`))],
    [
      list([
        item(
          mark(ROLES[change], CHANGE_WORDS[change]),
          paragraph(mark('strong', changeSentence(files))),
          ...worstOf(report),
        ),
      ]),
    ],
    ...(told.length > 1 ? [filesTable(told)] : []),
    ...told.flatMap((f) => fileSections(f, !single, all)),
    whose === '' && single ? [] : [...movedWords(files), ...sameWords(files.length - told.length + unchanged)],
  ];
  return sections.filter((blocks) => blocks.length > 0);
}

/** The findings behind the verdict: what is new or worse. */
function worstOf({ files }: ComparisonReport): readonly Block[] {
  const bad = files.flatMap((f) =>
    foldedFindings(f.findings.filter((each) => weighs(each) && (each.change === 'new' || each.change === 'worse'))),
  );
  const lines = bad.slice(0, 3).map((f) => item('→', f.says));
  return [
    ...(lines.length > 0 ? [list(lines)] : []),
    ...(bad.length > 3 ? [paragraph(mark('quiet', `… and ${bad.length - 3} more below.`))] : []),
  ];
}

const filesTable = (files: readonly FileComparison[]): readonly Block[] => [
  table(
    [
      { title: 'change', align: 'left' },
      { title: 'file', align: 'left' },
      { title: 'verdict', align: 'left' },
    ],
    files.map((f): readonly Text[] => [
      mark(ROLES[f.change], CHANGE_WORDS[f.change].toLowerCase()),
      f.file,
      [verdictWay(f.verdict), STATE_WORDS[f.state]].filter((words) => words !== '').join(', '),
    ]),
  ),
];

function fileSections(file: FileComparison, named: boolean, all: boolean): Tree {
  const { state, project, verdict } = file;
  const words = [verdictWay(verdict), STATE_WORDS[state]].filter((each) => each !== '').join(', ');
  const head = [
    ...(named ? [heading(mark('strong', file.file), mark('quiet', project))] : []),
    ...(words === '' ? [] : [paragraph([mark('quiet', 'Verdict on the file: '), mark(ROLES[file.change], words)])]),
  ];
  const findings = file.findings.filter((f) => all || f.change !== 'same');
  return [
    [...head, ...unreadBlocks(file)],
    // Of a file that is gone only what was wrong with it is news.
    ...(state === 'removed' && !all ? [] : [wiringSection(file.wiring, all), accountsSection(file.accounts, all)]),
    findingsSection(findings.filter(weighs), all),
    notesWords(
      findings.filter((f) => !weighs(f)),
      all,
    ),
  ];
}

const unreadBlocks = ({ unread }: FileComparison): readonly Block[] =>
  unread.flatMap(({ side, errors }) => [
    list(
      errors.map((e) =>
        item(mark('breach', side), `${placeWords(e)}: ${e.says}${e.expected === undefined ? '' : `; ${e.expected}`}`),
      ),
    ),
  ]);

const SIGNS: { readonly [change in WiringReport['change']]: Text } = {
  added: mark('strong', '+'),
  removed: mark('strong', '−'),
  renamed: mark('strong', '='),
  moved: mark('strong', '→'),
  changed: mark('strong', '~'),
};

function wiringSection(wiring: readonly WiringReport[], all: boolean): readonly Block[] {
  if (wiring.length === 0) return [];
  const shown = all ? wiring : wiring.slice(0, most.wiring);
  return [
    paragraph(mark('strong', 'In the file')),
    list(shown.map((w) => item(SIGNS[w.change], paragraph([mark('strong', wiringName(w)), `: ${wiringWords(w)}`])))),
    ...rest(wiring.length - shown.length),
  ];
}

function accountsSection(accounts: readonly AccountReport[], all: boolean): readonly Block[] {
  const told = all ? accounts : foldedAccounts(accounts.filter(isTold));
  const shown = all ? told : told.slice(0, most.accounts);
  const same = all ? 0 : accounts.filter((a) => !isTold(a)).length;
  if (shown.length === 0) return [];
  return [
    table(
      [
        { title: 'in hand', align: 'right' },
        { title: 'before', align: 'right' },
        { title: 'account', align: 'left' },
        { title: 'carries', align: 'right' },
        { title: 'before', align: 'right' },
        { title: 'may carry', align: 'right' },
        { title: 'named', align: 'left', spare: true },
      ],
      shown.map((a) => [
        a.after === null ? mark('quiet', 'gone') : mark(roleOf(a.after.verdict), marginWords(a.after)),
        a.before === null ? mark('quiet', 'new') : mark(roleOf(a.before.verdict), marginWords(a.before)),
        a.title,
        drawWords(a.after, a.unit),
        mark('quiet', drawWords(a.before, a.unit)),
        limitWords(a),
        mark('quiet', a.account),
      ]),
    ),
    ...rest(told.length - shown.length),
    ...(same > 0 ? [paragraph(mark('quiet', `${same} ${same === 1 ? 'account is' : 'accounts are'} as before.`))] : []),
  ];
}

const roleOf = (verdict: Verdict): Role => (callsForChange(verdict) ? verdict : 'quiet');

const GROUPS = [
  ['Worse', ['new', 'worse']],
  ['Set aside', ['set-aside']],
  ['Better', ['gone', 'better']],
  ['As before', ['same']],
] as const;

function findingsSection(findings: readonly ComparedFinding[], all: boolean): readonly Block[] {
  return GROUPS.flatMap(([title, ways]): readonly Block[] => {
    const found = findings.filter((f) => (ways as readonly string[]).includes(f.change));
    const group = all ? found : foldedFindings(found);
    if (group.length === 0) return [];
    const shown = all ? group : group.slice(0, most.findings);
    const cureOf = cureTeller();
    const items = shown.map((f) => findingItem(f, cureOf(f)));
    return [paragraph(mark('strong', title)), list(items), ...rest(group.length - shown.length)];
  });
}

function findingItem(f: ComparedFinding, cure?: string): Item {
  const verdict = f.after ?? f.before ?? 'note';
  const isGone = f.change === 'gone';
  const where = f.place ? `, ${placeWords(f.place)}` : '';
  return item(
    mark(isGone ? 'sound' : verdict, isGone ? '✓' : '✗'),
    paragraph([
      isGone ? mark('quiet', 'It no longer holds that: ') : '',
      f.says,
      mark('quiet', ` (${wayWords(f)}${where}, ${f.rule})`),
    ]),
    ...[cure, reasonWords(f)].flatMap((words) => (words === undefined ? [] : [paragraph(words)])),
  );
}

/** Notes call for nothing: how many came and went is enough. */
function notesWords(notes: readonly ComparedFinding[], all: boolean): readonly Block[] {
  if (notes.length === 0) return [];
  if (all) return [paragraph(mark('strong', 'Notes')), list(notes.map((f) => findingItem(f)))];
  const fresh = notes.filter((f) => f.change === 'new').length;
  const gone = notes.filter((f) => f.change === 'gone').length;
  const said = [...(fresh > 0 ? [`${fresh} new`] : []), ...(gone > 0 ? [`${gone} gone`] : [])];
  return said.length === 0 ? [] : [paragraph(mark('quiet', `Notes: ${said.join(', ')}: --all`))];
}

const rest = (count: number): readonly Block[] =>
  count > 0 ? [paragraph(mark('quiet', `… and ${count} more: --all`))] : [];

const movedWords = (files: readonly FileComparison[]): readonly Block[] =>
  files.filter(isMoved).map(({ file, was = '' }) => paragraph(mark('quiet', `${was} is now ${file}.`)));

const sameWords = (count: number): readonly Block[] =>
  count === 0 ? [] : [paragraph(mark('quiet', `${count} project ${count === 1 ? 'file is' : 'files are'} unchanged.`))];
