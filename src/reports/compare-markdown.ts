/** A comparison as a comment on a change: what it comes to first, the detail folded away, never more than a comment holds. */
import { foldedAccounts, foldedFindings } from './compare-folds.js';
import type { AccountReport, ComparedFinding, ComparisonReport, FileComparison } from './compare-report.js';
import { type Part, sheet } from './compare-sheet.js';
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
import { code, html, inline } from './markdown-text.js';
import { placeWords } from './places.js';
import type { FailAt } from './severity.js';
import { firstFew, headline } from './words.js';

/** Characters of one name or sentence: far more than any of ours has, and few enough for a page to hold some. */
const LONGEST = 400;

const short = (all: string): string => (all.length > LONGEST ? `${all.slice(0, LONGEST - 1)}…` : all);

const text = (all: string): string => inline(short(all));

const named = (all: string): string => code(short(all));

/** @param failAt what the exit status goes by @param most characters at the most */
export function comparisonMarkdown(report: ComparisonReport, failAt: FailAt, most?: number): string {
  const { files, change, before, after } = report;
  const told = files.filter((f) => f.change !== 'same');
  const same = files.length - told.length + report.unchanged;
  const counted = `${told.length} project ${told.length === 1 ? 'file' : 'files'} changed${same > 0 ? `, ${same} unchanged` : ''}`;
  const head = [
    `## ${signOf(report)} Currents: ${CHANGE_WORDS[change].toLowerCase()}`,
    '',
    `**${text(changeSentence(files))}**`,
    '',
    `${text(statusWords(report, failAt))} Compared: ${named(before)} → ${named(after)}; ${counted}.`,
    ...files.filter(isMoved).map(({ file, was = '' }) => `\n${named(was)} is now ${named(file)}.`),
  ].join('\n');
  return sheet(head, [filesTable(told), ...told.flatMap(fileParts)], most);
}

/** A check that passes is crossed out by nobody; what is new and set aside at once, or worse and no failure, wants a look. */
function signOf({ change, fails, files }: ComparisonReport): string {
  if (fails || change === 'unread') return '❌';
  const isAside = files.some(({ findings }) => findings.some((f) => f.change === 'set-aside' && weighs(f)));
  return change === 'worse' || change === 'mixed' || isAside ? '⚠️' : '✅';
}

function statusWords({ change, fails }: ComparisonReport, failAt: FailAt): string {
  if (change === 'unread') return 'Something could not be read (exit status 2).';
  if (fails) return `The check fails: the change brings a ${failAt} or makes one worse.`;
  return failAt === 'never'
    ? 'The check passes, as it always does.'
    : `The check passes: the change brings no ${failAt} and makes none worse.`;
}

function filesTable(files: readonly FileComparison[]): Part {
  const lines = files.map((f) => {
    const count = (change: ComparedFinding['change']): string =>
      `${f.findings.filter((each) => weighs(each) && each.change === change).length || ''}`;
    const state = STATE_WORDS[f.state];
    const cells = [
      text(f.file) + (state === '' ? '' : ` (${state})`),
      verdictWay(f.verdict),
      count('new'),
      count('worse'),
      count('better'),
      count('gone'),
    ];
    return `| ${cells.join(' | ')} |`;
  });
  const open = '| file | verdict | new | worse | less bad | gone |\n| --- | --- | --: | --: | --: | --: |';
  return {
    rank: 0,
    open: files.length > 1 ? open : '',
    lines: files.length > 1 ? lines : [],
    close: '',
    what: 'files',
  };
}

