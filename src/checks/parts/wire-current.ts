/** Protects a wire and its plugs from more current than they bear. */
import type { LimitRule } from '../finding.js';

export default {
  name: 'wire-current',
  family: 'parts',
  claims: (a) => a.kind === 'wire',
} satisfies LimitRule;
