/** A battery has to last as long as it is wanted to. */
import type { LimitRule } from '../finding.js';

export default {
  name: 'battery-life',
  family: 'budget',
  claims: (a) => a.kind === 'battery' && a.quantity === 'time',
} satisfies LimitRule;
