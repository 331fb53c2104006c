/** Draws as data sheets state them: what flows steadily, and what it rises to for a while. */
import { rmsOverSecond } from '../circuit/pulse.js';
import type { Interval } from '../quantity/interval.js';
import { closed } from '../quantity/quantity.js';
import type { Figures } from './figures.js';
import type { AccountPlan } from './account-plan.js';
import type { Member } from './branch-plan.js';

/** Somebody's typical draw, with no bound beside it, may be exceeded by half, a radio's by as much again (rule 8 of the format). */
export const USUAL_EXCESS = 1.5;
const RADIO_EXCESS = 2;
/** A stall, a start or a burst without a stated time lasts this long, seconds (rule 8). */
const USUAL_TIME = 0.5;
/** What lasts longer is sustained, seconds (rule 17). */
const SUSTAINED = 1;

/** A draw with its open bounds closed on the side that is safe; what was assumed is listed. Undefined when nobody states it. */
export function drawOf(figures: Figures, key: string): Interval | undefined {
  const figure = figures.figure(key, 'current');
  if (figure === undefined) return undefined;
  const { quantity } = figure;
  const excess = figures.flag('radio') ? RADIO_EXCESS : USUAL_EXCESS;
  if (quantity.max === undefined)
    figures.assume(`${key} current: up to ${excess} times the stated ${quantity.stated}, since no highest is stated`);
  return closed(quantity, { max: (typ) => excess * typ, min: () => 0 });
}

/** What a load takes, whatever the voltage: steadily, in a peak, and over the second that has most of it. */
export type Taken = Pick<
  Extract<Member, { kind: 'current' }>,
  'amps' | 'peak' | 'lasts' | 'every' | 'second' | 'before'
>;

/**
 * A draw with its peaks; one that outlasts a second is sustained, and heat sees it too.
 *
 * @param lasts seconds that a peak lasts; half a second where nobody says so @param every seconds from one to the next
 */
export function withPeak(steady: Interval, peak: number | undefined, lasts = USUAL_TIME, every?: number): Taken {
  if (peak === undefined) return { amps: steady };
  const top = Math.max(peak, steady.max);
  // Peaks that follow each other without a pause are no peaks apart.
  const regular = every !== undefined && every > 0 ? every : undefined;
  const sustained = lasts > SUSTAINED;
  const amps = sustained ? { ...steady, max: top } : steady;
  return {
    amps,
    peak: top,
    lasts,
    ...(sustained && { before: steady.max }),
    ...(regular !== undefined && { every: regular }),
    second: rmsOverSecond(amps.max, top, lasts, regular),
  };
}

/** How long a stall or burst lasts, seconds; listed where it is assumed. */
export function lastsOf(figures: Figures, key: 'stall-time' | 'peak-time' | 'inrush-time', what: string): number {
  const stated = figures.interval(key, 'time')?.max;
  if (stated === undefined) figures.assume(`${what} lasts ${USUAL_TIME} s, since nobody states it`);
  return stated ?? USUAL_TIME;
}

/** A load whose start or stall nobody states: what it hangs on is unproven. @param part 'pump.motor' @param kind 'motor' */
export const unknownStart = (
  part: string,
  circuit: string,
  path: AccountPlan['path'],
  kind: string,
  figure: 'stall' | 'inrush' = 'stall',
): AccountPlan => ({
  id: part,
  kind: 'input',
  title: `${kind} ${circuit}`,
  quantity: 'current',
  direction: 'at-most',
  circuits: [circuit],
  path,
  recipes: ['draw-most', 'draw-least'],
  read: () => undefined,
  limits: [],
  missing: {
    figure,
    asks:
      figure === 'stall'
        ? `what does the ${kind} ${circuit} draw when it starts or is blocked (its \`stall\` current)?`
        : `what does the ${kind} on ${circuit} draw when it is switched on (its \`inrush\` current)?`,
  },
  steps: () => [],
});
