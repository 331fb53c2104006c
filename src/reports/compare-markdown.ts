/** A comparison as a comment on a change: what it comes to first, the detail folded away, never more than a comment holds. */
import type { AccountReport, ComparedFinding, ComparisonReport, FileComparison } from './compare-report.js';
import {
  CHANGE_WORDS,
  changeSentence,
  cureTeller,
  drawWords,
  foldedAccounts,
  foldedFindings,
  isTold,
  limitWords,
  marginWords,
  verdictWay,
  wayWords,
  weighs,
  wiringName,
  wiringWords,
} from './compare-words.js';
import { type Part, sheet } from './compare-sheet.js';
import { code, html, inline } from './markdown-text.js';
import { placeWords } from './places.js';
import type { FailAt } from './severity.js';
import { headline } from './words.js';

/** Characters of one name or sentence: far more than any of ours has, and few enough for a page to hold some. */
const LONGEST = 400;

const short = (all: string): string => (all.length > LONGEST ? `${all.slice(0, LONGEST - 1)}…` : all);

const text = (all: string): string => inline(short(all));

const named = (all: string): string => code(short(all));

const SIGNS: { readonly [change in ComparisonReport['change']]: string } = {
  worse: '❌',
  mixed: '⚠️',
  better: '✅',
  changed: '✅',
  same: '✅',
  unread: '❌',
};

/** @param failAt what the exit status goes by @param most characters at the most */
export function comparisonMarkdown(report: ComparisonReport, failAt: FailAt, most?: number): string {
  const { files, change, before, after, fails } = report;
  const told = files.filter((f) => f.change !== 'same');
  const same = files.length - told.length + report.unchanged;
  const counted = `${told.length} project ${told.length === 1 ? 'file' : 'files'} changed${same > 0 ? `, ${same} unchanged` : ''}`;
  const status =
    change === 'unread'
      ? 'Something could not be read (exit status 2).'
      : fails
        ? `The check fails: the change brings a ${failAt} or makes one worse.`
        : `The check passes${failAt === 'never' ? ', as it always does' : `: the change brings no ${failAt} and makes none worse`}.`;
  const head = [
    `## ${change === 'changed' && !fails ? SIGNS.changed : SIGNS[change]} ${headWord(CHANGE_WORDS[change])}`,
    '',
    `**${text(changeSentence(files))}**`,
    '',
    `${text(status)} Compared: ${named(before)} → ${named(after)}; ${counted}.`,
  ].join('\n');
  return sheet(head, [filesTable(told), ...told.flatMap(fileParts)], most);
}

const headWord = (word: string): string => `Currents: ${word.toLowerCase()}`;

function filesTable(files: readonly FileComparison[]): Part {
  const lines = files.map((f) => {
    const count = (change: ComparedFinding['change']): string =>
      `${f.findings.filter((each) => weighs(each) && each.change === change).length || ''}`;
    const state = f.state === 'compared' ? '' : ` (${f.state})`;
    const cells = [
      text(f.file) + state,
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
  const of = (...ways: readonly ComparedFinding['change'][]) =>
    foldedFindings(findings.filter(({ change }) => ways.includes(change)));
  const [bad, good, same] = [of('new', 'worse'), of('gone', 'better'), of('same')];
  const notes = f.findings.filter((each) => !weighs(each) && each.change !== 'same');
  const accounts = f.accounts.filter(isTold);
  const rest = f.accounts.length - accounts.length;
  const title = [
    `### ${text(f.project === '' ? f.file : f.project)}`,
    ...(f.project === '' ? [] : ['', named(f.file) + (f.was === undefined ? '' : ` (was ${named(f.was)})`)]),
    ...(f.verdict.before === null && f.verdict.after === null
      ? []
      : ['', `Verdict on the file: **${verdictWay(f.verdict)}**`]),
  ].join('\n');
  const open = (heading: string): string => `**${heading}**\n`;
  return [
    { rank: 1, open: title, lines: [''], close: '', what: 'files in detail' },
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
    { rank: 1, open: open('Worse'), lines: findingLines(bad), close: '', what: 'findings' },
    { rank: 3, open: open('Better'), lines: good.map(findingLine), close: '', what: 'findings' },
    folded(
      2,
      `What is different in the file (${f.wiring.length})`,
      wiringHead,
      f.wiring.map((w) => `| ${w.change} | ${text(wiringName(w))} | ${text(wiringWords(w))} |`),
      'differences',
    ),
    folded(
      4,
      `Accounts before and after (${accounts.length}${rest > 0 ? `; ${rest} more are as before` : ''})`,
      accountsHead,
      foldedAccounts(accounts).map(accountLine),
      'accounts',
    ),
    folded(5, `Findings that are as before (${same.length})`, '', same.map(findingLine), 'findings'),
    folded(5, `Notes that came or went (${notes.length})`, '', notes.map(findingLine), 'notes'),
  ];
}

const wiringHead = '| | what | before and now |\n| --- | --- | --- |';
const accountsHead =
  '| in hand | before | account | carries | before | may carry | verdict |\n| --: | --: | --- | --: | --: | --: | --- |';

const folded = (rank: number, summary: string, head: string, lines: readonly string[], what: string): Part => ({
  rank,
  open: `<details><summary>${html(summary)}</summary>\n${head === '' ? '' : `\n${head}`}`,
  lines,
  close: '\n</details>',
  what,
});

/** Each on a line, with its cure where the change makes it worse. */
function findingLines(findings: readonly ComparedFinding[]): readonly string[] {
  const cureOf = cureTeller();
  return findings.map((f) => {
    const cure = cureOf(f);
    return cure === undefined ? findingLine(f) : `${findingLine(f)}\n  - ${text(cure)}`;
  });
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
