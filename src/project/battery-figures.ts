/** What a supply says of itself as a battery: its charge, how long it is wanted to last, when it counts as empty. */
import type { Figures } from '../loads/figures.js';
import type { LimitPlan } from '../loads/plan.js';
import { closed } from '../quantity/quantity.js';
import type { BatteryPlan } from './project.js';

/** @param id the supply's name */
export function batteryOf(figures: Figures, id: string): BatteryPlan | undefined {
  const capacity = figures.curve('capacity', 'charge', 'current');
  const wanted = figures.figure('wanted-life', 'time');
  const end = figures.figure('end-voltage', 'voltage');
  const chemistry = figures.word('chemistry');
  if (!capacity && !wanted && !end && chemistry === undefined) return undefined;
  const empty = end && closed(end.quantity);
  const life = wanted && closed(wanted.quantity);
  const works = { grade: 'operating' as const, isFunction: true as const, margin: 'none' as const };
  const wants: LimitPlan | undefined = wanted &&
    life && {
      ...works,
      value: (s) => (s.typical ? life.typ : life.max),
      stated: wanted.quantity.stated,
      origin: wanted.origin,
    };
  const empties: LimitPlan | undefined = end &&
    empty && {
      ...works,
      margin: 'window',
      value: (s) => (s.typical ? empty.typ : empty.max),
      stated: end.quantity.stated,
      origin: end.origin,
      condition: 'the voltage at which it counts as empty',
    };
  const resistance = figures.figure('resistance', 'resistance');
  if (end && !resistance) figures.assume('loses no voltage inside, since nobody states its resistance');
  return {
    ...(capacity && { capacity: capacity.points, origin: capacity.origin }),
    ...(wants && { wanted: wants }),
    ...(wants && !capacity && { asks: `what charge does the battery ${id} hold (its \`capacity\`)?` }),
    ...(empties && resistance && { empty: empties }),
    ...(chemistry !== undefined && { chemistry }),
  };
}
