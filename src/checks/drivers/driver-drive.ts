/** A driver has to be driven hard enough: base or input current for the load at the least gain, gate voltage where its resistance is specified. */
import type { LimitRule } from '../finding.js';

export default {
  name: 'driver-drive',
  family: 'drivers',
  claims: (a) => (a.kind === 'driver' || a.kind === 'array') && a.direction === 'at-least',
} satisfies LimitRule;
