/** Which cures are offered for which finding, in order, each proved before it is shown. */
import type { Finding } from '../checks/finding.js';
import type { Judgement, JudgeOptions } from '../checks/judge.js';
import { worse } from '../checks/verdict.js';
import { driveCoil } from './drive-coil.js';
import { feedCoilsApart } from './feed-coils-apart.js';
import type { Cure, Prover, Remedy } from './prove.js';
import { persists, proverOf, remedyOf } from './prove.js';

/** What a way to cure is given to look at. */
export interface Case {
  readonly finding: Finding;
  readonly judgement: Judgement;
  readonly data: unknown;
}

/** A way to cure: attempts in order of preference, or none when the finding is not its affair. */
export type Way = (of: Case) => readonly Cure[];

const WAYS: readonly Way[] = [driveCoil, feedCoilsApart];

/** Proved remedies by finding: of each way the best attempt that cures it. */
export function curesFor(
  data: unknown,
  file: string,
  options: JudgeOptions,
  judgement: Judgement,
): (f: Finding) => readonly Remedy[] {
  const prover = proverOf(data, file, options);
  return (finding) => WAYS.flatMap((way) => bestOf(prover, way({ finding, judgement, data }), finding) ?? []);
}

/** The first attempt after which the finding is gone and the least is wrong. */
function bestOf(prover: Prover, attempts: readonly Cure[], finding: Finding): Remedy | undefined {
  let best: { cure: Cure; judgement: Judgement } | undefined;
  for (const cure of attempts) {
    const judgement = prover.after(cure.changes);
    if (judgement === undefined || persists(judgement, finding)) continue;
    if (best === undefined || leaner(judgement, best.judgement)) best = { cure, judgement };
    // Nothing about these loads is left to improve: later attempts cost more and bring nothing.
    if (remaining(judgement) === 0) break;
  }
  return best && remedyOf(best.cure, best.judgement, finding);
}

const remaining = (j: Judgement): number => j.findings.filter((f) => f.verdict !== 'note').length;

const leaner = (a: Judgement, b: Judgement): boolean =>
  worse(b.verdict, a.verdict) || (a.verdict === b.verdict && remaining(a) < remaining(b));
