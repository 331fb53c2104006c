/** A load that bears only so much of a dip works on through the stalls and bursts of what shares its supply. */
import type { LimitRule } from '../finding.js';

export default {
  name: 'load-dip',
  family: 'supplies',
  claims: (a) => a.kind === 'input' && a.quantity === 'voltage' && a.title.endsWith(', dip'),
} satisfies LimitRule;
