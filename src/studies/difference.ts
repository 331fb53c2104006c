/** What is different between two judgements: accounts by the verdict on each, findings by whether they are there. */
import type { Finding } from '../checks/finding.js';
import { findingKey, weighs } from '../checks/finding.js';
import type { Judgement } from '../checks/judge.js';
import type { JudgedAccount, Verdict } from '../checks/verdict.js';
import { VERDICTS, accountKey, worse } from '../checks/verdict.js';

/** An account whose verdict changed; without one of the sides where it is there only once. */
export interface AccountChange {
  readonly before?: JudgedAccount;
  readonly after?: JudgedAccount;
}

export interface Difference {
  readonly better: readonly AccountChange[];
  readonly worse: readonly AccountChange[];
  /** Findings worse than a note that only one of the two has; a verdict that changed is both. */
  readonly fresh: readonly Finding[];
  readonly gone: readonly Finding[];
}

export function differenceOf(before: Judgement, after: Judgement): Difference {
  const changes = accountPairs(before, after).filter((c) => verdictOf(c.before) !== verdictOf(c.after));
  const isWorse = (c: AccountChange): boolean => worse(verdictOf(c.after), verdictOf(c.before));
  return {
    better: changes.filter((c) => !isWorse(c)).sort((a, b) => order(a.before) - order(b.before)),
    worse: changes.filter(isWorse).sort((a, b) => order(a.after) - order(b.after)),
    fresh: only(after, before),
    gone: only(before, after),
  };
}

/** What nobody has calls for nothing. */
export const verdictOf = (j: JudgedAccount | undefined): Verdict => j?.verdict ?? 'sound';

const order = (j: JudgedAccount | undefined): number => VERDICTS.indexOf(verdictOf(j));

/**
 * Every account of either judgement, beside itself in the other one.
 *
 * @param named what a name of the former is called in the latter
 */
export function accountPairs(
  before: Pick<Judgement, 'accounts'> | undefined,
  after: Pick<Judgement, 'accounts'> | undefined,
  named: (id: string) => string = (id) => id,
): readonly AccountChange[] {
  const key = ({ account: a }: JudgedAccount): string => accountKey({ account: { ...a, id: named(a.id) } });
  const was = new Map((before?.accounts ?? []).map((j) => [key(j), j]));
  const is = new Map((after?.accounts ?? []).map((j) => [accountKey(j), j]));
  return [...new Set([...was.keys(), ...is.keys()])].map((each) => {
    const [b, a] = [was.get(each), is.get(each)];
    return { ...(b && { before: b }), ...(a && { after: a }) };
  });
}

const nameOf = (f: Finding): string => `${findingKey(f)} ${f.verdict}`;

/** Findings worse than a note that one judgement has and the other has not. */
function only(one: Judgement, other: Judgement): readonly Finding[] {
  const known = new Set(other.findings.filter(weighs).map(nameOf));
  return one.findings.filter((f) => weighs(f) && !known.has(nameOf(f)));
}
