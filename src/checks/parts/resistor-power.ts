/** Protects a resistor from its own heat. */
import type { LimitRule } from '../finding.js';

export default {
  name: 'resistor-power',
  family: 'parts',
  claims: (a) => a.kind === 'series' && a.quantity === 'power',
} satisfies LimitRule;
