/** Protects a regulator from more current than it is rated for. */
import type { LimitRule } from '../finding.js';

export default {
  name: 'regulator-current',
  family: 'supplies',
  claims: (a) => a.kind === 'regulator' && a.quantity === 'current',
} satisfies LimitRule;
