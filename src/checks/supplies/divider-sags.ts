/** A divider is no supply: its voltage falls with what hangs on it. */
import type { LimitRule } from '../finding.js';

export default {
  name: 'divider-sags',
  family: 'supplies',
  claims: (a) => a.kind === 'series' && a.quantity === 'voltage',
} satisfies LimitRule;
