/** Protects whoever takes a load for off: what gets through an open contact keeps a small load on. */
import type { LimitRule } from '../finding.js';

export default {
  name: 'contact-leak',
  family: 'contacts',
  claims: (a) => a.kind === 'contact' && a.quantity === 'current' && a.id.endsWith('leak'),
} satisfies LimitRule;
