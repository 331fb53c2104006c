/** Protects the clamp across a winding: the current it takes over, the voltage it bears. */
import type { LimitRule } from '../finding.js';

export default {
  name: 'clamp-rating',
  family: 'coils',
  claims: (a) => a.kind === 'clamp',
} satisfies LimitRule;
