/** The words of a comparison, whatever they are printed on. */
import { rendered } from '../source/edit.js';
import { channelOf, fold, renamed } from './channel.js';
import { countsOf } from './counts.js';
import { figure, given, percent } from './figures.js';
import type {
  AccountReport,
  AccountSide,
  ComparedFinding,
  ComparisonReport,
  FileComparison,
  WiringReport,
} from './compare-report.js';
import { nameList } from './name-list.js';
import type { Verdict } from './report.js';
import { callsForChange } from './severity.js';
import { countWords, headline, joined } from './words.js';

/** One word for the whole change. */
export const CHANGE_WORDS: { readonly [change in ComparisonReport['change']]: string } = {
  worse: 'WORSE',
  mixed: 'WORSE AND BETTER',
  better: 'BETTER',
  changed: 'NO WORSE',
  same: 'THE SAME',
  unread: 'NOT ALL READ',
};

type Files = readonly Pick<FileComparison, 'findings' | 'accounts' | 'unread' | 'change'>[];

/** The change in one sentence or two, with the numbers. */
export function changeSentence(files: Files): string {
  const unread = files.filter((f) => f.unread.length > 0).length;
  const findings = files.flatMap((f) => f.findings).filter(weighs);
  const fresh = findings.filter((f) => f.change === 'new');
  const worse = findings.filter((f) => f.change === 'worse');
  const better = findings.filter((f) => f.change === 'better');
  const gone = findings.filter((f) => f.change === 'gone');
  const bad = [
    ...(fresh.length > 0 ? [`${countOf(fresh)} new (${verdictsOf(fresh)})`] : []),
    ...(worse.length > 0 ? [`${countOf(worse)} worse than before (${verdictsOf(worse)})`] : []),
  ];
  const good = [
    ...(gone.length > 0 ? [`${countOf(gone)} gone`] : []),
    ...(better.length > 0 ? [`${countOf(better)} less bad than before`] : []),
  ];
  const old = findings.filter((f) => f.change === 'same').length;
  const stay =
    old === 0
      ? ''
      : ` ${old} that ${old === 1 ? 'was' : 'were'} there before ${old === 1 ? 'stays' : 'stay'} as ${old === 1 ? 'it is' : 'they are'}.`;
  const missing = unread === 0 ? '' : ` ${unread === 1 ? 'One file' : `${unread} files`} could not be read.`;
  if (bad.length + good.length > 0) return `${upper(joined([...bad, ...good]))}.${stay}${missing}`;
  if (unread > 0 && files.length === unread) return missing.trim();
  if (files.every((f) => f.change === 'same')) return `Nothing that is judged has changed.${stay}${missing}`;
  const less = files.flatMap((f) => f.accounts).filter((a) => a.change === 'less').length;
  const kept =
    less === 0 ? '' : ` ${less === 1 ? 'One account has' : `${less} accounts have`} less in hand, and enough.`;
  return `No finding is new, and none is gone.${kept}${stay}${missing}`;
}

/** A finding that calls for something in either version. */
export const weighs = ({ before, after }: ComparedFinding): boolean =>
  callsForChange(before ?? 'sound') || callsForChange(after ?? 'sound');

const countOf = (findings: readonly ComparedFinding[]): string =>
  findings.length === 1 ? 'one finding is' : `${findings.length} findings are`;

/** 'breach' of one, '2 breaches, 1 thin' of several. */
function verdictsOf(findings: readonly ComparedFinding[]): string {
  const [only] = findings;
  if (findings.length === 1) return only?.after ?? '';
  return countWords(countsOf(findings.flatMap(({ after }) => (after === null ? [] : [{ verdict: after }]))));
}

const upper = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

/** 'breach, new', 'thin before, breach now', 'breach, further over: −12 % before, −40 % now'. */
export function wayWords({ change, before, after, margin, setAside }: ComparedFinding): string {
  if (change === 'new') return setAside ? `${after}, no longer set aside` : `${after}, new`;
  if (change === 'gone') return setAside ? `${before}, set aside now` : `${before}, gone`;
  if (before !== after) return `${before} before, ${after} now`;
  if (change === 'same' || margin.before === null || margin.after === null) return `${after}, as before`;
  return `${after}: ${percent(margin.before)} in hand before, ${percent(margin.after)} now`;
}

/** What a finding's cure does, or beside which finding that was told before. */
export function cureTeller(): (f: ComparedFinding) => string | undefined {
  const told = new Map<string, ComparedFinding>();
  return (f) => {
    const { cure } = f;
    if (cure === undefined) return undefined;
    const there = told.get(cure.title);
    if (there) return `Cure: as of ${there.rule}, ${there.about}.`;
    told.set(cure.title, f);
    return `Cure: ${cure.title}. The verdict on the whole is then ${headline(cure.verdict)}.`;
  };
}

/** What an account's row shows of one side. */
export const marginWords = (side: AccountSide | null): string =>
  side === null ? '' : side.margin === null ? (callsForChange(side.verdict) ? '?' : '') : percent(side.margin);

export const drawWords = (side: AccountSide | null, unit: AccountReport['unit']): string =>
  side === null ? '' : side.worst === null ? 'not known' : figure(side.worst, unit);

