/** Which end of a figure a lean of the ledger's corners takes, written down a second time for the tests. */
import type { AskedLean, Lean } from '../../src/ledger/corner.js';
import type { BranchPlan, Member, NetworkPlan } from '../../src/loads/branch-plan.js';
import { GROUND } from '../../src/loads/branch-plan.js';

export type Ends = 'min' | 'typ' | 'max';

/** Of a loss on the way to the load. */
export const LOSS: Readonly<Record<Lean, Ends>> = {
  low: 'max',
  starved: 'max',
  stalled: 'max',
  typ: 'typ',
  high: 'min',
  peak: 'min',
  second: 'min',
  flooded: 'min',
  warm: 'min',
  calm: 'min',
  'calm-starved': 'max',
};
/** Of the resistance of the load itself. */
export const LOAD: Readonly<Record<Lean, Ends>> = {
  low: 'max',
  flooded: 'max',
  typ: 'typ',
  high: 'min',
  peak: 'min',
  second: 'min',
  starved: 'min',
  stalled: 'min',
  warm: 'max',
  calm: 'min',
  'calm-starved': 'min',
};
/** Of a current that is drawn whatever the voltage. */
export const DRAW: Readonly<Record<Lean, Ends>> = {
  low: 'min',
  flooded: 'min',
  typ: 'typ',
  high: 'max',
  peak: 'max',
  second: 'max',
  starved: 'max',
  stalled: 'max',
  warm: 'min',
  calm: 'max',
  'calm-starved': 'max',
};
export const END: Readonly<Record<'low' | 'typ' | 'high', Ends>> = { low: 'min', typ: 'typ', high: 'max' };

/**
 * How a branch leans. What pushes into a rail from outside, and the clamp it comes through, lean against what draws from it.
 * Where a line is in question: what lifts its node and what pulls it down lean against each other.
 *
 * @param asked how its circuit leans @param network its network
 */
export function leanOfBranch(asked: AskedLean, branch: BranchPlan, network: NetworkPlan): Lean {
  const { line, from, to } = branch;
  const between = network.inner.includes(from) && network.inner.includes(to);
  const grounded = branch.lowers === true || from === GROUND || to === GROUND;
  // A clamp holds its node down to the supply, or up to ground.
  const lifts = line === 'clamp' ? grounded : between ? network.on.includes(branch) : !grounded;
  switch (asked) {
    case 'raised':
      return lifts ? 'high' : 'low';
    case 'lowered':
      return lifts ? 'low' : 'high';
    case 'pressed':
      return line === 'pull' ? 'low' : 'high';
    case 'eased':
      return line === 'pull' ? 'high' : 'low';
    case 'idle':
      return 'low';
    case 'loaded':
      return 'high';
    case 'lifted':
      return from === GROUND || to === GROUND ? 'low' : 'high';
    case 'sunk':
      return from === GROUND || to === GROUND ? 'high' : 'low';
    case 'braked':
      return line === undefined || line === 'drive' ? 'low' : 'high';
    default:
      if (line !== 'drive' && line !== 'clamp') return asked;
      return asked === 'high' || asked === 'peak' || asked === 'second' || asked === 'calm'
        ? 'low'
        : asked === 'low'
          ? 'high'
          : asked;
  }
}

/** Amperes that a member draws in a lean, whatever the voltage: stalls and bursts as they are, or over one second. */
export function drawn({ amps, peak, second, before }: Extract<Member, { kind: 'current' }>, lean: Lean): number {
  if (before !== undefined && (lean === 'calm' || lean === 'calm-starved')) return before;
  const more = lean === 'peak' || lean === 'stalled' ? peak : lean === 'second' ? second : undefined;
  return Math.max(amps[DRAW[lean]], more ?? 0);
}

/** What of a resistor counts while the capacitor across it charges: next to nothing at first, and shares of it later. */
export function counted(member: Member, lean: Lean): number {
  const bypass = member.kind === 'resistance' ? member.bypass : undefined;
  const shares: { readonly [L in Lean]?: number } = {
    peak: 1e-6,
    stalled: bypass?.acting ?? 1,
    second: bypass?.second ?? 1,
  };
  return bypass === undefined ? 1 : (shares[lean] ?? 1);
}

/** A filament's design point in a lean: what it takes hot, cold, or over the second in which it is switched on. */
export function lit({ volts, amps, cold }: Extract<Member, { kind: 'filament' }>, lean: Lean) {
  const times = lean === 'peak' || lean === 'stalled' ? cold?.peak : lean === 'second' ? cold?.second : undefined;
  return { volts, amps: amps[DRAW[lean]] * (times ?? 1) };
}
