/** Junction temperature of a driver, and what it may be. */
import { assumed, rating } from '../limits.js';
import type { Figures } from '../figures.js';
import type { AccountPlan, LimitPlan, Reading } from '../account-plan.js';
import { meanOf, meanSteps } from '../pulses.js';
import type { Switching } from './switching.js';

/** Heat without a thermal resistance is tried at this one, K/W: it holds and passes, or it is unproven (rule 8). */
const TRIED = 400;
/** A driver's junction bears this when nobody says so, °C (rule 8). */
const USUAL_JUNCTION = { min: 150, typ: 150, max: 150 };

export interface Heat {
  readonly thermal: number;
  readonly limit: LimitPlan;
}

/** Thermal resistance and junction limit of a part. */
export function heatOf(figures: Figures, what: string): Heat {
  const stated = figures.interval('thermal-resistance', 'thermal-resistance')?.max;
  const limit =
    rating(figures, 'maximum-junction', 'temperature', { margin: 'temperature' }) ??
    assumed(figures, `highest junction temperature of ${what}`, USUAL_JUNCTION, 'temperature', {
      margin: 'temperature',
    });
  if (stated !== undefined) return { thermal: stated, limit };
  figures.assume(`thermal resistance of ${what}: tried at ${TRIED} K/W, since nobody states it`);
  return {
    thermal: TRIED,
    limit: { ...limit, asks: `what is the thermal resistance of ${what} as mounted (its \`thermal-resistance\`)?` },
  };
}

/**
 * The temperature account of a part that turns `power` into heat: under pulses its mean counts.
 *
 * @param power watts at a moment of the period; the whole period's solution tells how warm the part is meanwhile
 */
export function heatAccount(
  base: Pick<AccountPlan, 'id' | 'kind' | 'circuits' | 'path' | 'title' | 'off' | 'loads'>,
  heat: Heat,
  power: (s: Reading, whole: Reading) => number,
  recipes: AccountPlan['recipes'],
  switching?: Switching,
): AccountPlan {
  const mean = (s: Reading): number => meanOf(s, (at) => power(at, s)) + (switching?.watts(s) ?? 0);
  return {
    ...base,
    quantity: 'temperature',
    direction: 'at-most',
    recipes,
    read: (s) => s.ambient + heat.thermal * mean(s),
    limits: [heat.limit],
    steps: (s) => [
      ...meanSteps(s, 'P_mean', 'its mean over a period of the pulses', 'W', (at) => power(at, s)),
      ...(switching?.steps(s) ?? []),
      {
        name: 'T_junction',
        says: switching ? 'ambient, and what its losses add' : 'ambient, and what its loss adds',
        formula: switching ? 'T_ambient + theta * (P + P_switch)' : 'T_ambient + theta * P',
        with: {
          T_ambient: [s.ambient, '°C'],
          theta: [heat.thermal, 'K/W'],
          P: [mean(s) - (switching?.watts(s) ?? 0), 'W'],
          ...(switching && { P_switch: [switching.watts(s), 'W'] as const }),
        },
        gives: [s.ambient + heat.thermal * mean(s), '°C'],
      },
    ],
  };
}
