/** How bad an account is at a corner: what is missing of its tightest limit, or its draw where it has none. */
import type { LimitPlan, Reading } from '../loads/account-plan.js';
import { marginOf } from './account.js';
import type { Question } from './question.js';
import type { Solution } from './solution.js';

/** What of a question tells how bad it is. */
export type Judged = Pick<Question, 'read' | 'limits' | 'direction' | 'quantity'>;

export const valueAt = (limit: LimitPlan, s: Reading): number =>
  typeof limit.value === 'number' ? limit.value : limit.value(s);

/** Whether a limit holds in a mode. */
export const holds = ({ holdsIn }: LimitPlan, mode: string): boolean => holdsIn?.(mode) ?? true;

/** The share left of each limit at a draw; all of one that does not hold there. */
export const sharesLeft = ({ limits, direction, quantity }: Judged, draw: number, s: Solution): readonly number[] =>
  limits.map((limit) =>
    holds(limit, s.moment.mode) ? marginOf(direction, quantity, draw, valueAt(limit, s), s.ambient) : Infinity,
  );

/** @param left the share left of each limit */
export const badness = (draw: number, left: readonly number[]): number => (left.length > 0 ? -Math.min(...left) : draw);

/** How bad a question is in a solution; undefined when a figure is missing. */
export function badnessIn(q: Judged, s: Solution): number | undefined {
  const draw = q.read(s);
  return draw === undefined ? undefined : badness(draw, sharesLeft(q, draw, s));
}

/** By who else is on an account comes to no more than so many times as much, or as little: what is further from its worst is not it. */
export const FAR = 1.5;

/** Whether a limit would be passed by so much more, or so much less, than a draw. */
export const mayFail = ({ limits, direction, quantity }: Judged, draw: number, s: Solution): boolean =>
  limits.some((limit) => {
    const far = direction === 'at-least' ? draw / FAR : draw * FAR;
    return holds(limit, s.moment.mode) && marginOf(direction, quantity, far, valueAt(limit, s), s.ambient) < 0;
  });
