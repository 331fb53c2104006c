/** What several sets of dead supplies bring about alike is told once: of the worst, and of those of the fewest that are dead. */
import type { Finding } from './finding.js';
import { worse } from './verdict.js';

const deadIn = ({ names }: Finding): number => (names['dead'] ?? '').split(', ').length;

/** One finding for each thing that findings of a rule are about. */
export const oncePerThing = (findings: readonly Finding[]): readonly Finding[] => {
  const told = new Map<string, Finding>();
  for (const f of findings) {
    const known = told.get(f.about);
    const isTold =
      known !== undefined &&
      (worse(known.verdict, f.verdict) || (known.verdict === f.verdict && deadIn(known) <= deadIn(f)));
    if (!isTold) told.set(f.about, f);
  }
  return [...told.values()];
};
