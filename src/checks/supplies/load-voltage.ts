/** A load works only inside its window of supply voltages, held against what reaches its own terminals; a motor has to start. */
import type { LimitRule } from '../finding.js';

export default {
  name: 'load-voltage',
  family: 'supplies',
  claims: (a) => a.kind === 'input' && a.quantity === 'voltage',
} satisfies LimitRule;
