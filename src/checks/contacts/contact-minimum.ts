/** Protects the load's own working: too little current does not keep a contact clean. */
import type { LimitRule } from '../finding.js';

export default {
  name: 'contact-minimum',
  family: 'contacts',
  claims: (a) => a.kind === 'contact' && a.direction === 'at-least' && a.quantity !== 'time',
} satisfies LimitRule;
