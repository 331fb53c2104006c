/** The accounts, worst margin first: what each carries, what it may carry. */
import { figure, given, governing, percent, span } from './figures.js';
import { type Numbered, sameAccount } from './numbered.js';
import type { Report, ReportAccount, ReportLimit } from './report.js';
import { callsForChange } from './severity.js';
import { type Block, type Column, type Text, mark, paragraph, table } from './tree.js';
import { gradeWords } from './words.js';

/** Rows without being asked for all. */
const most = 12;
/** The tightest sound accounts stand in any table: they say how near the rest is. */
const company = 3;

/** Those that call for a change first, then the others; in each group the smallest margin first, unknown ones last. */
export const byMargin = (accounts: readonly ReportAccount[]): readonly ReportAccount[] =>
  [...accounts].sort(
    (a, b) =>
      Number(callsForChange(b.verdict)) - Number(callsForChange(a.verdict)) ||
      compare(a.margin ?? Infinity, b.margin ?? Infinity),
  );

// Two infinities have no difference to sort by.
const compare = (a: number, b: number): number => (a === b ? 0 : a - b);

/** The table of accounts; `all` leaves none out. No block at all when there are no accounts. */
export function accountsSection(report: Report, findings: readonly Numbered[], all: boolean): readonly Block[] {
  const accounts = byMargin(report.accounts);
  if (accounts.length === 0) return [];
  const wanting = accounts.filter(({ verdict }) => callsForChange(verdict)).length;
  const shown = all ? accounts : accounts.slice(0, Math.min(most, Math.max(wanting + company, most / 2)));
  const modes = new Set(shown.map(({ mode }) => mode));
  const columns: readonly Column[] = [
    { title: '#', align: 'right' },
    { title: 'in hand', align: 'right' },
    { title: 'account', align: 'left' },
    { title: 'carries', align: 'right' },
    { title: 'typical', align: 'right', spare: true },
    { title: 'may carry', align: 'right' },
    { title: '', align: 'left' },
    { title: 'named', align: 'left', spare: true },
    ...(modes.size > 1 ? [{ title: 'mode', align: 'left', spare: true } as const] : []),
  ];
  const rows = shown.map((account) => row(account, report, findings).slice(0, columns.length));
  return [table(columns, rows), ...rest(accounts.slice(shown.length))];
}

function row(account: ReportAccount, report: Report, findings: readonly Numbered[]): readonly Text[] {
  const { verdict, margin, draw, unit, direction } = account;
  const limit = governing(account, report.ambient.max);
  const number = findings.find(({ finding }) => sameAccount(account, finding))?.number ?? '';
  const role = callsForChange(verdict) ? verdict : 'quiet';
  return [
    mark('quiet', number),
    margin === null ? mark(role, '?') : mark(role, percent(margin)),
    account.title,
    draw === null ? 'not known' : span(draw, unit),
    draw === null ? '' : mark('quiet', figure(draw.typ, unit)),
    limit === undefined ? 'not known' : given(limit.value, unit),
    mark('quiet', limit === undefined ? '' : kindOfLimit(limit, direction)),
    mark('quiet', account.id),
    mark('quiet', account.mode),
  ];
}

function kindOfLimit({ grade, range }: ReportLimit, direction: ReportAccount['direction']): string {
  return direction === 'at-least' ? 'or more' : range ? 'assumed' : gradeWords[grade];
}

/** What the table leaves out. Accounts that call for a change are not hidden: each has a finding below. */
function rest(hidden: readonly ReportAccount[]): readonly Block[] {
  const wanting = hidden.filter(({ verdict }) => callsForChange(verdict)).length;
  const sound = hidden.length - wanting;
  const said = [
    ...(wanting > 0 ? [`${wanting} more ${wanting === 1 ? 'has its finding' : 'have their findings'} below`] : []),
    ...(sound > 0 ? [`${sound} ${wanting > 0 ? '' : 'more '}${sound === 1 ? 'is' : 'are'} sound`] : []),
  ];
  return said.length === 0 ? [] : [paragraph(mark('quiet', `… ${said.join('; ')}: --all`))];
}
