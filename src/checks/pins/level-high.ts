/** A line that is high has to be read as high: its lowest voltage against what its receiver surely takes for it. */
import type { LimitRule } from '../finding.js';

export default {
  name: 'level-high',
  family: 'pins',
  claims: (a) => a.kind === 'level' && a.quantity === 'voltage' && a.direction === 'at-least',
} satisfies LimitRule;
