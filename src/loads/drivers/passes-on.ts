/** What a coupler passes on, as an account: nothing behind it gets more, whatever it could switch. */
import { branchSteps } from '../branch-working.js';
import type { AccountPlan, LimitPlan, Reading } from '../account-plan.js';
import type { Coupler } from './coupler.js';
import { passedOnSteps } from './coupler.js';
import type { StageAccount } from './stage.js';

/** What the coupler can pass on, held against what is asked of its output: new, and at the end of its life. */
export function passesOn(
  { title, ...base }: StageAccount & { readonly title: string },
  coupler: Coupler,
  led: string,
  able: (s: Reading, aged?: boolean) => number,
): AccountPlan {
  const { origin } = coupler.transfer!;
  const needed = (s: Reading): number => s.current(base.id);
  const limit: LimitPlan = {
    value: needed,
    stated: 'what its output has to carry',
    grade: 'operating',
    isFunction: true,
    margin: 'drive',
    origin,
  };
  return {
    ...base,
    title: `${title}, passed on`,
    quantity: 'current',
    direction: 'at-least',
    recipes: ['drive-worst', 'drive-best'],
    read: able,
    limits: [
      limit,
      {
        ...limit,
        value: (s) => (needed(s) * able(s)) / Math.max(able(s, true), 1e-15),
        stated: 'what its output has to carry, coupler at the end of its life',
        mild: true,
        margin: 'none',
      },
    ],
    steps: (s) => [
      ...branchSteps(s.branch(led), 'current through the coupler’s LED'),
      ...passedOnSteps(coupler, led, s),
    ],
  };
}
