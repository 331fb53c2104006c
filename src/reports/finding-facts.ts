/** What stands under a finding's sentence: the sum, the moment, the limit and where its figures are from. */
import type { Before } from './before.js';
import { figure, given, governing, worstOf } from './figures.js';
import type { Lookup } from './lookup.js';
import { momentWords } from './moment.js';
import type { ReportAccount, ReportFinding, ReportLimit } from './report.js';
import { shortCite, shortSource } from './short-cite.js';
import { comesTo, stepOf, sumWords } from './sum-words.js';
import { firstFew, gradeWords } from './words.js';

/** So many sources of a sum are named; the working has all of them. */
const mostSources = 2;

/** A source no longer than this is said sooner than where it was said. */
const shortSourceLength = 20;

/** One line, with its word in the margin. */
export interface Fact {
  readonly word: 'ask' | 'sum' | 'from' | 'figure' | 'when' | 'needs' | 'limit' | 'source';
  readonly text: string;
}

/** What is known of a finding; of an account that was told before, only where. */
export function factsOf(finding: ReportFinding, lookup: Lookup, before: Before): readonly Fact[] {
  const account = lookup.account(finding);
  const there = before.account(finding);
  if (there !== undefined) return [...fact('ask', finding.asks), ...fact('sum', `as in ${there}`)];
  const step = stepOf(finding, account);
  const sources = workingSources(finding, account, lookup).filter((source) => before.source(source) === undefined);
  const more = sources.length > mostSources ? [`${sources.length - mostSources} more`] : [];
  return [
    ...fact('ask', finding.asks),
    ...(step ? fact('sum', sumWords(step, account)) : []),
    ...(account && finding.mode !== 'runaway' && !(step && comesTo(step, account)) ? contributors(account) : []),
    ...fact('when', momentWords(finding, account, lookup)),
    ...(account ? limitFact(account, before) : []),
    ...fact('source', [...sources.slice(0, mostSources), ...more].join('; ')),
  ];
}

const fact = (word: Fact['word'], text: string | undefined): readonly Fact[] =>
  text === undefined || text === '' ? [] : [{ word, text }];

/** Without a sum that comes to it: who makes up the figure, and what is typical of it. */
function contributors(account: ReportAccount): readonly Fact[] {
  const { unit, draw, entries } = account;
  const worst = worstOf(account);
  const booked = [...entries].sort((a, b) => Math.abs(b.max) - Math.abs(a.max));
  const parts = booked.map(({ circuit, max }) => `${circuit} ${figure(max, unit)}`);
  return [
    ...fact('from', parts.length > 1 ? firstFew(parts, 5) : undefined),
    ...(draw && worst !== undefined
      ? fact('figure', `${figure(worst, unit)}, typically ${figure(draw.typ, unit)}`)
      : []),
  ];
}

/** What it is held against, of what kind that is, how it comes about and where it is from. */
function limitFact(account: ReportAccount, before: Before): readonly Fact[] {
  const limit = governing(account);
  if (!limit) return [];
  const isFunction = account.direction === 'at-least';
  const words = [
    given(limit.value, account.unit),
    limit.range || isFunction || isPractice(limit) ? '' : gradeWords[limit.grade],
    originWords(limit, account.unit),
    limit.condition,
  ];
  return fact(isFunction ? 'needs' : 'limit', words.filter(Boolean).join(', ') + sourceWords(limit, before));
}

/** What is practice by its grade and by its source need not say so twice. */
const isPractice = ({ grade, cite }: ReportLimit): boolean => grade === 'practice' && cite?.basis === 'practice';

/** What the figure is reckoned from, where its source does not state it as it is: 'from 0.50 A at 23 °C'. */
function originWords({ value, stated, range }: ReportLimit, unit: ReportAccount['unit']): string {
  if (range) {
    const [min, max] = [given(range.min, unit), given(range.max, unit)];
    return min === max ? 'assumed' : `assumed between ${min} and ${max}`;
  }
  const own = given(value, unit);
  if (!stated.includes(own)) return `from ${stated}`;
  return stated.startsWith(`${own}, `) ? stated.slice(own.length + 2) : '';
}

function sourceWords({ cite }: ReportLimit, before: Before): string {
  if (!cite) return '';
  const source = shortCite(cite);
  const there = source.length > shortSourceLength ? before.source(source) : undefined;
  return there === undefined ? ` (${source})` : ` (source as in ${there})`;
}

/** All sources that the facts name, as they name them: so that they need not be named again. */
export function citesOf(finding: ReportFinding, lookup: Lookup): readonly string[] {
  const account = lookup.account(finding);
  const cite = account && governing(account)?.cite;
  return [...(cite ? [shortCite(cite)] : []), ...workingSources(finding, account, lookup)];
}

/** Where the numbers of the sum come from, but for what the account's limits have said. */
function workingSources(finding: ReportFinding, account: ReportAccount | undefined, { documents }: Lookup): string[] {
  const cites = account?.limits.flatMap(({ cite }) => cite ?? []) ?? [];
  const said = new Set(cites.map(({ document, where }) => (where ? `${document}, ${where}` : document)));
  const named = new Set(stepOf(finding, account)?.sources);
  return [...named]
    .filter((source) => !said.has(source) && !source.endsWith(': the project file'))
    .map((source) => shortSource(source, documents));
}
