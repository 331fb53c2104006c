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
export function fedSources(
  { nodes }: Project,
  found: Afloat,
  on: Uint8Array,
  rails: readonly LiftedRail[],
  of: Dead,
): FedSource[] {
  const sources = nodes.filter(
    (n) => n.states === true && found.tops.has(n.id) && n.reverse !== 'tolerated' && n.reverse !== 'blocked',
  );
  if (sources.length === 0) return [];
  const bench = solver(found.held);
  const solutions = candidatesOf(bench, found, on, 'lifted').map((c) => bench.solve(c));
  return sources.flatMap((source): FedSource[] => {
    const into = behind(found.held, source.id);
    const all = solutions.map((s) => feedsInto(s, found, into));
    const feeds = all.reduce((a, b) => (sumOf(b) > sumOf(a) ? b : a));
    const lifted = rails.find((r) => r.rail === source.id)?.volts.max ?? 0;
    return feeds.length === 0 ? [] : [{ ...of, source, amps: sumOf(feeds), lifted, feeds, steps: [stepOf(feeds)] }];
  });
}
