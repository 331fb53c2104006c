/**
 * Protects what a load drives while the chip that switches it has no supply: its pins are then clamps to a rail at 0 V, and
 * what hangs on them from a live supply may find its way through.
 */
import type { WiringRule } from '../finding.js';
import { careOf, startFindings } from './at-boot.js';

export default {
  name: 'dead-drives',
  family: 'boot',
  find: (judged) =>
    startFindings(
      judged,
      'dead-drives',
      ({ plan, boot }) => {
        if (boot.does === 'off') return undefined;
        const { safe, runsOn } = careOf(plan);
        if (safe === undefined) return 'note';
        if (boot.does === 'open') return 'strain';
        return (safe === 'load-running') === runsOn ? undefined : 'breach';
      },
      judged.dead,
    ),
} satisfies WiringRule;
