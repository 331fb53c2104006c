/** The candidates of a load's account in the moments in which they are worst: as far as one of them can be the worst of all. */
import type { AccountPlan } from '../loads/account-plan.js';
import { FAR, badnessIn, mayFail } from './badness.js';
import type { Corner } from './corner.js';
import { cornerKey } from './corner.js';
import type { ModeSearch } from './moments.js';
import { RUNAWAY } from './moments.js';
import type { Solution } from './solution.js';
import type { Candidate, Solver } from './solver.js';
import { worsened } from './worst-moment.js';

/** @param plain candidates of one account @param known others of it, in their worst moments already */
export function worstMoments(
  solver: Solver,
  plan: AccountPlan,
  mode: ModeSearch,
  plain: readonly Candidate[],
  known: readonly Candidate[] = [],
): readonly Candidate[] {
  // What is asked with its circuits off is asked at rest.
  if (mode.on !== undefined || plan.off === true || plain.length === 0) return plain;
  const size = (s: Solution): number | undefined => badnessIn(plan, s);
  const weighed = [...known, ...plain].map((candidate) => {
    const solution = solver.solve(candidate);
    return { candidate, solution, draw: plan.read(solution) ?? 0, size: size(solution) ?? -Infinity };
  });
  const bar = weighed.reduce((worst, each) => (each.size > worst.size ? each : worst));
  if (mode.name === RUNAWAY && !weighed.some(({ draw, solution }) => mayFail(plan, draw, solution))) return plain;
  const casts = new Map<string, typeof weighed>();
  for (const each of weighed.slice(known.length)) {
    const key = castKey(each.candidate.corner);
    casts.set(key, [...(casts.get(key) ?? []), each]);
  }
  const held = new Set(
    plan.circuits.length > 1 ? [] : plan.circuits.map((id) => solver.circuitry.circuitIndex.get(id)!),
  );
  const further = [...casts.values()].flatMap((cast) => {
    const first = cast.reduce((worst, each) => (each.size > worst.size ? each : worst));
    if (isFar(first.draw, bar.draw)) return [];
    const { moment } = worsened(first.candidate, { solver, mode, size, held });
    if (moment === first.candidate.moment) return [];
    const corners = new Set(cast.map(({ candidate }) => candidate.corner));
    return [...corners].map((corner): Candidate => ({ ...first.candidate, corner, moment }));
  });
  return further.length > 0 ? [...plain, ...further] : plain;
}

const isFar = (draw: number, other: number): boolean => {
  const [less, more] = [Math.min(Math.abs(draw), Math.abs(other)), Math.max(Math.abs(draw), Math.abs(other))];
  return more > FAR * less;
};

const keys = new WeakMap<Corner, string>();

/** Corners of one key differ by their ambients alone: what is worst at one of them is so at the others. */
function castKey(corner: Corner): string {
  const known = keys.get(corner);
  if (known !== undefined) return known;
  const { place: _, elsewhere: __, ...others } = corner;
  const key = cornerKey({ ...others, ambient: 'typ' });
  keys.set(corner, key);
  return key;
}
