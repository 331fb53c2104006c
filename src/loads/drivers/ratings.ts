/** What every driver is rated for: the current it carries and the voltage it bears when off. */
import { branchSteps } from '../branch-working.js';
import type { Figures } from '../figures.js';
import { rating } from '../limits.js';
import type { AccountPlan, LimitPlan, Reading } from '../account-plan.js';

type Base = Pick<AccountPlan, 'id' | 'kind' | 'circuits' | 'path' | 'off' | 'loads'>;

/** What a driver may carry: for ever, and in peaks where that is stated apart. */
export interface Carries {
  readonly lasting?: LimitPlan;
  readonly peak?: LimitPlan;
}

export function carriesOf(figures: Figures): Carries {
  const lasting = rating(figures, 'maximum-current', 'current');
  const peak = rating(figures, 'peak-current', 'current');
  return { ...(lasting && { lasting }), ...(peak && { peak }) };
}

/** The load's current through the driver, held against the highest it may carry. @param load the part that names the load */
export function carriedCurrent(
  base: Base,
  circuit: string,
  load: string,
  { lasting, peak }: Carries,
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
    limits: [...(lasting ? [peak ? whileSustained(lasting, load) : lasting] : []), ...(peak ? [peak] : [])],
    books: [{ circuit, part: load }],
    ...(!lasting && {
      missing: {
        figure: 'maximum-current',
        asks: `what current may the ${title} carry (its \`maximum-current\`)?`,
      },
    }),
    steps: (s) => branchSteps(s.branch(load), 'the load’s current goes through it', 'I_load'),
  };
}

/** A rating for ever beside one for peaks: it holds for what is left of the current when the peak is over. */
function whileSustained(limit: LimitPlan, load: string): LimitPlan {
  const { value } = limit;
  const rises = (s: Reading): number => {
    const taken = s.branch(load)?.members.find(({ member }) => member.kind === 'current')?.member;
    return s.peak && taken?.kind === 'current' && taken.peak !== undefined && taken.amps.max > 0
      ? taken.peak / taken.amps.max
      : 1;
  };
  return {
    ...limit,
    value: (s) => (typeof value === 'number' ? value : value(s)) * rises(s),
    stated: `${limit.stated} for ever`,
    condition: 'for what the load takes when its peak is over, as a share of its peak',
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
