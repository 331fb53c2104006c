/** Protects the oxide of a gate, which any voltage above its rating breaks down for good. */
import type { LimitRule } from '../finding.js';

export default {
  name: 'gate-voltage',
  family: 'drivers',
  claims: (a) => a.kind === 'driver' && a.id.endsWith('.gate'),
} satisfies LimitRule;
