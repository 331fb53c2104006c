/** Protects a supply, and whoever relies on it: what everything on it takes together, peaks counted. */
import type { LimitRule } from '../finding.js';

export default {
  name: 'supply-current',
  family: 'supplies',
  claims: (a) => a.kind === 'supply' && a.quantity === 'current',
} satisfies LimitRule;
