/** Many files on a page: one line for each that calls for a change, and how many there are of each verdict. */
import { columns } from '../source/visible.js';
import type { FileSummary } from './file-summary.js';
import { percent } from './figures.js';
import { neutral } from './neutral.js';
import { callsForChange } from './severity.js';
import { fileWord } from './shell-word.js';
import { item, list, mark, type Mark, paragraph, type Role, type Text, type Tree } from './tree.js';
import { headline } from './words.js';

/** What is known of a list of files before the first of them is audited. */
export interface FleetPage {
  /** Columns of the page, and of the longest name of a file. */
  readonly width: number;
  readonly longest: number;
}

const GAP = 2;
const VERDICT = 8;
const IN_HAND = 7;
/** A title shows at least so many columns of itself. */
const TITLE = 24;

/** Columns of verdict, margin, file and title. */
function widthsOf({ width, longest }: FleetPage): readonly number[] {
  const left = width - VERDICT - IN_HAND - 3 * GAP;
  const file = Math.max(4, Math.min(longest, left - TITLE));
  return [VERDICT, IN_HAND, file, left - file];
}

/** The heads of the columns, each over its rule. */
export function fleetHead(page: FleetPage): readonly Text[] {
  const widths = widthsOf(page);
  const titles = ['verdict', 'in hand', 'file', 'title'];
  const rules = widths.map((width) => '─'.repeat(width));
  return [titles, rules].map((cells) =>
    line(
      cells.map((cell) => mark('quiet', cell)),
      widths,
    ),
  );
}

/** A file that calls for a change, or could not be audited, on one line; nothing for one that is sound. */
export function fleetLine(summary: FileSummary, page: FleetPage): Text | undefined {
  const widths = widthsOf(page);
  if (summary.verdict === 'unread') {
    const { file, says, errors } = summary;
    const more = errors > 1 ? ` (and ${errors - 1} more)` : '';
    return line([mark('breach', 'unread'), { text: '' }, { text: file }, { text: says + more }], widths);
  }
  const { verdict, file, project, margin } = summary;
  if (!callsForChange(verdict)) return undefined;
  const left = margin === undefined ? '' : margin === null ? '?' : percent(margin);
  return line([mark(verdict, verdict), mark(verdict, left), { text: file }, { text: project }], widths);
}

/** Cells in their columns; of a file's name the end is kept, of other words the beginning. */
const line = (cells: readonly Mark[], widths: readonly number[]): readonly Mark[] =>
  cells.flatMap(({ text, ...role }, at) => {
    const width = widths[at] ?? 0;
    const whole = neutral(text);
    const shown = at === 2 ? ending(whole, width) : beginning(whole, width);
    const blank = ' '.repeat(width - columns(shown));
    const cell = { text: at === 1 ? blank + shown : shown + blank, ...role };
    return at === 0 ? [cell] : [{ text: ' '.repeat(GAP) }, cell];
  });

function beginning(text: string, width: number): string {
  if (columns(text) <= width) return text;
  let kept = '';
  for (const character of text) {
    if (columns(kept + character) > width - 1) break;
    kept += character;
  }
  return `${kept.trimEnd()}…`;
}

function ending(text: string, width: number): string {
  if (columns(text) <= width) return text;
  let kept = '';
  for (const character of [...text].toReversed()) {
    if (columns(kept + character) > width - 1) break;
    kept = character + kept;
  }
  return `…${kept}`;
}

/** How bad a file is for the whole: what was not read comes behind what is known to be wrong. */
const ORDER = ['breach', 'strain', 'unread', 'unproven', 'thin', 'sound'] as const;
type Rank = (typeof ORDER)[number];

const rankOf = ({ verdict }: FileSummary): Rank => (verdict === 'unread' ? verdict : headline(verdict));
const roleOf = (rank: Rank): Role => (rank === 'unread' ? 'breach' : rank);

/** How many files there are of each verdict, the worst first. */
export function verdictCounts(
  summaries: readonly FileSummary[],
): readonly { readonly rank: Rank; readonly count: number }[] {
  const ranks = summaries.map(rankOf);
  const counts = ORDER.map((rank) => ({ rank, count: ranks.filter((each) => each === rank).length }));
  return counts.filter(({ count }) => count > 0);
}

/** The worst verdict of all, how many files there are of each, and where to read more. @param share 'part 3 of 8' */
export function fleetTotals(summaries: readonly FileSummary[], share?: string): Tree {
  const told = verdictCounts(summaries);
  const worst = told[0]?.rank ?? 'sound';
  const files = summaries.length === 1 ? '1 file' : `${summaries.length} files`;
  const first = worstOf(summaries.filter((each) => rankOf(each) === worst));
  return [
    [
      paragraph([
        mark(roleOf(worst), worst.toUpperCase()),
        `  ${share === undefined ? '' : `${share}, `}${files}${told.length > 0 ? ': ' : ''}`,
        ...told.flatMap(({ rank, count }, at) => [at === 0 ? '' : ', ', mark(roleOf(rank), `${count} ${rank}`)]),
      ]),
      ...(first === undefined || worst === 'sound'
        ? []
        : [
            paragraph(mark('quiet', 'The worst of them in full (all of them: --all):')),
            list([item(mark('quiet', '$'), `ampledger audit ${fileWord(first.file)}`)]),
          ]),
    ],
  ];
}

/** Of files with one verdict the one with the least in hand, the first of several. */
function worstOf(summaries: readonly FileSummary[]): FileSummary | undefined {
  const left = (one: FileSummary): number => (one.verdict === 'unread' ? Infinity : (one.margin ?? Infinity));
  return summaries.reduce<FileSummary | undefined>(
    (worst, one) => (worst === undefined || left(one) < left(worst) ? one : worst),
    undefined,
  );
}
