/** A coil has to let go: what still flows when it is switched off stays below its drop-out current. */
import type { LimitRule } from '../finding.js';

export default {
  name: 'coil-release',
  family: 'coils',
  claims: (a) => a.kind === 'coil' && a.quantity === 'current',
} satisfies LimitRule;
