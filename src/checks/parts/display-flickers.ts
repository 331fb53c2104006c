/** A display whose digits take turns flickers when they come round too seldom. */
import type { LimitRule } from '../finding.js';

export default {
  name: 'display-flickers',
  family: 'parts',
  claims: (a) => a.kind === 'input' && a.quantity === 'time',
} satisfies LimitRule;
