/** What a supply may give: current by its state and in peaks, power, and the capacitance that it may be asked to charge. */
import type { Figures } from '../loads/figures.js';
import { rating } from '../loads/limits.js';
import type { LimitPlan } from '../loads/plan.js';
import { mostGiven } from './link-figures.js';
import type { TreeNode } from './project.js';

/** The figure that says what a USB port gives, by its state. */
const CURRENT_IN = {
  configured: 'current',
  unconfigured: 'unconfigured-current',
  suspended: 'suspended-current',
} as const;

type Limits = Pick<TreeNode, 'limits' | 'missing' | 'power' | 'chargeable'>;

/** @param id the supply's name @param figures what the project and its profile say of it */
export function supplyLimits(figures: Figures, id: string): Limits {
  const state = figures.word('state') ?? 'configured';
  const key = state === 'unconfigured' || state === 'suspended' ? CURRENT_IN[state] : CURRENT_IN.configured;
  const limit = currentLimit(figures, key);
  return {
    limits: limit ? [limit] : [],
    ...(!limit && { missing: { figure: key, asks: asking(id, key) } }),
    ...besideCurrent(figures),
  };
}

/** Its power and what it may be asked to charge: of any supply, fed by another or not. */
export function besideCurrent(figures: Figures): Pick<TreeNode, 'power' | 'chargeable'> {
  const power = rating(figures, 'power', 'power', { grade: 'operating' });
  const most = rating(figures, 'maximum-capacitance', 'capacitance', { grade: 'characterised' });
  return { ...(power && { power }), ...(most && { chargeable: most }) };
}

const asking = (id: string, key: (typeof CURRENT_IN)[keyof typeof CURRENT_IN]): string =>
  key === 'current'
    ? `what current can the supply ${id} give (its \`current\`)?`
    : `what current does the port ${id} give while it is ${key === 'unconfigured-current' ? 'not configured' : 'suspended'} (its \`${key}\`)?`;

/** What it may give in its state; its peaks are those of a configured one. */
function currentLimit(figures: Figures, key: string): LimitPlan | undefined {
  if (key === 'current') return mostGiven(figures);
  const limit = rating(figures, key, 'current', { grade: 'operating' });
  return limit && { ...limit, condition: `while it is ${key.replace('-current', '')}` };
}
