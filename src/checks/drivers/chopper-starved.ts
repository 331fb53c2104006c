/** A chopper holds its current only as long as the supply could drive more than that through a winding. */
import type { LimitRule } from '../finding.js';

export default {
  name: 'chopper-starved',
  family: 'drivers',
  claims: (a) =>
    a.kind === 'coil' && a.quantity === 'current' && a.direction === 'at-least' && a.id.endsWith('.windings'),
} satisfies LimitRule;
