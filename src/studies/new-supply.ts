/**
 * How big a supply for a board's coils must be: its voltage from what the coils need hot and what they bear, its current from
 * the worst moment with the policy's margin, and its wires with the fuse in them.
 */
import type { Judgement } from '../checks/judge.js';
import type { BoardWiring } from '../loads/circuit-plan.js';
import type { Prover } from '../remedies/prove.js';
import type { CoilSupply } from '../remedies/supply-for.js';
import { lengthTo } from '../remedies/rewire.js';
import { suppliesFor } from '../remedies/supply-for.js';
import type { Arrangement } from './arrangements.js';
import { changesFor } from './arrangements.js';
import type { SupplyLead } from './supply-lead.js';
import { leadFor } from './supply-lead.js';

/** A current that no supply for coils is out of, amperes: to see what is asked of it. */
const AMPLE = '1000 A';

export interface SupplySize {
  /** Amperes asked of it in the worst moment, peaks counted. */
  readonly amps: number;
  /** Volts at its terminals from which the coils pull in, hot, and up to which they bear it; undefined when a figure is missing. */
  readonly volts?: { readonly lowest: number; readonly highest: number };
  /** Its two wires and the fuse in the plus one; undefined beyond what small fuses and hook-up wires are for. */
  readonly lead?: SupplyLead;
  /** Supplies to try, the plainest first. */
  readonly attempts: readonly CoilSupply[];
}

/** Sizes a supply for the coils of a board by auditing the board on an ample one. @returns undefined when it has no coils or cannot be judged */
export function sizeFor(
  prover: Prover,
  judgement: Judgement,
  data: unknown,
  owner: string,
  board: BoardWiring,
  way: Arrangement,
): SupplySize | undefined {
  const circuits = judgement.project.circuits.filter((c) => c.owner === owner);
  const volts = circuits.find((c) => c.wiring.figures?.coilVolts)?.wiring.figures?.coilVolts;
  if (volts === undefined) return undefined;
  const [ample] = suppliesFor(data, judgement, volts, 0).filter((s) => s.isNew);
  if (ample === undefined) return undefined;
  const coils = circuits.map((c) => `${c.id}.coil`);
  const at = (terminal: number): Judgement | undefined => {
    const value = { voltage: `${terminal} V`, current: AMPLE };
    const trial = { ...ample, changes: ample.changes.map((c) => ({ ...c, value })) };
    return prover.after(changesFor(judgement, data, owner, board, way, { supply: trial }));
  };
  const after = at(volts);
  if (after === undefined) return undefined;
  const amps = Math.max(
    0,
    ...after.accounts
      .filter(({ account: a }) => a.id === ample.name && a.quantity === 'current')
      .map(({ account: a }) => a.draw?.max ?? 0),
  );
  const hottest = Math.max(after.project.ambient.max, ...[...after.project.places.values()].map((p) => p.max));
  const lead = amps > 0 ? leadFor(amps, volts, hottest, lengthTo(judgement.project, data, owner)) : undefined;
  const window = windowOf(after, coils, volts);
  const windowAt = (terminal: number): SupplySize['volts'] => {
    const judged = at(terminal);
    return judged && windowOf(judged, coils, terminal);
  };
  // What a coil needs hot, and what is lost on the way, move with the voltage: a second look from where the first one ended.
  const lowest = window && windowAt(window.lowest)?.lowest;
  const highest = window && windowAt(window.highest)?.highest;
  return {
    amps,
    ...(lowest !== undefined && highest !== undefined && { volts: { lowest, highest } }),
    ...(lead && { lead }),
    attempts: suppliesFor(data, judgement, volts, amps).filter((s) => s.isNew),
  };
}

/** Terminal volts between which the coils work: what is lost on the way is read off an audit at `volts`. */
function windowOf(after: Judgement, coils: readonly string[], volts: number): SupplySize['volts'] {
  const share = after.project.policy.functionVoltage;
  let lowest = 0;
  let highest = Infinity;
  for (const { account: a } of after.accounts) {
    if (!coils.includes(a.id) || a.quantity !== 'voltage') continue;
    for (const { limit, value, draw } of a.limits) {
      if (a.direction === 'at-most') highest = Math.min(highest, volts + value - draw);
      else lowest = Math.max(lowest, volts + value * (1 + (limit.margin === 'function-voltage' ? share : 0)) - draw);
    }
  }
  return lowest > 0 && highest < Infinity ? { lowest, highest } : undefined;
}
