/** A clamp has to block again before the next pulse: a slow one shorts the supply through its switch at every pulse. */
import type { LimitRule } from '../finding.js';

export default {
  name: 'slow-clamp',
  family: 'parts',
  claims: (a) => a.kind === 'clamp' && a.quantity === 'time',
} satisfies LimitRule;
