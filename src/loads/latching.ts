/** Latching relays: a pulse sets them, and they stay so without power. What they draw is a matter of pulses, not of time. */
import type { Figures } from './figures.js';
import type { LatchingPlan } from './circuit-plan.js';

/** Makers ask for pulses of this length, seconds (HF115F-L and its like: 50 ms typically). */
const USUAL_PULSE = 50e-3;

/** What a coil's figures say of its latching; undefined for one that falls back by itself. */
export function latchingOf(figures: Figures): LatchingPlan | undefined {
  const coils = figures.word('latching');
  if (coils !== 'one-coil' && coils !== 'two-coil') {
    if (figures.says('pulse'))
      figures.problem(
        'pulse',
        '`pulse` is of a latching relay, and this one falls back by itself',
        '`latching: one-coil`, or no `pulse`',
      );
    return undefined;
  }
  const pulse = figures.interval('pulse', 'time')?.max;
  if (pulse === undefined) figures.assume(`its pulses last ${USUAL_PULSE * 1e3} ms, since nobody states it`);
  const perDay = figures.interval('operations', 'times-per-day')?.typ;
  if (perDay === undefined)
    figures.assume(
      'its pulses count for nothing in what supplies give on average, since nobody says how often it is switched',
    );
  return { coils, pulse: pulse ?? USUAL_PULSE, ...(perDay !== undefined && { perDay }) };
}
