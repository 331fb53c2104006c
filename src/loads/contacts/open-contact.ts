/**
 * What gets through a contact that is open: the leakage of a solid-state relay, and what a capacitor across a contact passes of
 * an alternating voltage. A small load does not notice that it is off.
 */
import { throughCapacitor } from '../../circuit/contact.js';
import { closed } from '../../quantity/quantity.js';
import type { AccountPlan, Step } from '../account-plan.js';
import type { Member } from '../branch-plan.js';
import type { Contact, ContactBase } from './contact.js';

/** Mains frequency, hertz: the higher of the two lets more through. */
const HERTZ = 60;
/** A load is off with so much of what it takes (common practice, no source). */
const SURELY_OFF = 0.1;

/** Amperes through the open contact, and how they come about. */
function leakOf({
  load,
  input,
  suppression,
}: Contact): { readonly amps: number; readonly capacitor?: number } | undefined {
  const output = input.type === 'solid-state-relay' ? input.relay.figure('leakage', 'current') : undefined;
  const farads =
    suppression?.across === 'contact' && load.waveform === 'AC'
      ? suppression.figures.interval('capacitance', 'capacitance')?.max
      : undefined;
  const passed = farads === undefined ? 0 : throughCapacitor(farads, load.volts, HERTZ);
  const leaks = output ? closed(output.quantity).max : 0;
  if (passed + leaks <= 0) return undefined;
  return { amps: passed + leaks, ...(farads !== undefined && { capacitor: farads }) };
}

/** What an open contact lets through, as a branch's member. */
export function openLeak(contact: Contact): Member | undefined {
  const leak = leakOf(contact);
  return (
    leak && {
      kind: 'current',
      part: contact.named('leak'),
      amps: { min: 0, typ: leak.amps, max: leak.amps },
    }
  );
}

/** Whether the load is off when its contact is open. */
export function openAccounts(base: ContactBase, contact: Contact): AccountPlan[] {
  const { circuit, load, side, named, title } = contact;
  const leak = leakOf(contact);
  if (leak === undefined || load.amps === undefined) return [];
  const part = named('leak');
  const { whileOff: _, ...common } = base;
  const off = SURELY_OFF * load.amps.min;
  const through: Step[] =
    leak.capacitor === undefined
      ? []
      : [
          {
            name: 'I_capacitor',
            says: 'what the capacitor across the open contact passes',
            formula: '2 * 3.14159265358979 * f * C * V',
            with: { f: [HERTZ, 'Hz'], C: [leak.capacitor, 'F'], V: [load.volts, 'V'] },
            gives: [throughCapacitor(leak.capacitor, load.volts, HERTZ), 'A'],
          },
        ];
  return [
    {
      ...common,
      ...(side === 'normally-open' && { whileOff: true }),
      id: part,
      title: `${title}, open`,
      quantity: 'current',
      direction: 'at-most',
      recipes: ['draw-most', 'draw-least'],
      read: (s) => s.current(part),
      limits: [
        {
          value: off,
          stated: 'a tenth of what its load takes',
          grade: 'practice',
          isFunction: true,
          margin: 'none',
          origin: { document: 'common practice, no source', basis: 'practice' },
        },
      ],
      books: [{ circuit, part }],
      steps: (s) => [
        ...through,
        {
          name: 'I_open',
          says: 'what still flows through the load when its contact is open',
          formula: 'I_leak',
          with: { I_leak: [s.current(part), 'A'] },
          gives: [s.current(part), 'A'],
        },
      ],
    },
  ];
}
