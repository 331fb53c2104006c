/** Protects the load's own working: the contact and all before it leave it the voltage that it works on. */
import type { LimitRule } from '../finding.js';

export default {
  name: 'contact-drop',
  family: 'contacts',
  claims: (a) =>
    a.kind === 'contact' &&
    (a.id.endsWith('contact-resistance') || (a.quantity === 'voltage' && a.id.endsWith('load'))),
} satisfies LimitRule;