/** Its limit, and the former one where that was another. */
export function limitWords({ before, after, unit }: AccountReport): string {
  const [b, a] = [before, after].map((side) => (side === null || side.limit === null ? '' : given(side.limit, unit)));
  if (after === null) return b ?? '';
  if (a === b || b === '') return a ?? '';
  return `${a} (was ${b})`;
}

/** The verdict on either side: 'breach', 'thin → breach'. */
export function verdictWay({
  before,
  after,
}: {
  readonly before: Verdict | null;
  readonly after: Verdict | null;
}): string {
  const [b, a] = [before && headline(before), after && headline(after)];
  if (b === null || a === null) return a ?? b ?? '';
  return a === b ? a : `${b} → ${a}`;
}

/** What a row of accounts would show: changes below what is printed are none. */
export const isTold = (account: AccountReport): boolean => {
  const { before, after, unit, change } = account;
  if (change === 'same') return false;
  return (
    drawWords(before, unit) !== drawWords(after, unit) ||
    marginWords(before) !== marginWords(after) ||
    headline(before?.verdict ?? 'sound') !== headline(after?.verdict ?? 'sound')
  );
};

/** Channels of a load that go the same way as one: 'coil of vents.1 to 4, pull-in'. */
export const foldedAccounts = (accounts: readonly AccountReport[]): readonly AccountReport[] =>
  folded(
    accounts,
    (a) => channelOf(a.account.replace(/\.[a-z-]+$/, ''))?.name,
    (a) => a.title,
    (a) => [
      ...[a.before, a.after].flatMap((side) => [marginWords(side), drawWords(side, a.unit), side?.verdict]),
      limitWords(a),
      a.quantity,
    ],
    (a, title) => ({ ...a, title }),
  );

export const foldedFindings = (findings: readonly ComparedFinding[]): readonly ComparedFinding[] =>
  folded(
    findings,
    (f) => channelOf(f.about)?.name,
    (f) => f.says,
    (f) => [f.rule, wayWords(f)],
    (f, says) => ({ ...f, says }),
  );

/** Those that say the same but for the channel's name, as the first of them with all names. */
function folded<T>(
  all: readonly T[],
  nameOf: (each: T) => string | undefined,
  textOf: (each: T) => string,
  besides: (each: T) => readonly unknown[],
  withText: (each: T, text: string) => T,
): readonly T[] {
  const likeness = (each: T): string | undefined => {
    const name = nameOf(each);
    return name === undefined
      ? undefined
      : JSON.stringify([channelOf(name)?.load, renamed(textOf(each), name, '*'), besides(each)]);
  };
  return fold(all, likeness).flatMap(([first, ...alike]) => {
    if (first === undefined) return [];
    const own = nameOf(first);
    if (own === undefined || alike.length === 0) return [first];
    const names = [own, ...alike.flatMap((each) => nameOf(each) ?? [])].sort((a, b) =>
      a.localeCompare(b, 'en', { numeric: true }),
    );
    return [withText(first, renamed(textOf(first), own, nameList(names)))];
  });
}

/** Characters of a value that are shown. */
const LONGEST = 60;

/** Settings of one entry that are told one by one. */
const MOST_SETTINGS = 5;

const SINGULAR: { readonly [section: string]: string } = {
  loads: 'load',
  supplies: 'supply',
  controllers: 'controller',
  expanders: 'expander',
  arrays: 'array',
  parts: 'part',
  modes: 'mode',
  places: 'place',
  variants: 'variant',
  pins: 'pin',
};

/** 'load', 'incoming' with the entry's name; a section that is one value has no other name. */
export const wiringName = ({ section, name, was }: WiringReport): string =>
  [SINGULAR[section] ?? section, name, ...(was === undefined ? [] : [`(was ${was})`])]
    .filter((w) => w !== '')
    .join(' ');

/** What happened to it, in words that follow its name. */
export function wiringWords({ change, settings, section }: WiringReport): string {
  if (section === 'pins') {
    const [setting] = settings;
    const [b, a] = [valueWords(setting?.before), valueWords(setting?.after)];
    return change === 'added' ? `${a}, free before` : change === 'removed' ? `free, ${b} before` : `${a}, ${b} before`;
  }
  if (change === 'removed') return 'removed';
  if (change === 'renamed') return 'renamed, otherwise the same';
  const shown = settings.slice(0, MOST_SETTINGS).map(({ path, before, after }) => {
    const key = path === '' ? '' : `${path}: `;
    if (before === null) return `${key}${valueWords(after)}`;
    return after === null
      ? `without ${path === '' ? valueWords(before) : path}`
      : `${key}${valueWords(before)} → ${valueWords(after)}`;
  });
  const more = settings.length - shown.length;
  return `${shown.join('; ')}${more > 0 ? `; and ${more} more` : ''}`;
}

function valueWords(value: unknown): string {
  const text = typeof value === 'string' ? value : rendered(value);
  const characters = [...text.slice(0, 2 * LONGEST)];
  return characters.length > LONGEST || text.length > 2 * LONGEST
    ? `${characters.slice(0, LONGEST - 1).join('')}…`
    : text;
}
