/** What a supply may give: current by its state and in peaks, power, and the capacitance that it may be asked to charge. */
import type { Figures } from '../loads/figures.js';
import { rating } from '../loads/limits.js';
import type { LimitPlan } from '../loads/account-plan.js';
import { mostGiven } from './link-figures.js';
import type { TreeNode } from './tree-plan.js';
import type { SupplyState } from './supply-states.js';

/** The figure that says what a USB port gives, by its state. */
const CURRENT_IN = {
  configured: 'current',
  unconfigured: 'unconfigured-current',
  suspended: 'suspended-current',
} as const;

type Limits = Pick<TreeNode, 'limits' | 'missing' | 'power' | 'chargeable'>;

/**
 * @param id the supply's name @param figures what the project and its profile say of it
 * @param byMode its state in the modes that say one; else it is in its own @param starts the modes in which no firmware runs yet
 */
export function supplyLimits(
  figures: Figures,
  id: string,
  {
    byMode = new Map(),
    starts,
  }: { readonly byMode?: ReadonlyMap<string, SupplyState> | undefined; readonly starts: ReadonlySet<string> },
): Limits {
  const own = (figures.word('state') ?? 'configured') as SupplyState;
  const others = new Set([...byMode.values()].filter((state) => state !== own));
  const limit = currentLimit(figures, CURRENT_IN[own]);
  const elsewhere = [...others].map((state): LimitPlan => ({
    ...(currentLimit(figures, CURRENT_IN[state]) ?? unknownIn(id, state)),
    holdsIn: (mode) => byMode.get(mode) === state,
  }));
  const usual = (mode: string): boolean => (byMode.get(mode) ?? own) === own;
  // Nobody has configured a port before firmware runs; where more is drawn, most ports give it all the same (rule 22).
  const unasked = figures.word('state') === undefined ? currentLimit(figures, CURRENT_IN.unconfigured) : undefined;
  const atStart: LimitPlan[] = unasked
    ? [
        {
          ...unasked,
          margin: 'none',
          failing: () => 'note',
          holdsIn: (mode) => starts.has(mode) && !byMode.has(mode),
        },
      ]
    : [];
  return {
    limits: [...atStart, ...(limit ? [others.size > 0 ? { ...limit, holdsIn: usual } : limit] : []), ...elsewhere],
    ...(!limit && { missing: { figure: CURRENT_IN[own], asks: asking(id, own) } }),
    ...besideCurrent(figures),
  };
}

/** What a port gives in a state of which nobody states it: whatever is drawn then is unproven. */
const unknownIn = (id: string, state: SupplyState): LimitPlan => ({
  value: 0,
  stated: 'nobody states it',
  grade: 'operating',
  margin: 'none',
  condition: `while it is ${state}`,
  asks: asking(id, state),
});

const asking = (id: string, state: SupplyState): string =>
  state === 'configured'
    ? `what current can the supply ${id} give (its \`current\`)?`
    : `what current does the port ${id} give while it is ${state === 'unconfigured' ? 'not configured' : 'suspended'} (its \`${CURRENT_IN[state]}\`)?`;

/** What it may give in its state; its peaks are those of a configured one. */
function currentLimit(figures: Figures, key: string): LimitPlan | undefined {
  if (key === 'current') return mostGiven(figures);
  const limit = rating(figures, key, 'current', { grade: 'operating' });
  return limit && { ...limit, condition: `while it is ${key.replace('-current', '')}` };
}

/** Its power and what it may be asked to charge: of any supply, fed by another or not. */
export function besideCurrent(figures: Figures): Pick<TreeNode, 'power' | 'chargeable'> {
  const power = rating(figures, 'power', 'power', { grade: 'operating' });
  const most = rating(figures, 'maximum-capacitance', 'capacitance', { grade: 'characterised' });
  return { ...(power && { power }), ...(most && { chargeable: most }) };
}
