/** A series resistor in front of a load, and what it bears. */
import type { Interval } from '../quantity/interval.js';
import { closed } from '../quantity/quantity.js';
import { assumed, rating } from './limits.js';
import type { Figures } from './figures.js';
import type { AccountPlan, LimitPlan, Member } from './plan.js';

/** What a resistor bears when nobody says so, watts (rule 8 of the format). */
export const USUAL_POWER = 0.25;

export interface Series {
  readonly members: readonly Member[];
  readonly accounts: readonly AccountPlan[];
  /** Typical ohms, when one is fitted. */
  readonly ohms?: number;
  /** One is fitted, and nobody knows which: nothing behind it can be reckoned. */
  readonly unknown?: true;
}

/** The resistor under a load's `series`, plain or with its power rating. */
export function seriesOf(figures: Figures, circuit: string, path: readonly (string | number)[]): Series {
  if (!figures.says('series')) return { members: [], accounts: [] };
  const spelled = figures.within('series');
  const detailed = spelled.says('resistance');
  const figure = detailed ? spelled.figure('resistance', 'resistance') : figures.figure('series', 'resistance');
  if (figure === undefined) {
    const masked = detailed ? spelled.masked('resistance') : figures.masked('series');
    return masked
      ? { members: [], accounts: [unknownResistor(`${circuit}.series`, circuit, path)], unknown: true }
      : { members: [], accounts: [] };
  }
  const ohms = closed(figure.quantity);
  if (ohms.min <= 0) {
    figures.problem('series', 'a series resistance has to be above zero', 'leave `series` out where none is fitted');
    return { members: [], accounts: [] };
  }
  const part = `${circuit}.series`;
  const limit =
    (detailed ? rating(spelled, 'power', 'power', { grade: 'operating' }) : undefined) ??
    assumed(
      figures,
      `what the series resistor of ${figures.about} bears`,
      { min: USUAL_POWER, typ: USUAL_POWER, max: USUAL_POWER },
      'power',
    );
  return {
    members: [{ kind: 'resistance', part, ohms, origin: figure.origin }],
    accounts: [resistorPower(part, circuit, path, limit, ohms)],
    ohms: ohms.typ,
  };
}

/** Power in a resistor of a circuit. @param ohms its range, where the account is about the resistor behind what feeds it */
export function resistorPower(
  part: string,
  circuit: string,
  path: readonly (string | number)[],
  limit: LimitPlan,
  ohms?: Interval,
): AccountPlan {
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
    read: (s) => s.current(part) ** 2 * s.ohms(part),
    limits: [limit],
    steps: (s) => [
      {
        name: 'P',
        says: 'heat in the resistor',
        formula: 'I^2 * R',
        with: { I: [s.current(part), 'A'], R: [s.ohms(part), 'Ω'] },
        gives: [s.current(part) ** 2 * s.ohms(part), 'W'],
      },
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
