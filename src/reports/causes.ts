/** What is at the bottom of several findings: one change settles them all, or they are of one load. */
import { remedyKey } from './before.js';
import type { Numbered } from './numbered.js';
import type { ReportFinding, Verdict } from './report.js';

export interface Cause {
  readonly worst: Numbered;
  /** Other findings that the same change settles. */
  readonly others: readonly Numbered[];
}

/** Causes in the order of their worst findings. */
export function causesOf(findings: readonly Numbered[]): readonly Cause[] {
  const causes = new Map<string, Cause>();
  for (const told of findings) {
    const key = causeKey(told.finding);
    const known = causes.get(key);
    causes.set(key, known ? { ...known, others: [...known.others, told] } : { worst: told, others: [] });
  }
  return [...causes.values()];
}

/** Families of sums over many loads: what is wrong with one of them need not be what is wrong with another. */
const sums = new Set(['groups', 'supplies']);

/** The change that comes first; without one, the load that it is about and the question that settles it. */
function causeKey({ remedies: [remedy], about, asks, family }: ReportFinding): string {
  if (remedy) return remedyKey(remedy);
  const dot = about.indexOf('.');
  return JSON.stringify([dot < 0 ? about : about.slice(0, dot), sums.has(family) ? family : '', asks]);
}

/** How many causes there are whose worst finding is of this verdict. */
export const count = (causes: readonly Cause[], verdict: Verdict): number =>
  causes.filter(({ worst }) => worst.finding.verdict === verdict).length;
