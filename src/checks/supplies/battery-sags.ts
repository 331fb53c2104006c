/** A tiny cell that is asked for a burst falls below its end voltage, though most of its charge is still there. */
import type { LimitRule } from '../finding.js';

export default {
  name: 'battery-sags',
  family: 'supplies',
  claims: (a) => a.kind === 'battery' && a.quantity === 'voltage',
} satisfies LimitRule;
