/** What a coil takes a day either way, and what its load does without power, worked out by hand. */
import { expect, test } from 'vitest';
import { choicesOf } from '../../src/checks/choice/choices.js';
import { says } from '../../src/wording/sentences.js';
import { judged } from './judged.js';

const relay = (wired: string, contact: string, more = '') =>
  choicesOf(judged(relayText(`wired: ${wired},`, contact, more)).ledger);
const relayText = (wired: string, contact: string, more = ''): string => `ampledger: 1
title: Choice
ambient: 20 °C
supplies: { brick: { voltage: 5 V, current: 2 A }, pump-24v: { voltage: 24 V, current: 5 A } }
loads:
  a: { type: coil, voltage: 5 V, resistance: 100 Ω, supply: brick, switched: elsewhere,
       contact-rating: [ { resistive: 10 A, voltage: 30 V DC } ],
       contact: { ${wired} load: { type: resistive, voltage: 24 V DC, current: 1 A, supply: pump-24v }, ${contact} } }
${more}`;

test('a coil of 250 mW that is on for 23 hours takes 5.75 Wh a day, and 0.25 Wh on its other contact', () => {
  const [open] = relay('normally-open', 'load-time: 23 h/day, safe-when: load-stopped');
  expect(open!.power).toBeCloseTo(0.25, 9);
  expect(open!.coilPower).toBeCloseTo(0.25, 9);
  expect(open!.now!.energy / 3600).toBeCloseTo(5.75, 9);
  expect(open!.otherwise!.energy / 3600).toBeCloseTo(0.25, 9);
  // Two pulses of 50 ms.
  expect(open!.latching!.energy).toBeCloseTo(0.025, 9);
  expect(open).toMatchObject({
    safeSide: 'normally-open',
    frugalSide: 'normally-closed',
    keepsSafe: true,
    atPowerLoss: 'load-stopped',
  });
  const [closed] = relay('normally-closed', 'load-time: 23 h/day, safe-when: load-stopped');
  expect(closed!.now!.energy / 3600).toBeCloseTo(0.25, 9);
  expect(closed).toMatchObject({ safeSide: 'normally-open', keepsSafe: false, atPowerLoss: 'load-running' });
});

test('a relay with normally closed contacts alone lets its load run without being told so; 1 h of 24 its coil is on', () => {
  const only = (form: string, wired: string, contact: string) => {
    const text = relayText(wired, contact).replace('resistance: 100 Ω', `resistance: 100 Ω, contact-form: ${form}`);
    const { ledger, findings } = judged(text);
    return { choice: choicesOf(ledger)[0]!, says: findings.map(says).join(' ') };
  };
  const closed = only('B', '', 'load-time: 23 h/day, safe-when: load-running').choice;
  expect(closed).toMatchObject({ wired: 'normally-closed', keepsSafe: true, fixed: 'one-sided' });
  expect(closed.now!.energy / 3600).toBeCloseTo(0.25, 9);
  // A relay without the other contact cannot be rewired to it.
  expect(only('A', 'wired: normally-open,', 'safe-when: load-running').says).toMatch(
    /no normally closed one: it wants another/,
  );
});

test('a load that must run goes on a normally closed contact, and is lost with a supply that feeds the coil too', () => {
  expect(relay('normally-closed', 'safe-when: load-running')[0]).toMatchObject({
    keepsSafe: true,
    safeSide: 'normally-closed',
  });
  expect(relay('normally-open', 'safe-when: load-running')[0]).toMatchObject({ keepsSafe: false });
});

test('a load that is no relay’s has hours of its own', () => {
  const lamp = '  lamp: { type: resistor, resistance: 100 Ω, power: 1 W, supply: brick, load-time: 6 h/day }';
  const found = relay('normally-open', 'load-time: 12 h/day', lamp).find((c) => c.circuit === 'lamp')!;
  expect(found.now!.energy / 3600).toBeCloseTo(1.5, 9);
  expect(found.wired).toBeUndefined();
});

/** A latching relay in one of two modes; 20 pulses of 50 ms a day. */
const latched = (more: string) =>
  judged(`ampledger: 1
title: Latched
ambient: 20 °C
supplies: { cells: { voltage: 5 V, current: 2 A } }
loads:
  a: { type: coil, voltage: 5 V, resistance: 100 Ω, supply: cells, switched: elsewhere, latching: one-coil, pulse: 50 ms, ${more} }
modes:
  open: { active: [a], share: 50 % }
  shut: { active: [], share: 50 % }
`);

test('a latching relay takes its pulses and no more, however long it stays set', () => {
  // 50 mA for 1 s of 86 400.
  expect(latched('operations: 20 /day').ledger.energy[0]!.amps).toBeCloseTo(0.05 / 86_400, 12);
  expect(latched('note: nobody says how often').ledger.energy[0]!.amps).toBeCloseTo(0, 12);
  // While it is pulsed its supply gives all of it.
  const supply = latched('operations: 20 /day').accounts.find((j) => j.account.id === 'cells')!;
  expect(supply.account.draw!.max).toBeCloseTo(0.05, 9);
});

test('a contact of 100 000 operations that is switched on and off ten times a day lasts 27 years', () => {
  const { accounts } = judged(`ampledger: 1
title: Life
ambient: 20 °C
supplies: { brick: { voltage: 5 V, current: 2 A } }
loads:
  a: { type: coil, voltage: 5 V, resistance: 100 Ω, supply: brick, switched: elsewhere, operations: 20 /day,
       contact-rating: [ { resistive: 10 A, voltage: 250 V AC, operations: 100000 } ],
       contact: { wired: normally-open, load: { type: resistive, voltage: 230 V AC, current: 5 A } } }
`);
  const life = accounts.find((j) => j.account.id === 'a.contact' && j.account.quantity === 'time')!;
  expect(life.account.draw!.min / (365.25 * 86_400)).toBeCloseTo(27.38, 2);
});
