/** A coil that has pulled in has to stay so on what flows in it for good. */
import type { LimitRule } from '../finding.js';

export default {
  name: 'coil-holds',
  family: 'coils',
  claims: (a) => a.kind === 'coil' && a.direction === 'at-least' && a.quantity === 'current',
} satisfies LimitRule;
