/** A bus line has to be pulled down by whoever speaks: all its pull-ups together may give no more than a device sinks. */
import type { LimitRule } from '../finding.js';

export default {
  name: 'bus-current',
  family: 'pins',
  claims: (a) => a.kind === 'level' && a.quantity === 'current',
} satisfies LimitRule;
