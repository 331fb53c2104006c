/**
 * Dead sources that are fed: one that is cut off is lifted, and one that holds its terminals at 0 V takes the most that comes
 * through. What its own diode blocks does not reach it.
 */
import type { Step } from '../loads/account-plan.js';
import type { Afloat } from '../project/afloat.js';
import type { Project } from '../project/project.js';
import type { TreeNode } from '../project/tree-plan.js';
import type { Dead } from './dead-corners.js';
import { candidatesOf } from './dead-corners.js';
import type { FeedIn } from './feeds-into-dead.js';
import { behind, feedsInto, stepOf, sumOf } from './feeds-into-dead.js';
import type { LiftedRail } from './lifted.js';
import { solver } from './solver.js';

/** What is pushed into each node that floats by itself, at the most, where all of them are held at 0 V. */
export type HeldFlows = ReadonlyMap<string, readonly FeedIn[]>;

export function heldFlows(found: Afloat, on: Uint8Array): HeldFlows {
  const bench = solver(found.held);
  const solutions = candidatesOf(bench, found, on, 'lifted').map((c) => bench.solve(c));
  return new Map(
    [...found.tops].map((top) => {
      const nodes = behind(found.held, top);
      const all = solutions.map((s) => feedsInto(s, found, nodes));
      return [top, all.reduce((a, b) => (sumOf(b) > sumOf(a) ? b : a))];
    }),
  );
}

/** A dead source into which current is pushed. */
export interface FedSource extends Dead {
  readonly source: TreeNode;
  /** Amperes at the most, where it holds its terminals at 0 V. */
  readonly amps: number;
  /** Volts that its terminals come up to at the most, where it is cut off. */
  readonly lifted: number;
  /** What brings them, the most of it first. */
  readonly feeds: readonly FeedIn[];
  readonly steps: readonly Step[];
}

/** The dead sources that something feeds and that do not say that they bear it. @param rails what is lifted with them */
export function fedSources({ nodes }: Project, held: HeldFlows, rails: readonly LiftedRail[], of: Dead): FedSource[] {
  return nodes.flatMap((source): FedSource[] => {
    const feeds = held.get(source.id) ?? [];
    if (source.states !== true || source.reverse === 'tolerated' || source.reverse === 'blocked') return [];
    const lifted = rails.find((r) => r.rail === source.id)?.most ?? 0;
    return feeds.length === 0 ? [] : [{ ...of, source, amps: sumOf(feeds), lifted, feeds, steps: [stepOf(feeds)] }];
  });
}
