/** Two versions of a project, both judged: what the change makes of findings, accounts and wiring. */
import type { Finding } from '../checks/finding.js';
import { findingKey } from '../checks/finding.js';
import type { Judgement } from '../checks/judge.js';
import { LIMIT_RULES } from '../checks/rules.js';
import type { Verdict } from '../checks/verdict.js';
import { VERDICTS, worse } from '../checks/verdict.js';
import type { AccountChange } from './difference.js';
import { accountPairs, verdictOf } from './difference.js';
import { renamedEntries, renamedId } from './renames.js';
import { repinned } from './repinned.js';
import type { Rewired } from './rewiring.js';
import { rewiring } from './rewiring.js';
import { wireNames } from './wire-pairs.js';

/** One version: what its file says, and the judgement on it. */
export interface Version {
  readonly data: unknown;
  readonly judgement: Judgement;
}

/** A finding of either version. Among equals of one verdict a margin that is smaller by a hundredth of the limit is worse. */
export interface FindingChange {
  /** `set-aside`: the later file sets it aside, and it counted before or was not there; `new` also when that is over. */
  readonly way: 'new' | 'worse' | 'set-aside' | 'better' | 'gone' | 'same';
  readonly before?: Finding;
  readonly after?: Finding;
}

export interface ComparedAccount extends AccountChange {
  /** By the verdict; where that stays, `less` or `more` is in hand, or only its draw is another. */
  readonly way: 'worse' | 'less' | 'added' | 'better' | 'more' | 'draw' | 'removed' | 'same';
}

export interface Comparison {
  /** What the change is as a whole, by findings worse than a note; `changed` moves nothing of that kind. */
  readonly way: 'worse' | 'mixed' | 'better' | 'changed' | 'same';
  /** What matters most first. */
  readonly findings: readonly FindingChange[];
  readonly accounts: readonly ComparedAccount[];
  readonly wiring: readonly Rewired[];
  /** New names by old ones. */
  readonly renames: ReadonlyMap<string, string>;
}

/** Shares of a limit that are as good as none: between figures, and between verdicts on a change. */
const DUST = 1e-6;
const NOTABLE = 0.01;

/** @param before or `after` is undefined for a file that is there on one side only */
export function comparisonOf(before: Version | undefined, after: Version | undefined): Comparison {
  const renamed = renamedEntries(before?.data, after?.data);
  const named = renamedId(renamed.names, wireNames(renamed.wires));
  const findings = findingChanges(before?.judgement, after?.judgement, named);
  const accounts = accountPairs(before?.judgement, after?.judgement, named)
    .map((change): ComparedAccount => ({ ...change, way: wayOfAccount(change) }))
    .sort(inOrder);
  const wiring = [
    ...rewiring(renamed, after?.data),
    ...repinned(before?.judgement.project, after?.judgement.project, named),
  ];
  const weighty = findings.filter(
    (f) => (f.after ?? f.before)!.verdict !== 'note' || f.before?.verdict !== f.after?.verdict,
  );
  const isWorse = weighty.some((f) => (f.way === 'new' || f.way === 'worse') && f.after!.verdict !== 'note');
  const isBetter = weighty.some((f) => (f.way === 'gone' || f.way === 'better') && f.before!.verdict !== 'note');
  const isSame =
    wiring.length === 0 && findings.every((f) => f.way === 'same') && accounts.every((a) => a.way === 'same');
  const way = isWorse ? (isBetter ? 'mixed' : 'worse') : isBetter ? 'better' : isSame ? 'same' : 'changed';
  return { way, findings, accounts, wiring, renames: renamed.names };
}

/** Whether the change brings a finding of `verdict` or beyond, or makes one of those worse. */
export const bringsWorse = ({ findings }: Pick<Comparison, 'findings'>, verdict: Verdict): boolean =>
  findings.some((f) => (f.way === 'new' || f.way === 'worse') && !worse(verdict, f.after!.verdict));

function findingChanges(
  before: Judgement | undefined,
  after: Judgement | undefined,
  named: (id: string) => string,
): readonly FindingChange[] {
  const [was, is] = [keyed(before?.findings ?? [], named), keyed(after?.findings ?? [], (id) => id)];
  return [...new Set([...is.keys(), ...was.keys()])]
    .flatMap((key): FindingChange[] => {
      const [b, a] = [was.get(key), is.get(key)];
      const both = { ...(b && { before: b }), ...(a && { after: a }) };
      if (a?.waiver) return [{ way: b?.waiver ? 'same' : 'set-aside', ...both }];
      // What the former file set aside, and the later one has no more, called for nothing.
      if (b?.waiver) return a ? [{ way: 'new', ...both }] : [];
      return [{ way: a && b ? wayOfFinding(b, a) : a ? 'new' : 'gone', ...both }];
    })
    .sort((x, y) => rankOf(x) - rankOf(y) || severityOf(x) - severityOf(y) || leftOf(x) - leftOf(y));
}

