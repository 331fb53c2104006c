/** What displays share whose LEDs are lit in turns: the resistors before them, and limits that hold for their mean. */
import { closed } from '../quantity/quantity.js';
import { branchSteps } from './branch-working.js';
import { rating } from './limits.js';
import type { LoadInput } from './lowering.js';
import type { AccountPlan, LimitPlan, Reading, Step } from './account-plan.js';
import type { Member } from './branch-plan.js';
import { resistorBears } from './resistor-power.js';
import { seriesFigure } from './series.js';

/** A lead, ohms: next to nothing, but a node needs a resistance to be solved. */
const LEAD = { min: 1e-3, typ: 1e-3, max: 1e-3 };
export const leadMember = (part: string): Member => ({ kind: 'resistance', part, ohms: LEAD });

/** The resistor before each LED, or at each pin; none where nobody fitted one. */
export function resistorMember({ figures }: LoadInput, part: string): Member | undefined {
  const figure = seriesFigure(figures);
  return figure && { kind: 'resistance', part, ohms: closed(figure.quantity), origin: figure.origin };
}

/** A limit for ever, for something that is lit a share of the time: its mean current counts. */
function averaged(limit: LimitPlan, share: number): LimitPlan {
  if (share >= 1) return limit;
  const { value } = limit;
  return {
    ...limit,
    value: typeof value === 'number' ? value / share : (s) => value(s) / share,
    condition: `${limit.stated} for ever; lit ${Math.round(share * 1000) / 10} % of the time`,
  };
}

type About = Pick<AccountPlan, 'id' | 'circuits' | 'path' | 'title'>;

/**
 * What an LED carries while it is lit, held to its peak, and on average to what it may carry for ever.
 *
 * @param told of the LED: whose figure is asked for, and what its sum is @param share of the time in which it is lit
 * @param led the hottest of them
 */
export function ledAccount(
  { figures }: LoadInput,
  about: About,
  told: { readonly name: string; readonly says: string },
  share: number,
  led: (s: Reading) => string,
): AccountPlan {
  const mean = rating(figures, 'maximum-current', 'current');
  const peak = rating(figures, 'peak-current', 'current');
  return {
    ...about,
    kind: 'input',
    direction: 'at-most',
    quantity: 'current',
    recipes: ['draw-most', 'draw-least'],
    read: (s) => s.current(led(s)),
    limits: [...(mean ? [averaged(mean, share)] : []), ...(peak ? [peak] : [])],
    ...(!mean && {
      missing: {
        figure: 'maximum-current',
        asks: `what current may ${told.name} carry for ever (its \`maximum-current\`)?`,
      },
    }),
    steps: (s) => branchSteps(s.branch(led(s)), told.says),
  };
}

/** Heat in a resistor of the display on average over the turns; none where nobody fitted one. @param heat its sum */
export function resistorHeat(
  { figures }: LoadInput,
  about: About,
  name: string,
  heat: (s: Reading) => Step,
): AccountPlan[] {
  if (seriesFigure(figures) === undefined) return [];
  const spelled = figures.within('series');
  return [
    {
      ...about,
      kind: 'series',
      direction: 'at-most',
      quantity: 'power',
      recipes: ['draw-most', 'draw-least', 'flooded'],
      read: (s) => heat(s).gives[0],
      limits: [resistorBears(figures, name, spelled.says('resistance') ? spelled : undefined)],
      steps: (s) => [heat(s)],
    },
  ];
}
