/** Whoever reads a line may stand on a lower supply than the line: what he bears beyond it has to be known. */
import type { LimitRule } from '../finding.js';

export default {
  name: 'level-over',
  family: 'pins',
  claims: (a) => a.kind === 'level' && a.direction === 'injected',
} satisfies LimitRule;
