/** What a remedy does: the books before and after it. */
import { against, figure, governing, inHand, worstOf } from './figures.js';
import { accountKey, type Lookup } from './lookup.js';
import type { Report, ReportAccount, ReportRemedy } from './report.js';
import { headline } from './words.js';
import { UNIT_OF } from './unit-of.js';

/** So many accounts are told after a remedy; the rest is in the audit of the changed file. */
const most = 3;

export interface Effect {
  /** On the account in question: 'now 52.7 mA of 40 mA, then 4.40 mA of 20 mA, 78 % in hand'. */
  readonly own: string | undefined;
  /** On accounts that it touches besides, when none is in question: the same, each with its title. */
  readonly others: readonly string[];
  /** On the verdict. */
  readonly whole: string;
}

/** The effect of a remedy on an account, and on the whole project. */
export function effectOf({ after }: ReportRemedy, account: ReportAccount | undefined, lookup: Lookup): Effect {
  const own = account && after.accounts.find((each) => keyOf(each) === keyOf(account));
  return {
    own: own && changed(own, account),
    others: own ? [] : after.accounts.slice(0, most).map((each) => titled(each, lookup)),
    whole: (after.cures ? '' : 'This alone does not cure it. ') + whole(headline(after.verdict), lookup.report),
  };
}

const whole = (then: string, { verdict }: Report): string =>
  then === headline(verdict)
    ? `The verdict on the whole is still ${then}: the other findings stay.`
    : `The verdict on the whole is then ${then}.`;

type After = ReportRemedy['after']['accounts'][number];

const keyOf = (each: Pick<After, 'id' | 'quantity' | 'direction'>): string => accountKey({ ...each, account: each.id });

function titled(after: After, { account }: Lookup): string {
  const before = account({ ...after, account: after.id });
  return `${before?.title ?? after.id}: ${changed(after, before)}`;
}

function changed(after: After, before: ReportAccount | undefined): string {
  const { direction } = after;
  const unit = before?.unit ?? UNIT_OF[after.quantity];
  const of = (value: number, limit: number | null | undefined): string =>
    typeof limit === 'number' ? against(figure(value, unit), limit, { unit, direction }) : figure(value, unit);
  const worst = before && worstOf(before);
  const now = before && worst !== undefined ? `now ${of(worst, governing(before)?.value)}, ` : '';
  const margin = after.margin === null ? '' : `, ${inHand(after.margin, direction)}`;
  return `${now}then ${of(after.max, after.limit)}${margin}`;
}
