/** A divider that a load hangs on gives way to a linear regulator for the same voltage. */
import { isMapping } from '../loads/figures.js';
import type { Way } from './cures.js';
import { entryOf } from './entries.js';

/** Voltages that fixed regulators are sold for, volts (common practice, no source). */
const FIXED = [1.2, 1.5, 1.8, 2.5, 2.8, 3, 3.3, 5, 6, 8, 9, 10, 12, 15];
/** A fixed regulator stands in for a divider that is no further from it than this. */
const NEAR = 0.1;
/** What a small one needs over its output, volts: the usual kind first, then one that is made to need little. */
const DROPOUTS = [1.2, 0.4];
/** Least that small ones are sold for. */
const AMPS = '100 mA';

export const regulatorForDivider: Way = ({ finding, judgement, data }) => {
  if (finding.rule !== 'divider-sags') return [];
  const id = finding.about;
  const link = judgement.project.links.find((l) => l.id === id);
  const from = entryOf(data, 'supplies', id)?.['from'];
  if (link?.divides === undefined || typeof from !== 'string' || !isMapping(data)) return [];
  const source = judgement.ledger.solver.circuitry.open[judgement.ledger.solver.circuitry.nodeIndex.get(link.from)!];
  if (source === undefined) return [];
  const open = (source.typ * link.divides.typ) / (link.divides.typ + link.ohms!.typ);
  const volts = FIXED.find((fixed) => Math.abs(fixed - open) <= NEAR * fixed);
  if (volts === undefined) return [];
  return DROPOUTS.filter((needs) => source.min - needs >= volts).map((needs) => ({
    title: `Put a linear regulator for ${volts} V in place of the divider ${id}`,
    changes: [
      {
        path: ['supplies', id],
        value: { from, type: 'linear-regulator', voltage: `${volts} V ±2 %`, current: AMPS, dropout: `${needs} V` },
      },
    ],
    parts: [
      `a linear regulator for ${volts} V, ${AMPS}, that needs no more than ${needs} V over its output, with the capacitors of its data sheet`,
    ],
    steps: [
      `Take the two resistors of ${id} out.`,
      `Put the regulator between ${from} and what hangs on ${id}, its capacitors close to it.`,
    ],
    watch: [id],
  }));
};
