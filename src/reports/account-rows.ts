/** Accounts in the order of a table, those of a load's channels that are alike in one row. */
import { channelOfAccount, fold, renamed } from './channel.js';
import { carried, figure, governing, percent } from './figures.js';
import { accountKey } from './lookup.js';
import { nameList } from './name-list.js';
import type { Numbered } from './numbered.js';
import type { ReportAccount } from './report.js';
import { callsForChange, severity } from './severity.js';

export interface AccountRow {
  readonly account: ReportAccount;
  /** Other channels' accounts with the same figures. */
  readonly alike: readonly ReportAccount[];
  /** Of the finding about it. */
  readonly number: string;
}

/**
 * Worst verdict first, among equals the smallest margin first, unknown ones last. All that call for nothing are equal, but
 * windows of voltages, which are margins already, come after the others.
 */
export const byUrgency = (accounts: readonly ReportAccount[]): readonly ReportAccount[] =>
  [...accounts].sort((a, b) => rank(a) - rank(b) || compare(a.margin ?? Infinity, b.margin ?? Infinity));

const rank = (account: ReportAccount): number =>
  callsForChange(account.verdict) ? severity(account.verdict) : isWindow(account) ? CALM + 1 : CALM;

/** Behind every verdict that calls for a change. */
const CALM = 100;

/** Where a rail stands against a window, or a regulator's input against what it needs: 4 % of 5 V are as good as 40 %. */
export const isWindow = ({ kind, quantity }: ReportAccount): boolean =>
  quantity === 'voltage' && (kind === 'rail' || kind === 'inlet' || kind === 'supply' || kind === 'regulator');

// Two infinities have no difference to sort by.
const compare = (a: number, b: number): number => (a === b ? 0 : a - b);

/** One row for each account that is not like another channel's. */
export function rowsOf(accounts: readonly ReportAccount[], findings: readonly Numbered[]): readonly AccountRow[] {
  const numbers = new Map<string, string>();
  for (const { number, finding, alike } of findings) {
    for (const each of [finding, ...alike]) {
      if (!numbers.has(accountKey(each))) numbers.set(accountKey(each), number);
    }
  }
  const numberOf = (each: ReportAccount): string => numbers.get(accountKey({ ...each, account: each.id })) ?? '';
  return fold(accounts, (account) => likeness(account, numberOf(account))).flatMap(([account, ...alike]) =>
    account ? [{ account, alike, number: numberOf(account) }] : [],
  );
}

/** What a row would show, without the channel's name. */
function likeness(account: ReportAccount, number: string): string | undefined {
  const channel = channelOfAccount(account);
  if (!channel) return undefined;
  const { kind, title, direction, quantity, unit, draw, mode, margin, verdict } = account;
  const limit = governing(account);
  const figures = [
    carried(account),
    draw && figure(draw.typ, unit),
    limit && [figure(limit.value, unit), limit.grade, limit.range !== undefined],
    margin === null ? '' : percent(margin),
  ];
  const named = renamed(title, channel.name, '*');
  return JSON.stringify([channel.load, kind, named, direction, quantity, mode, verdict, number, figures]);
}

/** 'coil of vents.1, pull-in'; of several, 'coil of vents.1 to 4, pull-in' and 'pins D4 to D7, sink'. */
export function titleOf({ account, alike }: AccountRow): string {
  const own = channelOfAccount(account)?.name;
  if (own === undefined || alike.length === 0) return account.title;
  const names = [own, ...alike.flatMap((each) => channelOfAccount(each)?.name ?? [])].sort(byNumber);
  return renamed(account.title, own, nameList(names)).replace(/^pin /, 'pins ');
}

/** D9 before D10. */
const byNumber = (a: string, b: string): number => {
  const number = (name: string): number => Number(/\d+$/.exec(name)?.[0] ?? 0);
  return number(a) - number(b) || (a < b ? -1 : 1);
};
