/** What stands under a finding's sentence: the sum, the moment, the limit and where its figures are from. */
import { accountOf } from './account-of.js';
import { figure, given, governing } from './figures.js';
import { momentWords } from './moment.js';
import type { Report, ReportAccount, ReportFinding, ReportLimit } from './report.js';
import { shortCite, shortSource } from './short-cite.js';
import { sumWords } from './sum-words.js';
import type { Before } from './told-before.js';
import { type Item, item, mark } from './tree.js';
import { firstFew, gradeWords } from './words.js';

/** A line each, with its word in the margin; what is not known has none. */
export function factItems(finding: ReportFinding, report: Report, before: Before): readonly Item[] {
  const account = accountOf(report, finding);
  const there = account && before.account(account);
  if (there !== undefined) return [...labelled('ask', finding.asks), ...labelled('sum', `as in ${there}`)];
  const sum = sumWords(finding, account);
  return [
    ...labelled('ask', finding.asks),
    ...labelled('sum', sum),
    ...labelled('when', momentWords(finding, account, report)),
    ...(account ? accountItems(account, sum !== undefined, before) : []),
    ...labelled(
      'source',
      workingSources(finding, account, report)
        .filter((source) => before.source(source) === undefined)
        .join('; '),
    ),
  ];
}

export const label = (word: string) => mark('quiet', word);

const labelled = (word: string, text: string | undefined): readonly Item[] =>
  text === undefined || text === '' ? [] : [item(label(word), text)];

/** What it is held against; and unless the sum has said so, who makes it up and what is typical. */
function accountItems(account: ReportAccount, isSummed: boolean, before: Before): readonly Item[] {
  const { unit, draw, direction } = account;
  const limit = governing(account);
  const booked = [...account.entries].sort((a, b) => Math.abs(b.max) - Math.abs(a.max));
  const parts = booked.map(({ circuit, max }) => `${circuit} ${figure(max, unit)}`);
  return [
    ...(isSummed ? [] : labelled('from', parts.length > 1 ? firstFew(parts, 5) : undefined)),
    ...(isSummed ? [] : labelled('typical', draw ? figure(draw.typ, unit) : undefined)),
    ...(limit ? labelled(direction === 'at-least' ? 'needs' : 'limit', limitWords(limit, account, before)) : []),
  ];
}

/** '40 mA, damage limit, at 25 °C (ATmega328P data sheet, Table 28-1)'. */
function limitWords(limit: ReportLimit, { unit, direction }: ReportAccount, before: Before): string {
  const { value, grade, condition, range, cite } = limit;
  const kind = range
    ? `assumed between ${given(range.min, unit)} and ${given(range.max, unit)}`
    : direction === 'at-least'
      ? ''
      : gradeWords[grade];
  const words = [given(value, unit), kind, condition].filter(Boolean).join(', ');
  if (!cite) return words;
  const source = shortCite(cite);
  const there = before.source(source);
  return `${words} (${there === undefined ? source : `source as in ${there}`})`;
}

/** All sources that the facts name, as they name them. */
export function citesOf(finding: ReportFinding, report: Report): readonly string[] {
  const account = accountOf(report, finding);
  const cite = account && governing(account)?.cite;
  return [...(cite ? [shortCite(cite)] : []), ...workingSources(finding, account, report)];
}

/** Where the numbers of the sum come from, but for what the account's limits have said. */
function workingSources({ working }: ReportFinding, account: ReportAccount | undefined, report: Report): string[] {
  const cites = account?.limits.flatMap(({ cite }) => cite ?? []) ?? [];
  const said = new Set(cites.map(({ document, where }) => (where ? `${document}, ${where}` : document)));
  const documents = new Set(
    report.accounts.flatMap(({ limits }) => limits.flatMap(({ cite }) => cite?.document ?? [])),
  );
  const named = new Set(working.flatMap((step) => step.sources ?? []));
  return [...named].filter((source) => !said.has(source)).map((source) => shortSource(source, documents));
}
