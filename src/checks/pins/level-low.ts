/** A line that is low has to be read as low: its highest voltage against what its receiver surely takes for it. */
import type { LimitRule } from '../finding.js';

export default {
  name: 'level-low',
  family: 'pins',
  claims: (a) => a.kind === 'level' && a.quantity === 'voltage' && a.direction === 'at-most',
} satisfies LimitRule;
