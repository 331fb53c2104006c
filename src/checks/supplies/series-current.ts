/** Protects a diode in the way of a supply. */
import type { LimitRule } from '../finding.js';

export default {
  name: 'series-current',
  family: 'supplies',
  claims: (a) => a.kind === 'series' && a.quantity === 'current',
} satisfies LimitRule;
