/** A regulator needs a least input; a switching one pulls its source down for good when that cannot give the power. */
import type { LimitRule } from '../finding.js';

export default {
  name: 'regulator-starved',
  family: 'supplies',
  claims: (a) =>
    a.kind === 'regulator' && a.quantity === 'voltage' && a.direction === 'at-least' && a.title.endsWith(', input'),
} satisfies LimitRule;