function fileParts(f: FileComparison): readonly Part[] {
  const findings = f.findings.filter(weighs);
  const of = (...ways: readonly ComparedFinding['change'][]) => findings.filter(({ change }) => ways.includes(change));
  const same = of('same');
  const notes = f.findings.filter((each) => !weighs(each) && each.change !== 'same');
  return [
    { rank: 1, open: titleOf(f), lines: [''], close: '', what: 'files in detail' },
    {
      rank: 1,
      open: open('Could not be read'),
      lines: f.unread.flatMap(({ side, errors }) =>
        errors.map(
          (e) =>
            `- ${side}: ${named(placeWords(e))} ${text(e.says + (e.expected === undefined ? '' : `; ${e.expected}`))}`,
        ),
      ),
      close: '',
      what: 'errors',
    },
    { rank: 1, open: open('Worse'), lines: findingLines(of('new', 'worse')), close: '', what: 'findings' },
    { rank: 1, open: open('Set aside'), lines: findingLines(of('set-aside')), close: '', what: 'findings' },
    { rank: 3, open: open('Better'), lines: findingLines(of('gone', 'better')), close: '', what: 'findings' },
    ...(f.state === 'removed' ? [] : [...wiringPart(f), accountsPart(f)]),
    folded(5, `Findings that are as before (${same.length})`, '', findingLines(same), 'findings'),
    folded(5, `Notes that came or went (${notes.length})`, '', notes.map(findingLine), 'notes'),
  ];
}

function titleOf({ project, file, was, state, verdict }: FileComparison): string {
  const stateWords = STATE_WORDS[state];
  const names = `${named(file)}${was === undefined ? '' : ` (was ${named(was)})`}`;
  return [
    `### ${text(project === '' ? file : project)}`,
    ...(project === '' ? [] : ['', stateWords === '' ? names : `${names}: ${stateWords}`]),
    ...(verdict.before === null && verdict.after === null
      ? []
      : ['', `Verdict on the file: **${verdictWay(verdict)}**`]),
  ].join('\n');
}

const open = (heading: string): string => `**${heading}**\n`;

/** Differences by name in what is seen, and each as it was and is in what is folded. */
function wiringPart({ wiring, state }: FileComparison): readonly Part[] {
  const names = wiring.filter(({ section }) => section !== 'pins').map((w) => `${wiringName(w)} ${w.change}`);
  const summary =
    state === 'added'
      ? `What is in the file (${wiring.length})`
      : `What is different in the file${names.length > 0 ? `: ${firstFew(names, MOST_NAMES)}` : ''}`;
  const lines = wiring.map((w) => `| ${w.change} | ${text(wiringName(w))} | ${text(wiringWords(w))} |`);
  return [folded(2, short(summary), wiringHead, lines, 'differences')];
}

/** Differences whose names are seen. */
const MOST_NAMES = 6;

function accountsPart({ accounts, state }: FileComparison): Part {
  const told = accounts.filter(isTold);
  const rest = accounts.length - told.length;
  const summary =
    state === 'added'
      ? `Accounts (${told.length})`
      : `Accounts before and after (${told.length}${rest > 0 ? `; ${rest} more are as before` : ''})`;
  return folded(4, summary, accountsHead, foldedAccounts(told).map(accountLine), 'accounts');
}

const wiringHead = '| change | what | before and now |\n| --- | --- | --- |';
const accountsHead =
  '| in hand | before | account | carries | before | may carry | verdict |\n| --: | --: | --- | --: | --: | --: | --- |';

const folded = (rank: number, summary: string, head: string, lines: readonly string[], what: string): Part => ({
  rank,
  open: `<details><summary>${html(summary)}</summary>\n${head === '' ? '' : `\n${head}`}`,
  lines,
  close: '\n</details>',
  what,
});

/** Each on a line, channels that are alike together, with the cure or the reason below it. */
function findingLines(findings: readonly ComparedFinding[]): readonly string[] {
  const cureOf = cureTeller();
  return foldedFindings(findings).map((f) =>
    [
      findingLine(f),
      ...[cureOf(f), reasonWords(f)].flatMap((words) => (words === undefined ? [] : `  - ${text(words)}`)),
    ].join('\n'),
  );
}

const findingLine = (f: ComparedFinding): string =>
  `- **${text(wayWords(f))}**: ${f.change === 'gone' ? 'no longer: ' : ''}${text(f.says)} (${f.place ? `${named(placeWords(f.place))}, ` : ''}${named(f.rule)})`;

function accountLine(a: AccountReport): string {
  const { before, after, unit } = a;
  const cells = [
    after === null ? 'gone' : marginWords(after),
    before === null ? 'new' : marginWords(before),
    text(a.title),
    drawWords(after, unit),
    drawWords(before, unit),
    limitWords(a),
    verdictWay({ before: before && headline(before.verdict), after: after && headline(after.verdict) }),
  ];
  return `| ${cells.join(' | ')} |`;
}
