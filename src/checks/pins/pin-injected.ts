/** Protects a pin's clamps, and the chip behind them, from what is pushed in beyond its supply or below ground. */
import type { LimitRule } from '../finding.js';

export default {
  name: 'pin-injected',
  family: 'pins',
  claims: (a) => a.kind === 'pin' && a.direction === 'injected',
} satisfies LimitRule;
