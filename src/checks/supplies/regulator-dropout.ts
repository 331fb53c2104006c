/** A linear regulator keeps its voltage only while its input is far enough above it. */
import type { LimitRule } from '../finding.js';

export default {
  name: 'regulator-dropout',
  family: 'supplies',
  claims: (a) => a.kind === 'regulator' && a.quantity === 'voltage' && a.title.endsWith(', regulation'),
} satisfies LimitRule;
