/** A load has to get the current that does its job. */
import type { LimitRule } from '../finding.js';

export default {
  name: 'load-needs',
  family: 'parts',
  claims: (a) => a.kind === 'input' && a.quantity === 'current' && a.direction === 'at-least',
} satisfies LimitRule;
