/** A bus line that is let go has to rise in time: its pull-ups together must not be too weak, or missing. */
import type { LimitRule } from '../finding.js';

export default {
  name: 'bus-rise',
  family: 'pins',
  claims: (a) => a.kind === 'level' && a.quantity === 'time',
} satisfies LimitRule;
