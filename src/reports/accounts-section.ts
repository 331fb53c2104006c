/** The accounts, worst first: what each carries, what it may carry. */
import { type AccountRow, byUrgency, rowsOf, titleOf } from './account-rows.js';
import { carried, figure, given, governing, percent, span } from './figures.js';
import type { Numbered } from './numbered.js';
import type { Report, ReportAccount, ReportLimit } from './report.js';
import { callsForChange } from './severity.js';
import { type Block, type Column, type Text, mark, paragraph, table } from './tree.js';
import { gradeWord } from './words.js';

/** Rows without being asked for all. */
const most = 12;
/** The tightest sound accounts stand in any table: they say how near the rest is. */
const company = 3;

/** The table of accounts; `all` leaves none out. No block at all when there are no accounts. */
export function accountsSection(report: Report, findings: readonly Numbered[], all: boolean): readonly Block[] {
  const rows = rowsOf(byUrgency(report.accounts), findings);
  if (rows.length === 0) return [];
  const wanting = rows.filter(({ account }) => callsForChange(account.verdict)).length;
  const shown = all ? rows : rows.slice(0, Math.min(most, Math.max(wanting + company, most / 2)));
  const method = report.statistics;
  const modes = new Set(shown.map(({ account }) => account.mode));
  const columns: readonly Column[] = [
    { title: '#', align: 'right' },
    { title: 'in hand', align: 'right' },
    { title: 'account', align: 'left' },
    { title: 'carries', align: 'right' },
    ...(method ? [{ title: method.method === 'rss' ? 'root of squares' : 'sampled', align: 'right' } as const] : []),
    { title: 'typical', align: 'right', spare: true },
    { title: 'may carry', align: 'right' },
    { title: 'limit', align: 'left' },
    { title: 'named', align: 'left', spare: true },
    ...(modes.size > 1 ? [{ title: 'mode', align: 'left', spare: true } as const] : []),
  ];
  return [
    table(
      columns,
      shown.map((row) => cells(row, method !== undefined).slice(0, columns.length)),
    ),
    ...rest(rows.slice(shown.length)),
    ...(method ? [paragraph(mark('quiet', methodWords(method)))] : []),
  ];
}

/** What the likelier bounds are, and that nothing is judged by them. */
function methodWords(method: NonNullable<Report['statistics']>): string {
  const judged = 'Verdicts are those of the extremes.';
  if (method.method === 'rss')
    return `Root of squares: about the typical build, the root of the sum of the squares of what each figure does by itself. ${judged}`;
  const { builds, seed, percentiles } = method;
  return `Sampled: between ${percentiles[0]} % and ${percentiles.at(-1)} % of ${builds} builds (seed ${seed}), each figure anywhere below and above its typical value with equal chance. ${judged}`;
}

function cells(row: AccountRow, likelier: boolean): readonly Text[] {
  const { account, alike, number } = row;
  const { verdict, margin, draw, unit, direction, statistics } = account;
  const limit = governing(account);
  const role = callsForChange(verdict) ? verdict : 'quiet';
  return [
    mark('strong', number),
    margin === null ? mark(role, verdict === 'sound' ? '' : '?') : mark(role, percent(margin)),
    titleOf(row),
    carried(account),
    ...(likelier ? [statistics ? span({ min: statistics.low, max: statistics.high }, unit) : ''] : []),
    draw === null ? '' : mark('quiet', figure(draw.typ, unit)),
    // Nobody limits a plain rail: what feeds it is limited.
    limit === undefined
      ? (account.measured?.stated ?? (verdict === 'sound' ? 'no limit' : 'not known'))
      : given(limit.value, unit),
    mark('quiet', limit === undefined ? (account.measured ? 'measured' : '') : kindOfLimit(limit, direction)),
    mark('quiet', alike.length > 0 ? `${account.id} …` : account.id),
    mark('quiet', account.mode),
  ];
}

function kindOfLimit({ grade, range }: ReportLimit, direction: ReportAccount['direction']): string {
  return direction === 'at-least' ? 'or more' : range ? 'assumed' : gradeWord[grade];
}

/** What the table leaves out. Accounts that call for a change are not hidden: each has a finding below. */
function rest(hidden: readonly AccountRow[]): readonly Block[] {
  const accounts = hidden.flatMap(({ account, alike }) => [account, ...alike]);
  const wanting = accounts.filter(({ verdict }) => callsForChange(verdict)).length;
  const sound = accounts.length - wanting;
  const said = [
    ...(wanting > 0 ? [`${wanting} more ${wanting === 1 ? 'has its finding' : 'have their findings'} below`] : []),
    ...(sound > 0 ? [`${sound} ${wanting > 0 ? '' : 'more '}${sound === 1 ? 'is' : 'are'} sound`] : []),
  ];
  return said.length === 0 ? [] : [paragraph(mark('quiet', `… ${said.join('; ')}: --all`))];
}
