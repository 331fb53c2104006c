/** When it is worst: the mode, and who is on together. */
import { channelOf } from './channel.js';
import { nameList } from './name-list.js';
import type { Report, ReportAccount, ReportFinding } from './report.js';
import { modeWords } from './words.js';

/** So many circuits are named; the working and the JSON report have all of them. */
const most = 6;

/** All circuits that are on in any worst moment. */
const everyone = (report: Report): ReadonlySet<string> =>
  new Set(report.accounts.flatMap(({ moment }) => moment ?? []));

/** For a file without modes, how its moments were chosen. */
export function modesWords(report: Report): string | undefined {
  const all = everyone(report);
  if (report.modes.length > 0 || all.size < 2) return undefined;
  return report.accounts.some(({ moment }) => moment?.length === all.size)
    ? 'no modes given: every circuit may be on with every other'
    : 'no modes given: each figure is that of its worst combination';
}

/** The worst moment of a finding, as far as it is news: its mode, and who is on besides what the finding names. */
export function momentWords(finding: ReportFinding, account: ReportAccount | undefined, report: Report): string {
  const on = account?.moment ?? [];
  const named = new Set([finding.about, ...(account?.entries.map(({ circuit }) => circuit) ?? [])]);
  const isNews = on.length < everyone(report).size && on.some((circuit) => !named.has(circuit));
  return [
    modeWords(account?.mode ?? finding.mode ?? 'free'),
    isNews ? `with ${nameList(on, most)} on` : '',
    account?.bound ? 'a bound: no combination is worse' : '',
  ]
    .filter(Boolean)
    .join(', ');
}

/** The same for all channels of a load: which of the others are on with one matters less than how many. */
export function momentLikeness(finding: ReportFinding, account: ReportAccount | undefined): unknown {
  const loads = (account?.moment ?? []).map((circuit) => channelOf(circuit)?.load ?? circuit).sort();
  return [account?.mode ?? finding.mode, account?.bound, loads];
}
