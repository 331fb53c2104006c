/** The file's variants side by side with it: a row each, then what each is made of and what it changes. */
import { rendered } from '../source/edit.js';
import { byUrgency } from './account-rows.js';
import { channelOf, fold, renamed } from './channel.js';
import { percent } from './figures.js';
import { nameList } from './name-list.js';
import type { Report, ReportAccountChange, ReportChange, ReportVariant } from './report.js';
import { callsForChange } from './severity.js';
import { type Item, item, list, mark, paragraph, table, type Text, type Tree } from './tree.js';
import { countWords, headline } from './words.js';

/** Changed accounts that are named of each kind without being asked for all. */
const most = 4;

/** Nothing for a file without variants. */
export function variantsSections(report: Report, all: boolean): Tree {
  const { variants = [] } = report;
  if (variants.length === 0) return [];
  return [
    [
      paragraph(mark('strong', variants.length === 1 ? 'One variant' : `${variants.length} variants`)),
      table(
        [
          { title: 'variant', align: 'left' },
          { title: 'verdict', align: 'left' },
          { title: 'findings', align: 'left' },
          { title: 'tightest', align: 'left' },
          { title: 'in hand', align: 'right' },
        ],
        [row('(as it stands)', report, baseTightest(report)), ...variants.map((v) => row(v.name, v, v.tightest))],
      ),
    ],
    [
      list(
        variants.map((v) => variantItem(v, all)),
        { loose: true },
      ),
    ],
  ];
}

interface Tightest {
  readonly title: string;
  readonly margin: number | null;
}

/** In the order in which variants look for theirs. */
const baseTightest = ({ accounts }: Report): Tightest | null =>
  byUrgency(accounts.filter(({ margin }) => margin !== null))[0] ?? null;

function row(
  name: string,
  { verdict, counts }: Pick<Report, 'verdict' | 'counts'>,
  tightest: Tightest | null,
): readonly Text[] {
  const head = headline(verdict);
  return [
    mark('strong', name),
    mark(head, head),
    mark('quiet', countWords(counts)),
    tightest?.title ?? '',
    tightest === null || tightest.margin === null ? '' : percent(tightest.margin),
  ];
}

function variantItem({ name, note, changes, better, worse, gone, new: fresh }: ReportVariant, all: boolean): Item {
  const limit = all ? Infinity : most;
  // What an account tells is not told again by the finding about it.
  const wiring = (findings: ReportVariant['gone']): readonly string[] =>
    findings.filter((f) => f.account === undefined).map((f) => `${f.about}: ${f.says} (${f.verdict})`);
  const told = [
    ...sideItems('better', changesIn(better), limit),
    ...sideItems('gone', wiring(gone), limit),
    ...sideItems('worse', changesIn(worse), limit),
    ...sideItems('new', wiring(fresh), limit),
  ];
  return item(
    mark('strong', name),
    paragraph(changes.map(changeWords).join('; ')),
    ...(note === undefined ? [] : [paragraph(mark('quiet', note))]),
    told.length > 0 ? list(told) : paragraph(mark('quiet', 'no verdict changes')),
  );
}

const sideItems = (word: string, said: readonly string[], limit: number): readonly Item[] => {
  if (said.length === 0) return [];
  const shown = said.slice(0, limit);
  const more = said.length - shown.length;
  return [
    item(mark('quiet', word), ...shown, ...(more > 0 ? [paragraph(mark('quiet', `… and ${more} more: --all`))] : [])),
  ];
};

/** A path and its value as the file would have them; null takes the key out. */
const changeWords = ({ path, value }: ReportChange): string =>
  value === null ? `without ${path}` : `${path}: ${rendered(value)}`;

/** 'coil of vents.1 to 4, pull-in: strain, then sound', channels that go the same way in one. */
function changesIn(changes: readonly ReportAccountChange[]): readonly string[] {
  const channel = (c: ReportAccountChange) => channelOf(c.account.replace(/\.[a-z-]+$/, ''));
  const likeness = (c: ReportAccountChange): string | undefined => {
    const of = channel(c);
    return of && JSON.stringify([of.load, renamed(c.title, of.name, '*'), c.before?.verdict, c.after?.verdict]);
  };
  return fold(changes, likeness).flatMap(([first, ...alike]) => {
    if (first === undefined) return [];
    const own = channel(first)?.name;
    const names = [own, ...alike.map((c) => channel(c)?.name)].filter((name) => name !== undefined);
    const title = own === undefined || alike.length === 0 ? first.title : renamed(first.title, own, nameList(names));
    return [`${title}: ${wayOf(first)}`];
  });
}

function wayOf({ before, after }: ReportAccountChange): string {
  const side = (s: NonNullable<ReportAccountChange['before']>): string =>
    s.margin === null || !callsForChange(s.verdict) ? headline(s.verdict) : `${s.verdict} (${percent(s.margin)})`;
  if (before === null) return `not there, then ${after === null ? '' : side(after)}`;
  return `${side(before)}, then ${after === null ? 'not there' : side(after)}`;
}
