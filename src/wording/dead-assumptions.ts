/** What is taken of dead supplies where nobody states it. */
import type { WaysIntoDead } from '../ledger/into-dead.js';
import { mayBeLifted } from '../ledger/lifted.js';
import { CLAMP_ASSUMED } from '../loads/lines/pin-clamp.js';
import type { Assumption, Project } from '../project/project.js';

const DRAWS =
  'while its supply is dead and cut off, what hangs on it takes in proportion to what it takes at 5 V, at the least nothing below the voltage from which it works, and at the most all that comes in, since nobody states it';

/** @param project what it assumes already is not said twice */
export function deadAssumptions({ lifted }: WaysIntoDead, project: Project): readonly Assumption[] {
  const told = lifted.filter(mayBeLifted);
  const rails = [...new Set(told.map((l) => l.rail))];
  const isClamped = told.length > 0 && project.assumptions.every(({ says }) => says !== CLAMP_ASSUMED);
  return [
    ...rails.map((about): Assumption => ({ about, says: DRAWS })),
    ...(isClamped ? [{ about: 'dead supplies', says: CLAMP_ASSUMED }] : []),
  ];
}
