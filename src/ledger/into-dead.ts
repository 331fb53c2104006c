/**
 * What still lives and finds a way into what is dead. A dead supply that is cut off floats, and is lifted; one that holds its
 * rail at 0 V takes the most that comes through. The worse counts, so both are asked (rule 18 of the format).
 */
import type { Afloat } from '../project/afloat.js';
import { afloat } from '../project/afloat.js';
import type { Project } from '../project/project.js';
import { takenOver } from '../project/without.js';
import type { Dead } from './dead-corners.js';
import { LITTLE } from './dead-corners.js';
import type { LiftedRail } from './lifted.js';
import { liftedRails } from './lifted.js';
import type { FedSource } from './fed-dead.js';
import { fedSources, heldFlows } from './fed-dead.js';
import { RUNAWAY, together } from './moments.js';
import type { PushedPin } from './pushed.js';
import { pushedPins } from './pushed.js';
import { solver } from './solver.js';

export interface WaysIntoDead {
  readonly lifted: readonly LiftedRail[];
  readonly pushed: readonly PushedPin[];
  readonly fed: readonly FedSource[];
}

export const NO_WAYS: WaysIntoDead = { lifted: [], pushed: [], fed: [] };

/** What finds a way into the rails of some dead supplies. */
export function waysIntoDead(whole: Project, of: Dead): WaysIntoDead {
  const project = takenOver(whole, of.dead);
  const found = afloat(project, of.dead);
  if (found === undefined) return NO_WAYS;
  const on = pushing(project, found);
  const flows = heldFlows(found, on);
  const lifted = liftedRails(found, on, flows, of);
  return { lifted, pushed: pushedPins(project, found, on, of), fed: fedSources(project, flows, lifted, of) };
}

/** The state in which each circuit that has a way lets the most through. */
function pushing(project: Project, { held, ways, floating }: Afloat): Uint8Array {
  const bench = solver(held);
  const { circuitIndex, networksOf } = bench.circuitry;
  const on = Uint8Array.from(bench.resting);
  const moment = { mode: RUNAWAY, on: bench.resting };
  const s = bench.solve({ moment, corner: bench.typical(undefined), focus: bench.nobody });
  const taken = (circuit: number, state: boolean): number =>
    networksOf[circuit]!.flatMap((n) => s.drawOf(n, state)).reduce(
      (sum, { node, amps }) => sum + (floating.has(node) ? amps : 0),
      0,
    );
  const sets = together(project);
  for (const id of ways) {
    const c = circuitIndex.get(id)!;
    if (!project.circuits[c]!.always && taken(c, true) < taken(c, false) - LITTLE) for (const k of sets[c]!) on[k] = 1;
  }
  return on;
}
