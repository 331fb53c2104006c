/** Protects whoever counts on a contact for years: how many operations it is good for, over how many it is asked for. */
import type { LimitRule } from '../finding.js';

export default {
  name: 'contact-life',
  family: 'contacts',
  claims: (a) => a.kind === 'contact' && a.quantity === 'time',
} satisfies LimitRule;
