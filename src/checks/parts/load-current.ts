/** Protects what a load or input itself carries: an LED, a coupler, a motor whose stall nobody states. */
import type { LimitRule } from '../finding.js';

export default {
  name: 'load-current',
  family: 'parts',
  claims: (a) => a.kind === 'input',
} satisfies LimitRule;
