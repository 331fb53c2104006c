/**
 * A coil under pulses. Between them its clamp lets the current run on, so that the magnet feels the mean voltage: what reaches
 * it during the pulse, less what stands across the clamp in the pause.
 *
 * Source: volt-second balance of an inductance in steady state, a textbook relation (common practice, no source); it holds
 * while the current never stops, and is too low, which is the safe side, where it does.
 */
import type { CoilSetting } from './coil-accounts.js';
import type { Reading, Step } from './account-plan.js';

type Pulsed = Pick<CoilSetting, 'circuit' | 'part' | 'keeps'>;

/** Mean volts across the winding with the shortest pulses. @param volts during the pulse */
export function pulledBy(s: Reading, setting: Pulsed, volts: number): number {
  const duty = s.duty(setting.circuit);
  return duty === 1 ? volts : Math.max(duty * volts - (1 - duty) * keptIn(s, setting), 0);
}

const keptIn = (s: Reading, { part, keeps }: Pulsed): number => keeps?.(s.current(part), s) ?? 0;

/** The sum behind it; none without pulses. */
export function pulledSteps(s: Reading, setting: Pulsed, volts: number): Step[] {
  const duty = s.duty(setting.circuit);
  if (duty === 1) return [];
  return [
    {
      name: 'V_mean',
      says: 'mean over a period of the pulses: what reaches it in the pulse, less what stands across its clamp in the pause',
      formula: 'max(x * V_coil - (1 - x) * V_clamp, 0)',
      with: { x: [duty, ''], V_coil: [volts, 'V'], V_clamp: [keptIn(s, setting), 'V'] },
      gives: [pulledBy(s, setting, volts), 'V'],
    },
  ];
}
