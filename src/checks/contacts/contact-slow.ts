/**
 * Protects a contact that opens slowly: a plain diode keeps the coil's current going for long, the armature leaves with little
 * force, and an arc or a weld has time. Source: "The application of relay coil suppression with DC relays", TE Connectivity
 * (13C3311), which tells of normally open contacts that weld, and asks for a zener in series with the diode where loads are inductive or
 * lamps; "Coil suppression can reduce relay life", TE Connectivity (13C3264).
 */
import { releaseTime } from '../../circuit/release.js';
import type { Step } from '../../loads/account-plan.js';
import type { ContactSide } from '../../loads/circuit-plan.js';
import { formatValue } from '../../quantity/print.js';
import type { Finding, Judged, WiringRule } from '../finding.js';

/** Zeners that may go in series with the diode, volts: makers take 24, and less where the driver bears no more. */
const ZENERS = [24, 18, 12, 9.1, 6.2];
/** Their tolerance. */
const MOST = 1.05;
/** It is worth a part when it is so many times as fast. */
const WORTH = 2;

/** It arcs no more than a heater does: with a diode across it a load on direct voltage is broken like one. */
const breaksPlainly = ({ kind, waveform, suppression }: ContactSide): boolean =>
  kind === 'resistive' ||
  (kind === 'inductive' && waveform === 'DC' && suppression?.type === 'diode' && suppression.across === 'load');

function find({ ledger, accounts }: Judged): Finding[] {
  return ledger.project.circuits.flatMap(({ id, type, contact, path }): Finding[] => {
    // What is on a board stays on it.
    if (type !== 'coil' || contact === undefined) return [];
    // A coil that lets go opens its normally open contact; the normally closed one it opens when it is switched on.
    const opens = [contact, ...(contact.other ? [contact.other] : [])].find((side) => side.wired === 'normally-open');
    if (opens === undefined || breaksPlainly(opens)) return [];
    const clamp = accounts.find(
      ({ account: a }) => a.kind === 'clamp' && a.id === `${id}.clamp` && a.quantity === 'current',
    );
    const slow = clamp?.account.steps().find((s) => s.name === 't_release');
    if (slow === undefined) return [];
    const of = (symbol: string): number => slow.with[symbol]![0];
    const bears = accounts.find(
      ({ account: a }) => a.id === `${id}.driver` && a.quantity === 'voltage' && a.direction === 'at-most',
    )?.by;
    const zener = ZENERS.find((volts) => bears === undefined || bears.draw + MOST * volts <= bears.value);
    if (zener === undefined) return [];
    const fast = releaseTime(of('L'), of('R'), of('I'), of('I_release'), of('V_clamp') + zener);
    if (slow.gives[0] < WORTH * fast) return [];
    const faster: Step = {
      ...slow,
      name: 't_zener',
      says: `the same with a zener of ${zener} V in series with the diode`,
      with: { ...slow.with, V_clamp: [of('V_clamp') + zener, 'V'] },
      gives: [fast, 's'],
    };
    const names = {
      kind: opens.kind,
      slow: formatValue(slow.gives[0], 'time', 2),
      fast: formatValue(fast, 'time', 2),
      zener: `${zener} V`,
      ...(bears && {
        bears: `${formatValue(bears.draw + MOST * zener, 'voltage')} of ${formatValue(bears.value, 'voltage')}`,
      }),
    };
    return [
      {
        rule: 'contact-slow',
        family: 'contacts',
        verdict: 'note',
        about: id,
        path,
        names,
        related: [],
        steps: [slow, faster],
      },
    ];
  });
}

export default { name: 'contact-slow', family: 'contacts', find } satisfies WiringRule;
