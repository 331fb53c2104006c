/** Verdicts on accounts, by the rules of judgement: worst corner for limits, typical build for functions, then the policy. */
import type { Account, LimitMet } from '../ledger/account.js';
import type { MarginClass } from '../loads/account-plan.js';
import type { KindMargins, Policy } from '../project/project.js';

export type Verdict = 'breach' | 'strain' | 'unproven' | 'thin' | 'note' | 'sound';

/** Worst first. */
export const VERDICTS: readonly Verdict[] = ['breach', 'strain', 'unproven', 'thin', 'note', 'sound'];

export const worse = (a: Verdict, b: Verdict): boolean => VERDICTS.indexOf(a) < VERDICTS.indexOf(b);

export const worstOf = (verdicts: readonly Verdict[]): Verdict =>
  verdicts.reduce<Verdict>((worst, v) => (worse(v, worst) ? v : worst), 'sound');

/** Exactly at the limit is inside; this much more is the dust of floating-point sums. */
const DUST = 1e-9;

export interface JudgedAccount {
  readonly account: Account;
  readonly verdict: Verdict;
  /** Share left of the limit that gives the verdict. */
  readonly margin?: number;
  /** That limit. */
  readonly by?: LimitMet;
  /** It is so only if something is the case that nothing tells; its verdict then, and the question. */
  readonly onlyIf?: OnlyIf;
}

/** What would have to be the case, in words that follow 'if'. */
export interface OnlyIf {
  readonly answer: string;
  readonly verdict: Verdict;
  readonly asks: string;
}

/** What an account is known by: one id may be judged in several ways. */
export const accountKey = ({
  account: a,
}: {
  readonly account: Pick<Account, 'id' | 'quantity' | 'direction'>;
}): string => `${a.id} ${a.quantity} ${a.direction}`;

/**
 * What the policy says of the ratings of this kind of account; undefined where it has no row, or the limit is no rating: a
 * window, a function in volts, a figure that has to be reached.
 */
function apart(
  policy: Policy,
  { kind, direction }: Account,
  { margin, isFunction }: LimitMet['limit'],
): KindMargins | undefined {
  const isRating = margin === 'current' || margin === 'temperature' || (margin === 'none' && !isFunction);
  return isRating && direction !== 'at-least' ? policy.kinds.get(kind) : undefined;
}

/** Share to keep in hand of a limit, by its kind of account where that is treated apart, else by what kind of figure it is. */
function kept(policy: Policy, account: Account, { limit }: LimitMet): number {
  const row = apart(policy, account, limit);
  const { quantity } = account;
  const own =
    quantity === 'current' || quantity === 'voltage' || quantity === 'power' || quantity === 'temperature'
      ? row?.[quantity]
      : undefined;
  return own ?? byClass(policy, limit.margin);
}

/** Whether a thing becomes warmer than the policy has it of its kind, which is told in degrees. */
function isTooWarm(policy: Policy, account: Account, met: LimitMet): boolean {
  const row = account.quantity === 'temperature' ? apart(policy, account, met.limit) : undefined;
  const most = Math.min(met.value - (row?.temperatureBelow ?? 0), row?.temperatureAtMost ?? Infinity);
  return row !== undefined && met.draw > most * (1 + DUST);
}

function byClass(policy: Policy, margin: MarginClass): number {
  switch (margin) {
    case 'current':
      return policy.current;
    case 'function-voltage':
      return policy.functionVoltage;
    case 'window':
      return policy.window;
    case 'temperature':
      return policy.temperature;
    case 'drive':
      return policy.drive;
    case 'none':
      return 0;
    default:
      return margin satisfies never;
  }
}

/** One limit of an account as it was met. */
export function judgeLimit(account: Account, met: LimitMet, policy: Policy): Verdict {
  const { limit } = met;
  const beyond = (draw: number, value: number): boolean =>
    account.direction === 'at-least' ? draw < value * (1 - DUST) : draw > value * (1 + DUST);
  if (limit.mild) return beyond(met.draw, met.value) ? 'thin' : 'sound';
  if (limit.isFunction) {
    if (beyond(met.typical.draw, met.typical.value)) return met.failing?.typical ?? 'breach';
    if (beyond(met.draw, met.value)) return met.failing?.worst ?? 'strain';
  } else if (met.failing && beyond(met.draw, met.value)) {
    return met.failing.worst;
  } else if (beyond(met.draw, met.value)) {
    if (limit.asks !== undefined) return 'unproven';
    if (limit.range)
      return beyond(met.draw, account.direction === 'at-least' ? limit.range.min : limit.range.max)
        ? 'breach'
        : 'strain';
    return limit.grade === 'absolute' || limit.grade === 'operating' ? 'breach' : 'strain';
  }
  // Characterised and practice figures are margins already.
  if (limit.grade === 'characterised' || limit.grade === 'practice') return met.left < -DUST ? 'thin' : 'sound';
  return met.left < kept(policy, account, met) - DUST || isTooWarm(policy, account, met) ? 'thin' : 'sound';
}

export function judgeAccount(account: Account, policy: Policy): JudgedAccount {
  if (account.limits.length === 0) return { account, verdict: account.missing ? 'unproven' : 'sound' };
  const judged = account.limits.map((met) => ({ met, verdict: judgeLimit(account, met, policy) }));
  const verdict = worstOf(judged.map((j) => j.verdict));
  const giving = judged.filter((j) => j.verdict === verdict).map((j) => j.met);
  const by = giving.reduce((a, b) => (b.left < a.left ? b : a));
  return { account, verdict, margin: by.left, by };
}
