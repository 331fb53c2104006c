/** Protects what takes a load's kick over when its contact opens, and the contact from what that lets stand across it. */
import type { LimitRule } from '../finding.js';

export default {
  name: 'contact-suppression',
  family: 'contacts',
  claims: (a) =>
    a.kind === 'contact' &&
    (a.id.endsWith('suppression') ||
      (a.quantity === 'voltage' && a.direction === 'at-most' && a.id.endsWith('contact'))),
} satisfies LimitRule;
