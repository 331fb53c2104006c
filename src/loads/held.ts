/**
 * The current that a chopper holds in its windings, and what its supply gives for it. While a winding's current goes round
 * through the switches nothing comes from the supply: over a period that gives just the power that windings and switches turn
 * to heat and the shaft passes on, so that its current is the smaller the higher it stands. It is never more than the windings
 * carry together.
 */
import type { Held, Step } from './account-plan.js';

/** Watts that a chopper takes from its supply: P = n · I² · (R + R_bridge) + P_shaft. */
export const wattsOf = ({ windings, amps, ohms, bridge, shaft }: Held): number =>
  windings * amps ** 2 * (ohms + bridge) + shaft;

/** All windings' currents together, amperes: a chopper that is on all the time passes no more on to its supply. */
export const mostOf = (held: Held | undefined): number | undefined => held && held.windings * held.amps;

/** The sum behind the supply current of a chopper. @param volts what reaches it @param amps what it takes */
export function heldSteps(held: Held, volts: number, amps: number, what: string, sources: readonly string[]): Step[] {
  const { windings, amps: phase, ohms, bridge, shaft } = held;
  const watts = wattsOf(held);
  if (watts > amps * volts * (1 + 1e-9))
    return [
      {
        name: 'I',
        says: `${what}: it stands so low that the chopper never rests, and gives no more than its windings are to carry together`,
        formula: 'n * I_phase',
        with: { n: [windings, ''], I_phase: [phase, 'A'] },
        gives: [amps, 'A'],
        sources,
      },
    ];
  return [
    {
      name: 'P',
      says: 'what the windings and the switches in their way turn to heat, and what the shaft gives',
      formula: `n * I_phase^2 * (R_winding + R_bridge)${shaft > 0 ? ' + P_shaft' : ''}`,
      with: {
        n: [windings, ''],
        I_phase: [phase, 'A'],
        R_winding: [ohms, 'Ω'],
        R_bridge: [bridge, 'Ω'],
        ...(shaft > 0 && { P_shaft: [shaft, 'W'] as const }),
      },
      gives: [watts, 'W'],
      sources,
    },
    {
      name: 'I',
      says: `${what}: the same power from its supply`,
      formula: 'P / V',
      with: { P: [watts, 'W'], V: [volts, 'V'] },
      gives: [amps, 'A'],
    },
  ];
}
