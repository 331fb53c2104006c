/** Corners of what finds a way into dead rails: the most of it comes through, or the least. */
import type { Afloat } from '../project/afloat.js';
import type { Project } from '../project/project.js';
import type { Corner } from './corner.js';
import { RUNAWAY } from './moments.js';
import type { Candidate, Solver } from './solver.js';

/** Amperes below which what comes through is the leakage of junctions. */
export const LITTLE = 1e-6;

/** Some supplies dead, and what the file says of that. */
export interface Dead {
  readonly dead: readonly string[];
  /** A mode says so: pins whose way through is known have accounts of their own then. */
  readonly stated: boolean;
}

/** Corners in which the most comes through, or the least. */
const leaning = (lean: 'lifted' | 'sunk', { nodes }: Project): readonly Corner[] => {
  const [sources, losses, rest] =
    lean === 'lifted' ? (['high', 'low', 'low'] as const) : (['low', 'high', 'high'] as const);
  // Somebody else's voltage stands as our own do.
  const apart = new Map(nodes.flatMap((n) => (n.outside ? [[n.id, sources] as const] : [])));
  return (['cold', 'hot'] as const).map((ambient) => ({
    ...{ ambient, sources, outputs: sources, losses, load: lean, control: lean, rest },
    ...(apart.size > 0 && { apart }),
  }));
};

/** The ways in question, and what hangs on the dead rails as the rest. */
export function candidatesOf(bench: Solver, { ways }: Afloat, on: Uint8Array, lean: 'lifted' | 'sunk'): Candidate[] {
  const { project, networks } = bench.circuitry;
  const focus = bench.wholeBut(networks.flatMap(({ plan }, n) => (plan.circuits.some((c) => ways.has(c)) ? [] : [n])));
  return leaning(lean, project).map((corner) => ({ moment: { mode: RUNAWAY, on }, corner, focus }));
}
