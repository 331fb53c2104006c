/**
 * Where a figure is not monotone in one resistance: what a resistor turns into heat is most where it equals all that is in
 * series with it, and falls to either side. So its most lies at an end of its range or inside, its least at an end.
 */
import type { AccountPlan, Reading } from '../loads/account-plan.js';
import type { Corner } from './corner.js';
import type { Solution } from './solution.js';
import type { Candidate, Solver } from './solver.js';

type Turns = NonNullable<AccountPlan['turns']>;

/** Share of the range to which the place of the most is found: the figure is flat there, and good to the square of it. */
const NEAR = 1e-5;
const GOLDEN = (Math.sqrt(5) - 1) / 2;

/**
 * Candidates besides those in which everything leans one way.
 *
 * @param most those with the resistance at its least and all else letting the most through
 * @param least those with the resistance at its most and all else letting the least through
 */
export function turningPoints(
  solver: Solver,
  { part, ohms }: Turns,
  read: (s: Reading) => number | undefined,
  most: readonly Candidate[],
  least: readonly Candidate[],
): Candidate[] {
  if (!(ohms.max > ohms.min)) return [];
  const tuned = (c: Candidate, at: number): Candidate => ({ ...c, corner: withOhms(c.corner, part, at) });
  const size = (c: Candidate): number => read(solver.solve(c)) ?? -Infinity;
  const highest = most.flatMap((c) => {
    if (outweighs(solver.solve(c), part, 1)) return [];
    let [low, high] = [ohms.min, ohms.max];
    const at = (share: number): number => low + share * (high - low);
    let [left, right] = [tuned(c, at(1 - GOLDEN)), tuned(c, at(GOLDEN))];
    while (high - low > NEAR * (ohms.max - ohms.min)) {
      if (size(left) > size(right)) {
        high = at(GOLDEN);
        [left, right] = [tuned(c, at(1 - GOLDEN)), left];
      } else {
        low = at(1 - GOLDEN);
        [left, right] = [right, tuned(c, at(GOLDEN))];
      }
    }
    return [left, tuned(c, ohms.max)];
  });
  const lowest = least.flatMap((c) =>
    outweighs(solver.solve(c), part, ohms.min / ohms.max) ? [] : [tuned(c, ohms.min)],
  );
  return [...highest, ...lowest];
}

/** The same corner with one resistance at a value of its own. */
const withOhms = (corner: Corner, part: string, ohms: number): Corner => ({ ...corner, tuned: { part, ohms } });

/**
 * Whether a share of a resistance is sure to be more than all that is in series with it, so that its heat only falls as it
 * grows: then it takes more volts than the others' small-signal resistances would at the same current.
 */
function outweighs(s: Solution, part: string, share: number): boolean {
  const amps = s.current(part);
  if (amps <= 0) return true;
  return share * amps * s.ohms(part) >= s.voltsBeside(part);
}
