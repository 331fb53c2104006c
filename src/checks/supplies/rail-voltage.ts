/** A chip works only while its rail stands inside its window and above its brown-out level, in bursts and stalls too. */
import type { LimitRule } from '../finding.js';

export default {
  name: 'rail-voltage',
  family: 'supplies',
  claims: (a) => a.quantity === 'voltage' && (a.kind === 'rail' || a.kind === 'inlet' || a.kind === 'supply'),
} satisfies LimitRule;
