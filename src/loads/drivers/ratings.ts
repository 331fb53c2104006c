/** What every driver is rated for: the current it carries and the voltage it bears when off. */
import { branchSteps } from '../branch-working.js';
import type { AccountPlan, LimitPlan } from '../plan.js';

type Base = Pick<AccountPlan, 'id' | 'kind' | 'circuits' | 'path' | 'off' | 'loads'>;

/** The load's current through the driver, held against the highest it may carry. @param load the part that names the load */
export function carriedCurrent(
  base: Base,
  circuit: string,
  load: string,
  maximum: LimitPlan | undefined,
  title = `driver of ${circuit}`,
): AccountPlan {
  return {
    ...base,
    title,
    quantity: 'current',
    direction: 'at-most',
    recipes: ['draw-most', 'draw-least'],
    peaks: true,
    read: (s) => s.current(load),
    limits: maximum ? [maximum] : [],
    books: [{ circuit, part: load }],
    ...(!maximum && {
      missing: {
        figure: 'maximum-current',
        asks: `what current may the ${title} carry (its \`maximum-current\`)?`,
      },
    }),
    steps: (s) => branchSteps(s.branch(load), 'the load’s current goes through it', 'I_load'),
  };
}

/** The supply's voltage, which stands across a driver that is off. @param supply node of the load's supply */
export function offVoltage(
  base: Base,
  circuit: string,
  supply: string,
  maximum: LimitPlan,
  title = `driver of ${circuit}`,
): AccountPlan {
  return {
    ...base,
    title: `${title}, voltage when off`,
    quantity: 'voltage',
    direction: 'at-most',
    recipes: ['lightest', 'starved'],
    read: (s) => s.voltage(supply),
    limits: [maximum],
    steps: (s) => [
      {
        name: 'V',
        says: 'switched off, it bears the supply',
        formula: 'V',
        with: { V: [s.voltage(supply), 'V'] },
        gives: [s.voltage(supply), 'V'],
      },
    ],
  };
}
