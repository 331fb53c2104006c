/** What displays share whose LEDs are lit in turns: the resistors before them, and limits that hold for their mean. */
import { closed } from '../quantity/quantity.js';
import { branchSteps } from './branch-working.js';
import { rating } from './limits.js';
import type { Lit } from './lit-limits.js';
import { litLimits } from './lit-limits.js';
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

type About = Pick<AccountPlan, 'id' | 'circuits' | 'path' | 'title'>;

/**
 * What an LED carries while it is lit, held to its peak, and on average to what it may carry for ever.
 *
 * @param told of the LED: whose figure is asked for, and what its sum is @param lit how it is lit @param led the hottest of them
 */
export function ledAccount(
  { figures }: LoadInput,
  about: About,
  told: { readonly name: string; readonly says: string },
  lit: Lit,
  led: (s: Reading) => string,
): AccountPlan {
  const limits = litLimits(figures, lit);
  return {
    ...about,
    kind: 'input',
    direction: 'at-most',
    quantity: 'current',
    recipes: ['draw-most', 'draw-least'],
    read: (s) => s.current(led(s)),
    limits,
    ...(limits.length === 0 && {
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

/** Whatever is lit in turns stays lit should firmware stop in the middle of them: what it bears then is what it bears for ever. */
const forGood = (limit: LimitPlan): LimitPlan => ({ ...limit, margin: 'none', failing: () => 'strain' });

type Stuck = Pick<AccountPlan, 'circuits' | 'path'>;

/** What an LED carries should the scan stop while it is lit; nothing where it is lit all the time. @param id the display */
export function stuckLed(
  { figures, id }: LoadInput,
  base: Stuck,
  name: string,
  share: number,
  led: (s: Reading) => string,
): AccountPlan[] {
  const limit = rating(figures, 'maximum-current', 'current');
  if (limit === undefined || share >= 1) return [];
  return [
    {
      ...base,
      id: `${id}.stuck`,
      kind: 'input',
      title: `${name}, should the scan stop`,
      quantity: 'current',
      direction: 'at-most',
      recipes: ['draw-most', 'draw-least'],
      read: (s) => s.current(led(s)),
      limits: [forGood(limit)],
      steps: (s) => branchSteps(s.branch(led(s)), 'what it carries while it is lit, and then for good'),
    },
  ];
}

/** The same for the heat in a resistor. @param part the resistor that gets hottest */
export function stuckResistor(
  { figures, id }: LoadInput,
  base: Stuck,
  name: string,
  share: number,
  part: (s: Reading) => string,
): AccountPlan[] {
  if (seriesFigure(figures) === undefined || share >= 1) return [];
  const spelled = figures.within('series');
  const limit = resistorBears(figures, name, spelled.says('resistance') ? spelled : undefined);
  const watts = (s: Reading): number => s.current(part(s)) ** 2 * s.ohms(part(s));
  return [
    {
      ...base,
      id: `${id}.stuck`,
      kind: 'series',
      title: `${name}, should the scan stop`,
      quantity: 'power',
      direction: 'at-most',
      recipes: ['draw-most', 'draw-least', 'flooded'],
      read: watts,
      limits: [forGood(limit)],
      steps: (s) => [
        {
          name: 'P',
          says: 'heat in it while it carries, and then for good',
          formula: 'I^2 * R',
          with: { I: [s.current(part(s)), 'A'], R: [s.ohms(part(s)), 'Ω'] },
          gives: [watts(s), 'W'],
        },
      ],
    },
  ];
}
