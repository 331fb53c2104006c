/** Protects a contact from welding and burning: the current of its load against what it may switch of that kind. */
import type { LimitRule } from '../finding.js';

export default {
  name: 'contact-current',
  family: 'contacts',
  claims: (a) =>
    a.kind === 'contact' && a.quantity === 'current' && a.direction === 'at-most' && !a.id.endsWith('leak'),
} satisfies LimitRule;
