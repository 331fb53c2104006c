/** A driver has to let go: what it still lets through when its load is switched off is next to nothing. Coils have their own rule. */
import type { LimitRule } from '../finding.js';

export default {
  name: 'driver-release',
  family: 'drivers',
  claims: (a) => a.kind === 'driver' && a.id.endsWith('.off'),
} satisfies LimitRule;
