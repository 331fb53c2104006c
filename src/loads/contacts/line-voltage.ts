/** The voltage of what feeds a load on a contact, at its highest. */
import type { Reading, Step } from '../account-plan.js';
import type { Contact } from './contact.js';

/** The mains may stand so much above its nominal voltage (EN 50160, 230 V ±10 %). */
const HIGH_LINE = 1.1;
export const ROOT = Math.SQRT2;

/** Volts of the load's supply at their highest: root mean square of an alternating one. */
export const highest =
  ({ load }: Contact) =>
  (s: Reading): number =>
    s.voltage(load.node) * (load.waveform === 'AC' && load.exact && !s.typical ? HIGH_LINE : 1);

export function highestStep(contact: Contact, s: Reading): Step {
  const { load } = contact;
  const V = [s.voltage(load.node), 'V'] as const;
  const gives = [highest(contact)(s), 'V'] as const;
  return gives[0] === V[0]
    ? { name: 'V_line', says: 'what stands across it', formula: 'V', with: { V }, gives }
    : {
        name: 'V_line',
        says: 'what stands across it where the mains is a tenth above its nominal voltage',
        formula: 'V * x',
        with: { V, x: [HIGH_LINE, ''] },
        gives,
      };
}
