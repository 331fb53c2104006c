/** Protects the winding of a coil from its own heat. */
import type { LimitRule } from '../finding.js';

export default {
  name: 'coil-heat',
  family: 'coils',
  claims: (a) => a.kind === 'coil' && a.quantity === 'temperature',
} satisfies LimitRule;
