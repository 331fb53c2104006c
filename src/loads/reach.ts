/** What a load takes from a supply, reckoned from its members alone: what to expect, and the most that it can ever let through. */
import { branchCurrent } from '../circuit/branch.js';
import { copperFactor } from '../circuit/copper.js';
import { junctionAt } from '../circuit/junction.js';
import type { Member } from './branch-plan.js';

/**
 * Amperes through members in series at a voltage.
 *
 * @param end which end of their figures: `min` resistances and drops let the most through
 * @param celsius ambient
 */
export function currentThrough(members: readonly Member[], volts: number, end: 'min' | 'typ', celsius: number): number {
  const fixed = members.find((m) => m.kind === 'current');
  if (fixed?.kind === 'current') return end === 'min' ? fixed.amps.max : fixed.amps.typ;
  const power = members.find((m) => m.kind === 'power');
  if (power?.kind === 'power') return volts > 0 ? power.watts[end === 'min' ? 'max' : 'typ'] / volts : 0;
  const lit = members.find((m) => m.kind === 'filament');
  const filament = lit?.kind === 'filament' && { volts: lit.volts, amps: lit.amps[end === 'min' ? 'max' : 'typ'] };
  let [resistance, drop] = [0, 0];
  const junctions = [];
  for (const m of members) {
    if (m.kind === 'resistance')
      resistance += m.ohms[end] * (m.copper === undefined ? 1 : copperFactor(celsius, m.copper));
    else if (m.kind === 'drop') drop += m.volts[end];
    else if (m.kind === 'junction') junctions.push(junctionAt(m.law[end], celsius));
  }
  if (resistance === 0 && junctions.length === 0 && !filament) return 0;
  return Math.max(branchCurrent({ resistance, drop, junctions, ...(filament && { filament }) }, volts), 0);
}
