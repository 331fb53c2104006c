/** A resettable fuse has to hold: it holds less the warmer it is. */
import type { LimitRule } from '../finding.js';

export default {
  name: 'fuse-holds',
  family: 'supplies',
  claims: (a) => a.kind === 'fuse',
} satisfies LimitRule;
