/**
 * Protects what a load drives while the chip that switches it has no supply: its pins are then clamps to a rail at 0 V, and
 * what hangs on them from a live supply may find its way through.
 */
import type { WiringRule } from '../finding.js';
import { startFindings } from './at-boot.js';

export default {
  name: 'dead-drives',
  family: 'boot',
  find: (judged) =>
    startFindings(
      judged,
      'dead-drives',
      ({ plan, boot }) => {
        if (boot.does === 'off') return undefined;
        const safe = plan.purpose?.safeWhen;
        if (safe === undefined) return 'note';
        if (boot.does === 'open') return 'strain';
        return (safe === 'load-running') === (plan.purpose?.runs !== 'off') ? undefined : 'breach';
      },
      judged.dead,
    ),
} satisfies WiringRule;
