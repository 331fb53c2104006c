/** Protects a supply whose rating is in watts: what everything on it takes together, peaks counted. */
import type { LimitRule } from '../finding.js';

export default {
  name: 'supply-power',
  family: 'supplies',
  claims: (a) => a.kind === 'supply' && a.quantity === 'power',
} satisfies LimitRule;
