/** Protects a regulator from more input voltage than it bears. */
import type { LimitRule } from '../finding.js';

export default {
  name: 'regulator-input',
  family: 'supplies',
  claims: (a) => a.kind === 'regulator' && a.quantity === 'voltage' && a.direction === 'at-most',
} satisfies LimitRule;
