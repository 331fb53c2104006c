/** Protects the shared supply lines of a port group inside a chip: the sum of its pins, against the sum its data sheet allows. */
import type { LimitRule } from '../finding.js';

export default {
  name: 'group-current',
  family: 'groups',
  claims: (a) => a.kind === 'group',
} satisfies LimitRule;
