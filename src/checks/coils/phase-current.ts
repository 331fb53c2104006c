/** Protects the winding of a stepper from more current than it is rated for. */
import type { LimitRule } from '../finding.js';

export default {
  name: 'phase-current',
  family: 'coils',
  claims: (a) => a.kind === 'coil' && a.quantity === 'current' && a.direction === 'at-most' && ofWindings(a.id),
} satisfies LimitRule;

const ofWindings = (id: string): boolean => id.endsWith('.windings');
