/** Phrases that many sentences share: what is carried, what may be carried, how much is in hand. */
import type { Finding } from '../checks/finding.js';
import type { Account, LimitMet } from '../ledger/account.js';
import type { Grade } from '../loads/plan.js';
import type { Dimension } from '../quantity/dimension.js';
import { formatValue } from '../quantity/print.js';

/** A finding about a limit: the account, and the limit that gives the verdict. */
export interface Met {
  readonly account: Account;
  readonly by: LimitMet;
}

export const met = (f: Finding): Met | undefined => (f.account && f.by ? { account: f.account, by: f.by } : undefined);

export const dimensionOf = (account: Account): Dimension => (account.quantity === 'time' ? 'time' : account.quantity);

/** A figure of an account, with its unit. */
export const figure = (account: Account, value: number): string => formatValue(value, dimensionOf(account));

/** What kind of line a limit is, in words. */
export function lineOf(grade: Grade): string {
  switch (grade) {
    case 'absolute':
      return 'a damage limit';
    case 'operating':
      return 'a working limit';
    case 'characterised':
      return 'as far as its maker promises anything';
    case 'practice':
      return 'what practice allows';
    default:
      return grade satisfies never;
  }
}

/** Hundredths, rounded towards the worse. */
export const percent = (share: number): string => `${Math.floor(share * 100 + 1e-9)} %`;

/** Where the figure is only reached when firmware breaks its promises. */
export const when = (f: Finding): string => (f.runaway ? 'If firmware keeps none of its promises, ' : '');

/** Capital first letter. */
export const sentence = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

/** '71.4 mA where 40 mA is a damage limit', or how little is in hand. */
export function against(f: Finding, { account, by }: Met): string {
  const [draw, limit] = [figure(account, by.draw), figure(account, by.value)];
  if (f.verdict === 'thin')
    return by.limit.mild
      ? `${draw} where ${limit} would be needed`
      : `${draw} of ${limit}, ${lineOf(by.limit.grade)}: ${percent(by.left)} in hand`;
  return `${draw} where ${limit} is ${lineOf(by.limit.grade)}`;
}

/** A sentence about an at-most limit. @param subject what carries @param verb 'carries', 'reaches' */
export function atMost(f: Finding, subject: string, verb: string): string {
  const m = met(f);
  if (m === undefined) return sentence(`nothing says what ${subject} may bear.`);
  if (f.verdict === 'unproven')
    return sentence(
      `${subject} would reach ${figure(m.account, m.by.draw)}, which is past ${figure(m.account, m.by.value)}, if it sheds its heat as badly as was tried.`,
    );
  return sentence(`${when(f)}${subject} ${verb} up to ${against(f, m)}.`);
}
