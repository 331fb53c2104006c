/** An input has to turn off with what its pin leaves it: a pin that is high below its supply may keep it half on. */
import type { LimitRule } from '../finding.js';

export default {
  name: 'input-release',
  family: 'parts',
  claims: (a) => a.kind === 'input' && a.id.endsWith('.release'),
} satisfies LimitRule;
