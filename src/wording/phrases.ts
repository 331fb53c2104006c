/** Phrases that many sentences share: what is carried, what may be carried, how much is in hand. */
import type { Finding } from '../checks/finding.js';
import type { Account, LimitMet } from '../ledger/account.js';
import type { Grade } from '../loads/account-plan.js';
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

/** A figure that was given, not worked out, has no noughts to show how well it is known: 40 mA, not 40.0 mA. */
export const trimmed = (text: string): string =>
  text.replace(/(\.\d*?)0+(?!\d)/g, (_, kept: string) => (kept === '.' ? '' : kept));

/** What an account is held to, with its unit. */
export const limitFigure = (account: Account, value: number): string => trimmed(figure(account, value));

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

/** Things of a kind have an article, things by name (pin D9, supply laptop) have none. */
const OF_A_KIND = /^(array|clamp|contact|coupler|driver|inlet|LED|motor|rail|wire)\b/;

/** What a finding's account is called in a sentence. */
export const subjectOf = (f: Finding): string =>
  f.account?.title.replace(/, (source|sink)$/, '').replace(OF_A_KIND, 'the $&') ?? f.about;

/** Hundredths, rounded towards the worse. */
export const percent = (share: number): string => `${Math.floor(share * 100 + 1e-9)} %`;

/** Where the figure is only reached when firmware breaks its promises, or a source dies that another one stands in for. */
export function when(f: Finding): string {
  if (f.account?.mode === 'boot') return 'Until firmware runs, ';
  if (!f.runaway) return '';
  const dead = [...(f.by?.solution.corner.feeds?.values() ?? [])].flatMap((feed) => feed.dead ?? []);
  return dead.length === 0
    ? 'If firmware keeps none of its promises, '
    : `With ${[...new Set(dead)].join(' and ')} dead, `;
}

/** Capital first letter. */
export const sentence = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

/** '71.4 mA where 40 mA is a damage limit', or how little is in hand. @param from who brings it about: ' from 8 circuits' */
export function against(f: Finding, { account, by }: Met, from = ''): string {
  const [draw, limit] = [figure(account, by.draw), limitFigure(account, by.value)];
  if (f.verdict === 'thin')
    return by.limit.mild
      ? `${draw} where ${limit} would be needed`
      : `${draw} of ${limit}, ${lineOf(by.limit.grade)}: ${percent(by.left)} in hand`;
  return `${draw}${from} where ${limit} is ${lineOf(by.limit.grade)}`;
}

/** A sentence about an at-most limit. @param subject what carries @param verb 'carries', 'reaches' @param from who brings it about */
export function atMost(f: Finding, subject: string, verb: string, from = ''): string {
  const m = met(f);
  if (m === undefined) return sentence(`nothing says what ${subject} may bear.`);
  if (f.verdict === 'unproven')
    return sentence(
      `${subject} would reach ${figure(m.account, m.by.draw)}, which is past ${limitFigure(m.account, m.by.value)}, if it sheds its heat as badly as was tried.`,
    );
  return sentence(`${when(f)}${subject} ${verb} up to ${against(f, m, from)}.`);
}

/** How the typical build fares where the worst one fails, as a sentence to follow. @param does what it does with a figure */
export const typically = (f: Finding, account: Account, { typical }: LimitMet, does = 'gets'): string =>
  f.verdict === 'breach'
    ? ` Even the typical build ${does} only ${figure(account, typical.draw)} of ${limitFigure(account, typical.value)}.`
    : ' A typical build does.';

/** What is said of a finding. */
export type Say = (f: Finding) => string;
