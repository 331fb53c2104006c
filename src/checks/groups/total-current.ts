/** Protects the supply and ground pins of a chip: all that its pins carry together, and what the chip draws itself. */
import type { LimitRule } from '../finding.js';

export default {
  name: 'total-current',
  family: 'groups',
  claims: (a) => a.kind === 'total',
} satisfies LimitRule;
