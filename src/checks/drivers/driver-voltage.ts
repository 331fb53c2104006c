/** Protects a driver from more voltage than it bears while it is off. */
import type { LimitRule } from '../finding.js';

export default {
  name: 'driver-voltage',
  family: 'drivers',
  claims: (a) => (a.kind === 'driver' || a.kind === 'array') && a.quantity === 'voltage',
} satisfies LimitRule;
