/** Which end of a figure a lean of the ledger's corners takes, written down a second time for the tests. */
import type { AskedLean, Lean } from '../../src/ledger/corner.js';
import type { BranchPlan } from '../../src/loads/plan.js';

export type Ends = 'min' | 'typ' | 'max';

/** Of a loss on the way to the load. */
export const LOSS: Readonly<Record<Lean, Ends>> = {
  low: 'max',
  starved: 'max',
  typ: 'typ',
  high: 'min',
  peak: 'min',
  flooded: 'min',
  warm: 'min',
};
/** Of the resistance of the load itself. */
export const LOAD: Readonly<Record<Lean, Ends>> = {
  low: 'max',
  flooded: 'max',
  typ: 'typ',
  high: 'min',
  peak: 'min',
  starved: 'min',
  warm: 'max',
};
/** Of a current that is drawn whatever the voltage. */
export const DRAW: Readonly<Record<Lean, Ends>> = {
  low: 'min',
  flooded: 'min',
  typ: 'typ',
  high: 'max',
  peak: 'max',
  starved: 'max',
  warm: 'min',
};
export const END: Readonly<Record<'low' | 'typ' | 'high', Ends>> = { low: 'min', typ: 'typ', high: 'max' };

/**
 * How a branch leans: what pushes into a rail from outside, and the clamp it comes through, lean against what draws from it.
 * Leans of a line in question are never those of a whole solution.
 */
export function leanOfBranch(lean: AskedLean, { line }: BranchPlan): Lean {
  if (lean === 'raised' || lean === 'lowered' || lean === 'pressed' || lean === 'loaded' || lean === 'braked')
    throw new Error(`a whole solution leans '${lean}'`);
  if (line !== 'drive' && line !== 'clamp') return lean;
  return lean === 'high' || lean === 'peak' ? 'low' : lean === 'low' ? 'high' : lean;
}
