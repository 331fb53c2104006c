/** Contacts of the catalogue's relays, restated from their sheets. */
import { describe, expect, test } from 'vitest';
import { judged } from '../checks/judged.js';
import { at, bounds } from './catalogue-figures.js';

/** Most milliohms of a new contact, and volts that it bears open, root mean square. */
test.each([
  // HF3FA/HF3FA-T, Hongfa, contact data and characteristics: 100 mΩ at 1 A and 6 V DC; 750 V AC for a minute.
  ['relay-coil-5v-70r', 100, 750],
  ['relay-coil-12v-360mw', 100, 750],
  // HF46F, Hongfa: 100 mΩ at 1 A and 6 V DC; 1000 V AC.
  ['relay-coil-12v-200mw', 100, 1000],
  // HF32FA, Hongfa: 70 mΩ at 1 A and 6 V DC; 1000 V AC.
  ['relay-coil-24v-450mw', 70, 1000],
  // HFD3, Hongfa: 100 mΩ at 10 mA and 30 mV DC; 1000 V AC.
  ['relay-coil-5v-140mw', 100, 1000],
  // G5V-1, Omron, characteristics: 100 mΩ at 10 mA and 1 V DC; 400 V AC between contacts of the same polarity.
  ['relay-coil-12v-150mw', 100, 400],
  // G5LE, Omron, characteristics: 100 mΩ; 750 V AC between contacts of the same polarity.
  ['relay-coil-12v-400mw', 100, 750],
  // JW, Panasonic, ASCTB190E, specifications: 100 mΩ by voltage drop at 6 V DC and 1 A; 1000 V between open contacts.
  ['relay-coil-12v-530mw', 100, 1000],
])('%s: %d mΩ, %d V', (id, milliohms, volts) => {
  expect(1000 * bounds(at(id, 'contact-resistance'), 'resistance').max!).toBeCloseTo(milliohms, 9);
  expect(bounds(at(id, 'contact-withstand'), 'voltage').typ).toBe(volts);
});

/** HF3FA, form C: 10 A at 277 V AC or 28 V DC on the normally open side, 5 A at 250 V AC on the other; 50 000 operations at 5 A on either. */
describe('a relay of form C with an uneven contact', () => {
  const on = (wired: string, load: string) =>
    judged(`ampledger: 1
title: Sides
ambient: 20 °C
policy: classroom
supplies: { brick: { voltage: 5 V, current: 2 A } }
loads: { a: { part: relay-coil-5v-70r, supply: brick, switched: elsewhere, operations: 10 /day, contact: { wired: ${wired}, load: { type: resistive, ${load} } } } }
`).accounts.filter((j) => j.account.id.startsWith('a.contact'));
  const read = (accounts: ReturnType<typeof on>, quantity: string, direction: string) =>
    accounts.find((j) => j.account.quantity === quantity && j.account.direction === direction)!;

  test.each([
    ['normally-open', 'voltage: 230 V AC, current: 10 A', 'sound'],
    ['normally-closed', 'voltage: 230 V AC, current: 5 A', 'sound'],
    ['normally-closed', 'voltage: 230 V AC, current: 5.1 A', 'breach'],
    // Its sheet has no direct voltage for that side: what practice takes is no promise.
    ['normally-closed', 'voltage: 24 V DC, current: 5.1 A', 'strain'],
    ['normally-open', 'voltage: 48 V DC, current: 1 A', 'unproven'],
  ])('%s, %s: %s', (wired, load, verdict) => {
    expect(read(on(wired, load), 'current', 'at-most').verdict).toBe(verdict);
  });

  // Its sheet, note 2: 10 A hold while the normally closed side is not energized with a load.
  test.each([
    ['voltage: 230 V AC, current: 5 A', 'voltage: 230 V AC, current: 1 A', 'sound'],
    ['voltage: 230 V AC, current: 5.1 A', 'voltage: 230 V AC, current: 1 A', 'breach'],
    ['voltage: 24 V DC, current: 5.1 A', 'voltage: 24 V DC, current: 1 A', 'strain'],
  ])('with a load on either side: %s and %s is %s', (load, other, verdict) => {
    const both = on('normally-open', `${load} }, other-side: { load: { type: resistive, ${other} }`);
    expect(read(both, 'current', 'at-most').verdict).toBe(verdict);
  });

  test('lasts 10 000 days with five operations a day of 5 A, and nobody says how long with more', () => {
    const days = (amps: string) => read(on('normally-open', `voltage: 230 V AC, current: ${amps}`), 'time', 'at-least');
    expect(days('5 A').account.draw!.min / 86_400).toBeCloseTo(10_000, 6);
    expect(days('6 A').verdict).toBe('unproven');
  });

  test('keeps 0.23 V and 0.5 W of 230 V on 100 Ω at the most: 230 V / 100.1 Ω are 2.298 A', () => {
    const accounts = on('normally-open', 'voltage: 230 V AC, current: 2.3 A');
    const amps = 230 / 100.1;
    expect(read(accounts, 'voltage', 'at-most').account.draw!.max).toBeCloseTo(amps * 0.1, 9);
    expect(read(accounts, 'power', 'at-most').account.draw!.max).toBeCloseTo(amps ** 2 * 0.1, 9);
  });
});
