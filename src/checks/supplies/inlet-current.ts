/** Protects the connector where power enters a board. */
import type { LimitRule } from '../finding.js';

export default {
  name: 'inlet-current',
  family: 'supplies',
  claims: (a) => a.kind === 'inlet' && a.quantity === 'current',
} satisfies LimitRule;
