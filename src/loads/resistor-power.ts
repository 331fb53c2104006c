/** Heat in a resistor, and what it bears. */
import type { Interval } from '../quantity/interval.js';
import type { Figures } from './figures.js';
import { assumed, rating } from './limits.js';
import type { AccountPlan, LimitPlan, Reading } from './account-plan.js';
import { meanOf, meanSteps } from './pulses.js';

/** What a resistor bears when nobody says so, watts (rule 8 of the format). */
export const USUAL_POWER = 0.25;

/**
 * The power that a resistor bears, stated or else assumed.
 *
 * @param figures whose assumption it is @param name as 'the series resistor of lamp' @param stated where its `power` may stand
 */
export const resistorBears = (figures: Figures, name: string, stated?: Figures): LimitPlan =>
  (stated && rating(stated, 'power', 'power', { grade: 'operating' })) ??
  assumed(figures, `what ${name} bears`, { min: USUAL_POWER, typ: USUAL_POWER, max: USUAL_POWER }, 'power');

/** Power in a resistor of a circuit. @param ohms its range, where the account is about the resistor behind what feeds it */
export function resistorPower(
  part: string,
  circuit: string,
  path: readonly (string | number)[],
  limit: LimitPlan,
  ohms?: Interval,
): AccountPlan {
  const power = (s: Reading): number => s.current(part) ** 2 * s.ohms(part);
  return {
    id: part,
    kind: 'series',
    title: `${part}, heat`,
    quantity: 'power',
    direction: 'at-most',
    circuits: [circuit],
    path,
    // Before a load that hardly answers to it, a resistor at its upper end is the hotter one.
    recipes: ['draw-most', 'draw-least', 'hottest', 'flooded'],
    ...(ohms && { turns: { part, ohms } }),
    peaks: 'rms',
    read: (s) => meanOf(s, power),
    limits: [limit],
    steps: (s) => [
      {
        name: 'P',
        says: 'heat in the resistor',
        formula: 'I^2 * R',
        with: { I: [s.current(part), 'A'], R: [s.ohms(part), 'Ω'] },
        gives: [power(s), 'W'],
      },
      ...meanSteps(s, 'P_mean', 'its mean over a period of the pulses', 'W', power),
    ],
  };
}

/** A resistor that is fitted and unknown: what depends on it is unproven, and this is the question. */
export const unknownResistor = (part: string, circuit: string, path: readonly (string | number)[]): AccountPlan => ({
  id: part,
  kind: 'series',
  title: part,
  quantity: 'power',
  direction: 'at-most',
  circuits: [circuit],
  path,
  recipes: ['draw-most'],
  read: () => undefined,
  limits: [],
  missing: { figure: 'resistance', asks: `what is the resistance of ${part}?` },
  steps: () => [],
});
