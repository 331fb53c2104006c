/** Protects what a display shows: LEDs that are not lit glow where two of them in series drop no more than the one that is. */
import type { LimitRule } from '../finding.js';

export default {
  name: 'leds-glow',
  family: 'parts',
  claims: (a) => a.kind === 'input' && a.quantity === 'voltage' && a.id.endsWith('.unlit'),
} satisfies LimitRule;
