/** A coil has to pull in at the lowest voltage and the highest temperature, cold and after its own heat. */
import type { LimitRule } from '../finding.js';

export default {
  name: 'coil-pull-in',
  family: 'coils',
  claims: (a) => a.kind === 'coil' && a.direction === 'at-least',
} satisfies LimitRule;
