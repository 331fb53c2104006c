/** Protects a coil from more voltage than it bears for good. */
import type { LimitRule } from '../finding.js';

export default {
  name: 'coil-voltage',
  family: 'coils',
  claims: (a) => a.kind === 'coil' && a.quantity === 'voltage',
} satisfies LimitRule;
