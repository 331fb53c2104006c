/** Protects the junction of a regulator from the heat of what it drops. */
import type { LimitRule } from '../finding.js';

export default {
  name: 'regulator-heat',
  family: 'supplies',
  claims: (a) => a.kind === 'regulator' && a.quantity === 'temperature',
} satisfies LimitRule;
