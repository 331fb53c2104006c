/** What coils take over a year, and what loads do without power, against what others print. */
import { describe, expect, test } from 'vitest';
import { YEAR, choicesOf } from '../../src/checks/choice/choices.js';
import { judged } from '../checks/judged.js';

const KILOWATT_HOUR = 3.6e6;

const on = (coil: string, contact: string) =>
  judged(`ampledger: 1
title: Choice
ambient: 20 °C
supplies: { brick: { voltage: 12 V, current: 1 A }, other: { voltage: 24 V, current: 5 A } }
loads:
  a: { type: coil, voltage: 12 V, ${coil}, supply: brick, switched: elsewhere, contact-rating: [ { resistive: 10 A, voltage: 30 V DC } ],
       contact: { load: { type: resistive, voltage: 24 V DC, current: 1 A, supply: other }, ${contact} } }
`);
const choice = (coil: string, contact: string) => choicesOf(on(coil, contact).ledger)[0]!;

/** "Relays power consumption", kaspars.net: coils of 0.1 to 1 W take 0.8 to 8 kWh to stay on for a year; measured ones have 0.12, 0.36 and 0.53 W. */
test.each([
  ['0.1 W', 0.8, 0.9],
  ['1 W', 8, 9],
  // Derived: 0.36 W · 8766 h and 0.53 W · 8766 h.
  ['0.36 W', 3.155, 3.157],
  ['0.53 W', 4.645, 4.647],
])('a coil of %s that stays on takes %d to %d kWh a year', (power, least, most) => {
  const { now } = choice(`power: ${power}`, 'wired: normally-open, load-time: 24 h/day');
  const year = (now!.energy * YEAR) / KILOWATT_HOUR;
  expect(year).toBeGreaterThanOrEqual(least);
  expect(year).toBeLessThanOrEqual(most);
});

/**
 * Form A makes, form B breaks, form C does both when the coil is powered (definitions of the Relay and Switch Industry Association,
 * as any relay glossary repeats them). "ProCap I series", manual, BinMaster, 925-0290 rev. A, p. 7, 4.1: fail-safe means that a relay
 * without power leaves its contacts in the condition that is deemed safe.
 */
describe('without power', () => {
  test.each([
    ['A', 'normally-open', 'load-stopped'],
    ['B', 'normally-closed', 'load-running'],
    ['C', 'normally-open', 'load-stopped'],
    ['C', 'normally-closed', 'load-running'],
  ])('a load on form %s, %s, is %s', (form, wired, left) => {
    const coil = `power: 0.4 W, contact-form: ${form}`;
    expect(choice(coil, `wired: ${wired}, load-time: 1 h/day`).atPowerLoss).toBe(left);
    for (const safe of ['load-stopped', 'load-running']) {
      const { findings } = on(coil, `wired: ${wired}, safe-when: ${safe}`);
      expect(findings.some((f) => f.rule === 'safe-state' && f.verdict === 'breach')).toBe(safe !== left);
    }
  });
});
