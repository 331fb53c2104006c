/** Protects a driver from more current than it may switch. */
import type { LimitRule } from '../finding.js';

export default {
  name: 'driver-current',
  family: 'drivers',
  claims: (a) => (a.kind === 'driver' || a.kind === 'array') && a.quantity === 'current',
} satisfies LimitRule;
