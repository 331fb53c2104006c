/** Protects a rail for which its board states a limit. */
import type { LimitRule } from '../finding.js';

export default {
  name: 'rail-current',
  family: 'supplies',
  claims: (a) => a.kind === 'rail' && a.quantity === 'current',
} satisfies LimitRule;
