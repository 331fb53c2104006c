/** The order of verdicts, and what follows from it for a command's exit status. */
import type { Report, UnreadReport, Verdict } from './report.js';

/** From worst to best. */
export const severities = [
  'breach',
  'strain',
  'unproven',
  'thin',
  'note',
  'sound',
] as const satisfies readonly Verdict[];

/** How far from the worst: 0 is a breach. */
export const severity = (verdict: Verdict): number => severities.indexOf(verdict);

/** A note calls for nothing: only what is worse does. */
export const callsForChange = (verdict: Verdict): boolean => severity(verdict) < severity('note');

/** The verdict that makes a run fail, or `never`. */
export type FailAt = Exclude<Verdict, 'sound'> | 'never';

/** 0: nothing at or above `failAt`; 1: something is; 2: the file could not be audited. */
export function exitStatus(
  report: Pick<Report, 'verdict' | 'counts'> | Pick<UnreadReport, 'verdict'>,
  failAt: FailAt,
): 0 | 1 | 2 {
  if (report.verdict === 'unread') return 2;
  if (failAt === 'never') return 0;
  // The headline of a report with nothing but notes is `sound`, so the counts are asked as well.
  const failing = severities.slice(0, severity(failAt) + 1);
  return failing.some((verdict) => report.verdict === verdict || (verdict !== 'sound' && report.counts[verdict] > 0))
    ? 1
    : 0;
}
