/** Protects the junction of a driver or array from its own heat. */
import type { LimitRule } from '../finding.js';

export default {
  name: 'driver-heat',
  family: 'drivers',
  claims: (a) => (a.kind === 'driver' || a.kind === 'array') && a.quantity === 'temperature',
} satisfies LimitRule;
