/** The words of a comparison, whatever they are printed on. */
import { countsOf } from './counts.js';
import { figure, given, limitWord, percent } from './figures.js';
import type {
  AccountReport,
  AccountSide,
  ComparedFinding,
  ComparisonReport,
  FileComparison,
} from './compare-report.js';
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

/** What a file is besides one that was there before and is now. */
export const STATE_WORDS: { readonly [state in FileComparison['state']]: string } = {
  compared: '',
  added: 'a new file',
  removed: 'the file is gone',
  repaired: 'it could not be read before, so that all in it counts as new',
  unread: 'it was not audited',
};

/** Nothing but the file's name is another one. */
export const isMoved = ({ was, change, state }: FileComparison): boolean =>
  was !== undefined && change === 'same' && state === 'compared';

type Files = readonly Pick<FileComparison, 'findings' | 'accounts' | 'unread' | 'change'>[];

/** The change in one sentence or two, with the numbers. */
export function changeSentence(files: Files): string {
  const findings = files.flatMap((f) => f.findings).filter(weighs);
  const of = (change: ComparedFinding['change']) => findings.filter((f) => f.change === change);
  const [fresh, worse, aside, better, gone] = [of('new'), of('worse'), of('set-aside'), of('better'), of('gone')];
  const moved = [
    ...(fresh.length > 0 ? [`${countOf(fresh)} new (${verdictsOf(fresh)})`] : []),
    ...(worse.length > 0 ? [`${countOf(worse)} worse than before (${verdictsOf(worse)})`] : []),
    ...(aside.length > 0 ? [`${countOf(aside)} set aside now (${verdictsOf(aside)})`] : []),
    ...(gone.length > 0 ? [`${countOf(gone)} gone`] : []),
    ...(better.length > 0 ? [`${countOf(better)} less bad than before`] : []),
  ];
  const closed = files.filter((f) => f.change === 'unread').length;
  const missing = closed === 0 ? '' : ` ${closed === 1 ? 'One file' : `${closed} files`} could not be read.`;
  const stay = stayWords(of('same').filter((f) => f.waiver === undefined).length);
  if (moved.length > 0) return `${upper(joined(moved))}.${stay}${missing}`;
  if (closed > 0 && files.length === closed) return missing.trim();
  if (files.every((f) => f.change === 'same')) return `Nothing that is judged has changed.${stay}${missing}`;
  return `No finding is new, and none is gone.${lessWords(files.flatMap((f) => f.accounts))}${stay}${missing}`;
}

const stayWords = (old: number): string =>
  old === 0
    ? ''
    : old === 1
      ? ' One finding that was there before stays as it is.'
      : ` ${old} findings that were there before stay as they are.`;

/** How many have less in hand, and which of them lost the largest share of it. */
function lessWords(accounts: readonly AccountReport[]): string {
  const less = accounts.filter((a) => a.change === 'less' && isTold(a));
  const kept = ({ before, after }: AccountReport): number => (after?.margin ?? 0) / (before?.margin || 1);
  const [most] = less.toSorted((a, b) => kept(a) - kept(b));
  if (most === undefined) return '';
  const [was, is] = [marginWords(most.before), marginWords(most.after)];
  const enough = less.some((a) => callsForChange(a.after?.verdict ?? 'sound')) ? '' : ', and enough';
  const one = less.length === 1;
  const lost =
    was === is ? '' : `${one ? '' : '; the most is lost by'}${one ? ': ' : ' '}${most.title}: ${was} before, ${is} now`;
  return ` ${one ? 'One account has' : `${less.length} accounts have`} less in hand${enough}${lost}.`;
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
export function wayWords({ change, before, after, margin, waiver }: ComparedFinding): string {
  if (change === 'new') return waiver ? `${after}, no longer set aside` : `${after}, new`;
  if (change === 'set-aside') return before === null ? `${after}, new and set aside` : `${after}, set aside now`;
  if (change === 'gone') return `${before}, gone`;
  if (before !== after) return `${before} before, ${after} now`;
  if (waiver) return `${after}, set aside as before`;
  if (change === 'same' || margin.before === null || margin.after === null) return `${after}, as before`;
  return `${after}: ${percent(margin.before)} in hand before, ${percent(margin.after)} now`;
}

/** Why a finding is set aside, and how long: 'The file gives the reason: bench use only, until 2027-03-01.' */
export const reasonWords = ({ waiver, change }: ComparedFinding): string | undefined =>
  waiver === undefined
    ? undefined
    : `The reason ${change === 'new' ? 'was' : 'is'}: ${waiver.reason}${waiver.until === undefined ? ', without an end date' : `, until ${waiver.until}`}.`;

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
export function limitWords({ before, after, unit, direction }: AccountReport): string {
  const [b = '', a = ''] = [before, after].map((side) =>
    side === null || side.limit === null ? '' : given(side.limit, unit),
  );
  const side = after ?? before;
  const limit = side === null || side.limit === null ? '' : limitWord(side.limit, { unit, direction });
  return after === null || a === b || b === '' ? limit : `${limit} (was ${b})`;
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
