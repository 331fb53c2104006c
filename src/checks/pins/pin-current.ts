/** Protects an output pin: its current in each direction, against each grade its data sheet states. */
import type { LimitRule } from '../finding.js';

export default {
  name: 'pin-current',
  family: 'pins',
  claims: (a) => a.kind === 'pin',
} satisfies LimitRule;
