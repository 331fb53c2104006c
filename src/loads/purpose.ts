/** What a circuit is there for: when its load does no harm, and how much of the day it runs. */
import type { Figures } from './figures.js';
import type { Purpose } from './circuit-plan.js';

/**
 * The purpose of a circuit, or undefined when the file says nothing of it.
 *
 * @param load figures of the load @param contact figures of the contact that it switches its load with, if it has one:
 * what that says goes before what the load says @param form of its relay's contacts, where stated
 */
export function purposeOf(load: Figures, contact: Figures | undefined, form?: 'A' | 'B' | 'C'): Purpose | undefined {
  const said = [...(contact ? [contact] : []), load];
  const told = (key: string): Figures | undefined => said.find((figures) => figures.says(key));
  const safe = told('safe-when')?.word('safe-when');
  const daily = told('load-time')?.interval('load-time', 'time-per-day');
  const isSafe = safe === 'load-stopped' || safe === 'load-running';
  if (!isSafe && daily === undefined && contact === undefined) return undefined;
  return {
    ...(isSafe && { safeWhen: safe }),
    ...(daily && { daily }),
    runs:
      (contact?.word('wired') ?? (form === 'B' ? 'normally-closed' : undefined)) === 'normally-closed' ? 'off' : 'on',
    ...(contact && { contact: true }),
    ...(contact && (form === 'A' || form === 'B') && { oneSided: true }),
    path: (contact ?? load).path,
  };
}

/** The figures of a circuit's contact: `contact` of a coil, `contacts` of a board by channel. */
export function contactOf(load: Figures, owner: string, circuit: string): Figures | undefined {
  if (load.says('contact')) return load.within('contact');
  const contacts = load.within('contacts');
  const channel = circuit.slice(owner.length + 1);
  return contacts.says(channel) ? contacts.within(channel) : undefined;
}
