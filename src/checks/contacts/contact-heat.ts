/** Protects the output of a solid-state relay from what it turns into heat itself. */
import type { LimitRule } from '../finding.js';

export default {
  name: 'contact-heat',
  family: 'contacts',
  claims: (a) => a.kind === 'contact' && a.quantity === 'temperature',
} satisfies LimitRule;
