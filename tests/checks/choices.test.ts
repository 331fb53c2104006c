/** What a coil takes a day either way, and what its load does without power, worked out by hand. */
import { expect, test } from 'vitest';
import { choicesOf } from '../../src/checks/choice/choices.js';
import { judged } from './judged.js';

const relay = (wired: string, contact: string, more = '') => {
  const { ledger } = judged(`ampledger: 1
title: Choice
ambient: 20 °C
supplies: { brick: { voltage: 5 V, current: 2 A }, pump-24v: { voltage: 24 V, current: 5 A } }
loads:
  a: { type: coil, voltage: 5 V, resistance: 100 Ω, supply: brick, switched: elsewhere,
       contact-rating: [ { resistive: 10 A, voltage: 30 V DC } ],
       contact: { wired: ${wired}, load: { type: resistive, voltage: 24 V DC, current: 1 A, supply: pump-24v }, ${contact} } }
${more}`);
  return choicesOf(ledger);
};

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
