/** Which end of its range a figure takes when its branch leans some way. */
import type { Junction } from '../circuit/junction.js';
import type { BranchPlan, JunctionSpread } from '../loads/branch-plan.js';
import { GROUND } from '../loads/branch-plan.js';
import type { Interval } from '../quantity/interval.js';
import type { AskedLean, Lean } from './corner.js';

/** `high` and `low` turned over. */
export const TURNED: { readonly [L in Lean]?: Lean } = {
  high: 'low',
  peak: 'low',
  second: 'low',
  calm: 'low',
  low: 'high',
};

/**
 * How one branch leans so that its line does. What somebody pushes into a rail takes from what the rail gives, so that it
 * leans the other way when currents are summed.
 */
export function leaning(lean: AskedLean, plan: BranchPlan, on: boolean, inner: ReadonlySet<string>): Lean {
  const { line } = plan;
  switch (lean) {
    case 'raised':
    case 'lowered': {
      const grounded = plan.lowers === true || plan.from === GROUND || plan.to === GROUND;
      // A clamp that carries holds its node down to the supply, or up to ground.
      const raises = line === 'clamp' ? grounded : inner.has(plan.from) && inner.has(plan.to) ? on : !grounded;
      return raises === (lean === 'raised') ? 'high' : 'low';
    }
    case 'lifted':
    case 'sunk':
      // What leads to ground takes from what comes through; everything else lets it.
      return (plan.from === GROUND || plan.to === GROUND) === (lean === 'sunk') ? 'high' : 'low';
    case 'pressed':
      return line === 'pull' ? 'low' : 'high';
    case 'eased':
      return line === 'pull' ? 'high' : 'low';
    case 'idle':
      return 'low';
    case 'loaded':
      return 'high';
    case 'braked':
      return line === 'pull' || line === 'clamp' ? 'high' : 'low';
    default:
      return line === 'drive' || line === 'clamp' ? (TURNED[lean] ?? lean) : lean;
  }
}

/** Leans in which the least comes through to the load. */
const LEAST_PASSES: ReadonlySet<Lean> = new Set(['low', 'starved', 'stalled', 'calm-starved']);

/** Losses on the way: resistances and drops in series with the useful load. */
export const loss = (interval: Interval, lean: Lean, falling = false): number =>
  lean === 'typ' ? interval.typ : leastPasses(lean, falling) ? interval.max : interval.min;

/** Before a load whose current rises as its voltage falls, losses make it draw more. */
const leastPasses = (lean: Lean, falling: boolean): boolean =>
  falling ? !MOST_REACHES.has(lean) : LEAST_PASSES.has(lean);

/** Leans in which what draws current draws the least. */
const MOST_REACHES: ReadonlySet<Lean> = new Set(['low', 'flooded', 'warm']);

/** The load itself is heaviest when it draws most, and when the worst for the voltage that reaches it is asked for. */
export const burden = (interval: Interval, lean: Lean, falling = false): number =>
  lean === 'typ' ? interval.typ : MOST_REACHES.has(lean) !== falling ? interval.max : interval.min;

/** Of a draw: the most of it, unless the least is asked for. */
export const heavier = (interval: Interval, lean: Lean): number =>
  lean === 'typ' ? interval.typ : MOST_REACHES.has(lean) ? interval.min : interval.max;

export const spread = (law: JunctionSpread, lean: Lean): Junction =>
  lean === 'typ' ? law.typ : LEAST_PASSES.has(lean) || lean === 'warm' ? law.max : law.min;

/** A junction that takes current away from what is asked about: the less it drops, the more it takes. */
export const heft = (law: JunctionSpread, lean: Lean): Junction =>
  lean === 'typ' ? law.typ : MOST_REACHES.has(lean) ? law.max : law.min;
