/**
 * Findings in the order a report tells them, each with the number by which its other parts refer to it. What all
 * channels of a load have in common is told once: a board of eight relays has one finding, not eight.
 */
import { nothingBefore } from './before.js';
import { channelOf, channelOfAccount, fold, renamed } from './channel.js';
import { effectOf } from './effect.js';
import { factsOf } from './finding-facts.js';
import type { Lookup } from './lookup.js';
import { momentLikeness } from './moment.js';
import type { ReportFinding } from './report.js';
import { severity } from './severity.js';

export interface Numbered {
  readonly number: string;
  /** The one that is told. */
  readonly finding: ReportFinding;
  /** Other channels of its load of which the same is true, figure for figure. */
  readonly alike: readonly ReportFinding[];
}

/** Worst first, what is set aside last; within a verdict the order of the report stays. */
export function numbered(lookup: Lookup): readonly Numbered[] {
  const sorted = [...lookup.report.findings].sort(
    (a, b) =>
      Number(a.waiver !== undefined) - Number(b.waiver !== undefined) || severity(a.verdict) - severity(b.verdict),
  );
  return fold(sorted, (finding) => likeness(finding, lookup)).flatMap(([finding, ...alike], index) =>
    finding ? [{ number: String(index + 1), finding, alike }] : [],
  );
}

/** What is said of a channel, as printed and so to three digits, without its name and the name of its pin. */
function likeness(finding: ReportFinding, lookup: Lookup): string | undefined {
  const channel = channelOf(finding.about);
  if (!channel) return undefined;
  const { rule, verdict, says, asks, remedies, waiver } = finding;
  const account = lookup.account(finding);
  const pin = account && channelOfAccount(account)?.name;
  const cures = remedies.map((remedy) => [remedy.title, remedy.changes, effectOf(remedy, account, lookup)]);
  const facts = factsOf(finding, lookup, nothingBefore).filter(({ word }) => word !== 'when');
  const moment = momentLikeness(finding, account);
  const said = JSON.stringify([
    rule,
    verdict,
    channel.load,
    says,
    asks,
    facts,
    moment,
    cures,
    waiver?.reason,
    waiver?.until,
  ]);
  const nameless = renamed(said, channel.name, '*');
  return pin === undefined ? nameless : renamed(nameless, pin, '*');
}
