/** Which finding tells which remedy: a change that settles several of them is told once. */
import type { Numbered } from './numbered.js';
import type { ReportRemedy } from './report.js';

/** One change to the build, whatever it was proposed for. */
export const remedyKey = ({ title, changes }: ReportRemedy): string => JSON.stringify([title, changes]);

/** Where each remedy is told in full: the number of the first finding that has it. */
export type Homes = ReadonlyMap<string, string>;

/** The first remedy of each finding is told in full, with `all` every one; each only once. */
export function homesOf(findings: readonly Numbered[], all: boolean): Homes {
  const homes = new Map<string, string>();
  for (const { number, finding } of findings) {
    for (const remedy of all ? finding.remedies : finding.remedies.slice(0, 1)) {
      const key = remedyKey(remedy);
      if (!homes.has(key)) homes.set(key, number);
    }
  }
  return homes;
}
