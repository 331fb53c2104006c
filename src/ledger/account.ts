/** Accounts: the one data structure that rules, cures and reports read. */
import type { Interval } from '../quantity/interval.js';
import type { AccountKind, Direction, Failing, LimitPlan, QuantityName, Step } from '../loads/account-plan.js';
import type { ReadingPlan } from '../project/project.js';
import type { Path } from '../source/place.js';
import type { Candidate } from './solver.js';
import type { Solution } from './solution.js';
import type { Sampling } from './statistics.js';

/** One circuit's current on one account: at the least, the typical and the most of the account. */
export interface Entry {
  readonly circuit: string;
  readonly min: number;
  readonly typ: number;
  readonly max: number;
}

/** A limit as it was met: at the corner that leaves least of it, and in the typical build. */
export interface LimitMet {
  readonly limit: LimitPlan;
  /** SI, at the worst corner. */
  readonly value: number;
  readonly draw: number;
  readonly ambient: number;
  /** Signed share of the limit that is left at the worst corner. */
  readonly left: number;
  readonly typical: { readonly value: number; readonly draw: number };
  /** What failing it comes to at the worst corner and in the typical build, where the limit tells. */
  readonly failing?: { readonly worst: Failing; readonly typical: Failing };
  readonly solution: Solution;
}

export interface Account {
  readonly id: string;
  readonly kind: AccountKind;
  readonly title: string;
  readonly quantity: QuantityName;
  readonly direction: Direction;
  readonly path: Path;
  readonly mode: string;
  /** The meter's reading that is held against the draw, and the corner that comes nearest to it. */
  readonly reading?: ReadingPlan;
  readonly nearest?: Candidate;
  /** Circuits on in the worst moment. */
  readonly moment: readonly string[];
  readonly bound: boolean;
  /** SI; undefined when a figure is missing. */
  readonly draw?: Interval;
  readonly limits: readonly LimitMet[];
  readonly missing?: { readonly figure: string; readonly asks: string };
  /** Largest entry first; they sum to the ends of the draw. */
  readonly entries: readonly Entry[];
  /** The sums behind the worst end. */
  readonly steps: () => readonly Step[];
  /** Its worst moment, for builds at random; undefined where nothing is known of it. */
  readonly sampling: () => Sampling | undefined;
  /** Solutions of the lowest and the highest draw and of the typical build. */
  readonly solutions: () => { readonly least?: Solution; readonly most?: Solution; readonly typical?: Solution };
}

/**
 * Margin of a figure: (limit − worst) / limit; for an at-least figure (worst − needed) / needed; for a temperature
 * (limit − worst) / (limit − ambient).
 */
export function marginOf(
  direction: Direction,
  quantity: QuantityName,
  draw: number,
  limit: number,
  ambient: number,
): number {
  if (direction === 'at-least') return limit === 0 ? 1 : (draw - limit) / limit;
  if (quantity === 'temperature') return (limit - draw) / (limit - ambient);
  return limit === 0 ? (draw > 0 ? -1 : 0) : (limit - draw) / limit;
}
