/** Protects a chip, or one of its pins, from the heat of its output stages and its own current. */
import type { LimitRule } from '../finding.js';

export default {
  name: 'chip-heat',
  family: 'groups',
  claims: (a) => a.quantity === 'power' && (a.kind === 'pin' || a.kind === 'group' || a.kind === 'total'),
} satisfies LimitRule;
