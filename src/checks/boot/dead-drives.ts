/**
 * Protects what a load drives while the chip that switches it has no supply: its pins are then clamps to a rail at 0 V, and
 * what hangs on them from a live supply may find its way through.
 */
import type { WhileDead } from '../../ledger/without.js';
import type { WiringRule } from '../finding.js';
import { careOf, startFindings } from './at-boot.js';

/** Whether fewer dead supplies bring about the same. */
const isLess = (other: WhileDead, than: WhileDead): boolean =>
  other.circuit === than.circuit &&
  other.does === than.does &&
  other.dead.length < than.dead.length &&
  other.dead.every((supply) => than.dead.includes(supply));

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
      judged.dead.filter((d) => !judged.dead.some((other) => isLess(other, d))),
    ),
} satisfies WiringRule;