const ABOUT_LIMITS = new Set(LIMIT_RULES.map((rule) => rule.name));

/** Findings by what they are known by under their new names; the worst of those that nothing tells apart. */
function keyed(findings: readonly Finding[], named: (id: string) => string): ReadonlyMap<string, Finding> {
  const known = new Map<string, Finding>();
  for (const f of findings) {
    const account = f.account && ABOUT_LIMITS.has(f.rule) ? `${named(f.account.id)} ${f.account.quantity}` : '';
    const key = `${findingKey({ ...f, about: named(f.about) })} ${account} ${f.runaway ?? ''}`;
    const first = known.get(key);
    if (first === undefined || (first.waiver !== undefined && f.waiver === undefined)) known.set(key, f);
  }
  return known;
}

function wayOfFinding(before: Finding, after: Finding): FindingChange['way'] {
  if (worse(after.verdict, before.verdict)) return 'worse';
  if (worse(before.verdict, after.verdict)) return 'better';
  const more = (after.by?.left ?? 0) - (before.by?.left ?? 0);
  if (!before.by || !after.by || Math.abs(more) < NOTABLE) return 'same';
  return more < 0 ? 'worse' : 'better';
}

const FINDING_WAYS: readonly FindingChange['way'][] = ['worse', 'new', 'set-aside', 'gone', 'better', 'same'];

/** New findings and those that got worse are one group, by how bad they are. */
const rankOf = ({ way }: FindingChange): number => Math.max(1, FINDING_WAYS.indexOf(way));

const severityOf = ({ before, after }: FindingChange): number => VERDICTS.indexOf((after ?? before)!.verdict);

const leftOf = ({ before, after }: FindingChange): number => (after ?? before)!.by?.left ?? 0;

function wayOfAccount({ before, after }: AccountChange): ComparedAccount['way'] {
  if (before === undefined) return callsForChange(verdictOf(after)) ? 'worse' : 'added';
  if (after === undefined) return callsForChange(before.verdict) ? 'better' : 'removed';
  const [was, is] = [calm(before.verdict), calm(after.verdict)];
  if (was !== is) return worse(is, was) ? 'worse' : 'better';
  const more = (after.margin ?? 0) - (before.margin ?? 0);
  if (Math.abs(more) > DUST) return more < 0 ? 'less' : 'more';
  return drawOf(before) === drawOf(after) ? 'same' : 'draw';
}

/** A note on an account calls for nothing, as a sound one does not. */
const calm = (verdict: Verdict): Verdict => (verdict === 'note' ? 'sound' : verdict);

const callsForChange = (verdict: Verdict): boolean => calm(verdict) !== 'sound';

/** The ends of a draw, without the dust of floating-point sums. */
const drawOf = ({ account: { draw } }: NonNullable<AccountChange['after']>): string =>
  draw ? [draw.min, draw.typ, draw.max].map((x) => x.toPrecision(6)).join(' ') : '';

/** What fell below what is wanted, worst first; then what has less in hand, by how much; then the good news. */
function inOrder(a: ComparedAccount, b: ComparedAccount): number {
  return groupOf(a) - groupOf(b) || badness(a) - badness(b) || fallOf(a) - fallOf(b) || (idOf(a) < idOf(b) ? -1 : 1);
}

const WAYS: readonly ComparedAccount['way'][] = ['worse', 'less', 'better', 'added', 'more', 'draw', 'removed', 'same'];

/** Of what has less in hand, that which is short of it already comes first. */
const groupOf = (c: ComparedAccount): number =>
  WAYS.indexOf(c.way) + (c.way === 'less' && !callsForChange(verdictOf(c.after)) ? 0.5 : 0);

const badness = ({ before, after }: ComparedAccount): number => VERDICTS.indexOf(calm((after ?? before)!.verdict));

/**
 * What has less in hand goes by the share of it that is lost, so that 5 % that become 1 % come before 90 % that become 80 %, and
 * what has more by the share of it that was there before; the others by what is in hand.
 */
function fallOf({ before, after, way }: ComparedAccount): number {
  const [was, is] = [before?.margin ?? after?.margin ?? MOST, after?.margin ?? before?.margin ?? MOST];
  if (way === 'less') return was > 0 ? is / was : is - was;
  if (way === 'more') return is > 0 ? was / is : was - is;
  return Math.min(is, MOST);
}

/** More in hand than anything has. */
const MOST = 1e9;

const idOf = ({ before, after }: ComparedAccount): string => (after ?? before)!.account.id;
