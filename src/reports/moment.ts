/** When it is worst: the mode, and who is on together. */
import { channelOf } from './channel.js';
import { nameList } from './name-list.js';
import type { Lookup } from './lookup.js';
import type { ReportAccount, ReportFinding } from './report.js';
import { modeWords } from './words.js';

/** So many circuits are named; the working and the JSON report have all of them. */
const most = 6;

/** For a file without modes, how its moments were chosen. */
export function modesWords({ report, circuits }: Lookup): string | undefined {
  if (report.modes.length > 0 || circuits.size < 2) return undefined;
  return report.accounts.some(({ moment }) => moment?.length === circuits.size)
    ? 'no modes given: every circuit may be on with every other'
    : 'no modes given: each figure is that of its worst combination';
}

/** The worst moment of a finding, as far as it is news: its mode, and who is on besides what the finding names. */
export function momentWords(finding: ReportFinding, account: ReportAccount | undefined, { circuits }: Lookup): string {
  const on = account?.moment ?? [];
  const named = new Set([finding.about, ...(account?.entries.map(({ circuit }) => circuit) ?? [])]);
  const isNews = on.length < circuits.size && on.some((circuit) => !named.has(circuit));
  return [
    // What is said of boot says so itself.
    finding.mode === 'boot' ? '' : modeWords(account?.mode ?? finding.mode ?? 'free'),
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
