/** What contacts may switch, held against makers' tables and rules. */
import { describe, expect, test } from 'vitest';
import { SHARE_OF_RESISTIVE, betweenPoints, throughCapacitor } from '../../src/circuit/contact.js';
import { capacitorFor, resistorFor, varistorFor } from '../../src/circuit/contact-protection.js';
import { alternatingEnergy, directEnergy } from '../../src/circuit/inductive-load.js';
import { judged } from '../checks/judged.js';

/** A contact of which only the rows are known, on a load that nothing else limits. */
const contact = (rows: string, load: string, wired = 'normally-open') =>
  judged(`ampledger: 1
title: Contact
ambient: 25 °C
policy: classroom
supplies: { brick: { voltage: 5 V, current: 2 A } }
loads:
  a: { type: coil, voltage: 5 V, resistance: 100 Ω, supply: brick, switched: elsewhere, contact-rating: [ ${rows} ],
       contact: { wired: ${wired}, load: { ${load} } } }
`);
const verdict = (rows: string, load: string, wired?: string, direction = 'at-most'): string | undefined =>
  contact(rows, load, wired).accounts.find(
    ({ account: a }) => a.id === 'a.contact' && a.quantity === 'current' && a.direction === direction,
  )?.verdict;

// Omron, D4MC limit switches, p. 2, Ratings: steady amperes; inductive at a power factor of 0.4 or 7 ms; "lamp load has an
// inrush current of 10 times the steady-state current, motor load of 6 times"; inrush at most 30 A (NC), 15 A (NO).
const D4MC = [
  '{ resistive: 10 A, voltage: 250 V AC }',
  '{ inductive: 10 A, voltage: 250 V AC }',
  '{ lamp: 2.5 A, voltage: 250 V AC, wired: normally-closed }',
  '{ lamp: 1.25 A, voltage: 250 V AC, wired: normally-open }',
  '{ motor: 3 A, voltage: 250 V AC, wired: normally-closed }',
  '{ motor: 1.5 A, voltage: 250 V AC, wired: normally-open }',
  '{ resistive: 6 A, voltage: 30 V DC }',
  '{ resistive: 500 mA, voltage: 125 V DC }',
  '{ resistive: 250 mA, voltage: 250 V DC }',
  '{ inductive: 5 A, voltage: 30 V DC }',
  '{ inductive: 50 mA, voltage: 125 V DC }',
  '{ making: 15 A, wired: normally-open }',
  '{ making: 30 A, wired: normally-closed }',
].join(', ');

describe('a published table of ratings', () => {
  test.each([
    ['type: lamp, voltage: 230 V AC, current: 1.25 A', 'normally-open', 'sound'],
    ['type: lamp, voltage: 230 V AC, current: 1.26 A', 'normally-open', 'breach'],
    ['type: lamp, voltage: 230 V AC, current: 2.5 A', 'normally-closed', 'sound'],
    ['type: motor, voltage: 230 V AC, current: 1.5 A', 'normally-open', 'sound'],
    ['type: motor, voltage: 230 V AC, current: 1.6 A', 'normally-open', 'breach'],
    ['type: motor, voltage: 230 V AC, current: 3 A', 'normally-closed', 'sound'],
    // Ten times 1.25 A is inside the 15 A that it may close on; thirteen times is not.
    ['type: lamp, voltage: 230 V AC, current: 1.25 A, inrush: 12.5 A', 'normally-open', 'sound'],
    ['type: lamp, voltage: 230 V AC, current: 1.25 A, inrush: 16 A', 'normally-open', 'breach'],
    ['type: resistive, voltage: 24 V DC, current: 6 A', 'normally-open', 'sound'],
    ['type: resistive, voltage: 125 V DC, current: 500 mA', 'normally-open', 'sound'],
    ['type: resistive, voltage: 125 V DC, current: 510 mA', 'normally-open', 'breach'],
    ['type: inductive, voltage: 125 V DC, current: 50 mA', 'normally-open', 'sound'],
    ['type: inductive, voltage: 24 V DC, current: 5 A', 'normally-open', 'sound'],
    ['type: inductive, voltage: 24 V DC, current: 5.1 A', 'normally-open', 'breach'],
    ['type: resistive, voltage: 300 V DC, current: 100 mA', 'normally-open', 'unproven'],
  ])('%s, %s: %s', (load, wired, expected) => {
    expect(verdict(D4MC, load, wired)).toBe(expected);
  });
});

// Finder, 60 series, general purpose relays 10 A, data sheet I-2018, contact specification of types 60.12 and 60.13: 10 A, peaks of
// 20 A; 2500 VA AC1 at 250 V, 500 VA AC15 at 230 V; DC1 10 A at 30 V, 0.4 A at 110 V, 0.15 A at 220 V; least load 5 mA at 10 V.
const F60 = [
  '{ resistive: 10 A, voltage: 250 V AC, category: AC-1 }',
  '{ inductive: 2.174 A, voltage: 230 V AC, category: AC-15 }',
  '{ resistive: 10 A, voltage: 30 V DC, category: DC-1 }',
  '{ resistive: 400 mA, voltage: 110 V DC, category: DC-1 }',
  '{ resistive: 150 mA, voltage: 220 V DC, category: DC-1 }',
  '{ making: 20 A }',
  '{ minimum: 5 mA, voltage: 10 V }',
].join(', ');
// Omron, D4MC, p. 2, Approved standard ratings, A300: 10 A carried; at 120 V AC 60 A made and 6 A broken, at 240 V AC 30 A and 3 A.
// That class has the same currents in category AC-15 (IEC 60947-5-1, annex A; from memory).
const A300 =
  '{ inductive: 6 A, voltage: 120 V AC, category: AC-15 }, { inductive: 3 A, voltage: 240 V AC, category: AC-15 }';

describe('a published table by categories', () => {
  test.each([
    [F60, 'type: resistive, voltage: 250 V AC, current: 10 A', 'at-most', 'sound'],
    [F60, 'type: inductive, voltage: 230 V AC, current: 2.17 A', 'at-most', 'sound'],
    [F60, 'type: inductive, voltage: 230 V AC, current: 2.18 A', 'at-most', 'breach'],
    // 1.9 A held and 19 A when it pulls in; the maker has peaks of 20 A, a little less than ten times 2.174 A.
    [F60, 'type: inductive, voltage: 230 V AC, current: 1.9 A, inrush: 19 A', 'at-most', 'sound'],
    [F60, 'type: inductive, voltage: 230 V AC, current: 1.9 A, inrush: 21 A', 'at-most', 'breach'],
    [F60, 'type: resistive, voltage: 110 V DC, current: 400 mA', 'at-most', 'sound'],
    [F60, 'type: resistive, voltage: 125 V DC, current: 400 mA', 'at-most', 'breach'],
    [F60, 'type: resistive, voltage: 24 V DC, current: 5 mA', 'at-least', 'sound'],
    [F60, 'type: resistive, voltage: 24 V DC, current: 4.9 mA', 'at-least', 'breach'],
    // A contactor that holds with 0.5 A and pulls in with 29 A: the class makes 30 A at 240 V, and 60 A at 120 V.
    [A300, 'type: inductive, voltage: 230 V AC, current: 0.5 A, inrush: 29 A', 'at-most', 'sound'],
    [A300, 'type: inductive, voltage: 230 V AC, current: 0.5 A, inrush: 31 A', 'at-most', 'breach'],
    [A300, 'type: inductive, voltage: 115 V AC, current: 0.5 A, inrush: 59 A', 'at-most', 'sound'],
    [A300, 'type: inductive, voltage: 115 V AC, current: 6.1 A', 'at-most', 'breach'],
  ])('%s: %s, %s: %s', (rows, load, direction, expected) => {
    expect(verdict(rows, load, 'normally-open', direction)).toBe(expected);
  });

  // "Contact load classifications", LogicNeed, after EN 60947-5-1: of AC-14 an inrush of about 6 times counts; AC-3 from memory.
  test.each([
    ['inductive', 'AC-14', 6],
    ['motor', 'AC-3', 6],
  ])('a %s load of %s closes on %d times its rating', (kind, category, times) => {
    const rows = `{ ${kind}: 3 A, voltage: 250 V AC, category: ${category} }, { resistive: 10 A, voltage: 250 V AC }`;
    const key = kind === 'motor' ? 'stall' : 'inrush';
    const load = (amps: number) => `type: ${kind}, voltage: 230 V AC, current: 2 A, ${key}: ${amps} A`;
    expect(verdict(rows, load(3 * times))).toBe('sound');
    expect(verdict(rows, load(3 * times + 0.1))).toBe('breach');
  });
});

describe('a rating that leaves its voltage open', () => {
  test.each([
    ['{ resistive: 10 A }', '48 V DC', 'unproven'],
    ['{ resistive: 10 A }', '230 V AC', 'unproven'],
    ['{ resistive: 4 A }', '230 V AC', 'breach'],
    ['{ resistive: 10 A, voltage: 250 V }', '110 V DC', 'unproven'],
    ['{ resistive: 10 A, voltage: 250 V }', '230 V AC', 'sound'],
    // Up to 30 V a small gap breaks direct current as well (as in `loads/contacts/contact-limits.ts`).
    ['{ resistive: 10 A }', '24 V DC', 'sound'],
    ['{ resistive: 10 A, voltage: 250 V }', '24 V DC', 'sound'],
    ['{ resistive: 10 A, voltage: 30 V }', '24 V DC', 'sound'],
  ])('%s on %s is %s', (rows, volts, expected) => {
    expect(verdict(rows, `type: resistive, voltage: ${volts}, current: 5 A`)).toBe(expected);
  });
});

describe('breaking direct voltage', () => {
  // Finder, 40 series, table of UL ratings, General technical information V-2014: 8 A at 24 V, 0.5 A at 60 V, 0.2 A at 110 V,
  // 0.12 A at 250 V DC.
  const points = [
    { volts: 24, amps: 8 },
    { volts: 60, amps: 0.5 },
    { volts: 110, amps: 0.2 },
    { volts: 250, amps: 0.12 },
  ];

  test('a straight line on double logarithmic paper goes through both points', () => {
    for (const [k, low] of points.slice(0, -1).entries()) {
      const high = points[k + 1]!;
      expect(betweenPoints(low, high, low.volts)).toBeCloseTo(low.amps, 12);
      expect(betweenPoints(low, high, high.volts)).toBeCloseTo(high.amps, 12);
    }
  });

  test('between points that lie far apart the true curve sags below the line, so that only the higher one is sure', () => {
    // From 24 and 110 V the line promises 0.9 A at 60 V, where the maker has 0.5 A.
    expect(betweenPoints(points[0]!, points[2]!, 60)).toBeGreaterThan(0.5);
    expect(betweenPoints(points[0]!, points[2]!, 60)).toBeLessThan(1);
  });

  const rows = points.map(({ volts, amps }) => `{ resistive: ${amps} A, voltage: ${volts} V DC }`).join(', ');
  test.each([
    [8, 24, 'sound'],
    [0.5, 60, 'sound'],
    [0.51, 60, 'breach'],
    [0.2, 110, 'sound'],
    // Between 24 and 60 V, over what holds at 60 V: a strain up to the line, which has 0.98 A at 48 V, and a breach beyond.
    [0.6, 48, 'strain'],
    [0.97, 48, 'strain'],
    [0.99, 48, 'breach'],
    [0.1, 260, 'unproven'],
  ])('%s A at %s V is %s', (amps, volts, expected) => {
    expect(verdict(rows, `type: resistive, voltage: ${volts} V DC, current: ${amps} A`)).toBe(expected);
  });

  // Leach International, Application note 101, 6/00, p. 14: I2 = 2/3 I1 E1/E2, so that 10 A at 28 V is 3.4 A at 55 V. That rule is
  // for aircraft relays: small ones break much less, which the reference points show.
  test('a rule for large relays is no rule for small ones', () => {
    const leach = (2 / 3) * 8 * (24 / 60);
    expect(leach).toBeGreaterThan(4 * 0.5);
  });
});

describe('shares of the resistive rating', () => {
  // Omron, "Load types & ratings" (components.omron.com/load-types-ratings): ten times a lamp's and six times a motor's steady
  // current shall not be more than the resistive rating; NASA EEE-INST-002 style derating has 40, 20 and 10 % (from memory).
  test('are no more generous than ten times a lamp and six times a motor', () => {
    expect(SHARE_OF_RESISTIVE.lamp).toBeLessThanOrEqual(1 / 10);
    expect(SHARE_OF_RESISTIVE.motor).toBeGreaterThan(1 / 6);
  });

  // "Meaning of contact ratings", Handouk: 10 A at 250 V AC is 4 A at a power factor of 0.4.
  test('of an inductive load are what a power factor of 0.4 leaves', () => {
    expect(SHARE_OF_RESISTIVE.inductive).toBe(0.4);
  });

  // Omron, G5LE PCB Power Relay, Ratings: 8 A resistive and 4 A inductive at 30 V DC, 10 A and 5 A at 120 V AC. The usual share
  // is on the safe side of it.
  test('are on the safe side of a maker’s own inductive rating', () => {
    expect(SHARE_OF_RESISTIVE.inductive * 8).toBeLessThanOrEqual(4);
    expect(SHARE_OF_RESISTIVE.inductive * 10).toBeLessThanOrEqual(5);
  });
});

// Finder, 40 series, technical data (V-2014): a load of DC-13 with a diode across it wears a contact like one of DC-1, and lets go later.
test('a diode across an inductive load gives it the resistive rating, unless its maker states one for its kind', () => {
  const rows = '{ resistive: 6 A, voltage: 30 V DC }';
  const load = 'type: inductive, voltage: 24 V DC, current: 5 A';
  const clamped = `${load} }, suppression: { type: diode`;
  expect(verdict(rows, load)).toBe('strain');
  expect(verdict(rows, clamped)).toBe('sound');
  expect(verdict(`${rows}, { inductive: 2 A, voltage: 30 V DC, category: DC-13 }`, clamped)).toBe('breach');
});

// A well-known nuisance: 100 nF across a contact lets 7 to 9 mA of 230 V through (2 pi f C V at 50 and 60 Hz; from memory).
test('a capacitor across an open contact passes what its reactance lets it', () => {
  expect(throughCapacitor(100e-9, 230, 50)).toBeCloseTo(7.226e-3, 6);
  expect(throughCapacitor(100e-9, 230, 60)).toBeCloseTo(8.671e-3, 6);
});

describe('what is put across an inductive load', () => {
  // "Relay contact protection circuits", PCI-7256 User's Manual, ADLINK Technology, appendix A, p. 37, and "FAQ02804 of General Purpose
  // Relays", Omron: 0.5 to 1 Ω for each volt and 0.5 to 1 µF for each ampere.
  test('is an RC element by the amperes and volts of the contact', () => {
    expect(capacitorFor(1)).toEqual({ min: 0.5e-6, max: 1e-6 });
    expect(resistorFor(230)).toEqual({ min: 115, max: 230 });
  });

  // Operating manual of a regulator, ProMinent Dulcomarin II: R = U/I_L and C = k·I_L, k between 0.1 and 2 µF/A: the rule lies inside.
  test('lies inside what another maker allows', () => {
    expect(capacitorFor(1).min).toBeGreaterThanOrEqual(0.1e-6);
    expect(capacitorFor(1).max).toBeLessThanOrEqual(2e-6);
  });

  // The same table of Omron's: a diode is no good on alternating voltage and the most effective on direct one, where RC elements come next;
  // on alternating voltage RC elements and varistors are.
  test.each([
    ['AC', 'type: diode', 'breach'],
    ['AC', 'type: rc, capacitance: 1 µF, resistance: 100 Ω, working-voltage: 275 V AC', undefined],
    ['AC', 'type: varistor, working-voltage: 275 V AC, energy: 10 J', undefined],
    ['DC', 'type: diode', undefined],
    ['DC', 'type: rc, capacitance: 1 µF, resistance: 100 Ω', undefined],
    ['AC', undefined, 'note'],
    ['DC', undefined, 'note'],
  ])('on %s voltage goes by its type: %s', (waveform, suppression, expected) => {
    const volts = waveform === 'AC' ? '24 V AC' : '24 V DC';
    const more = suppression === undefined ? '' : ` }, suppression: { ${suppression}`;
    const { findings } = contact(
      '{ inductive: 5 A, voltage: 30 V DC }, { inductive: 5 A, voltage: 250 V AC }, { resistive: 10 A, voltage: 250 V AC }, { resistive: 10 A, voltage: 30 V DC }',
      `type: inductive, voltage: ${volts}, current: 1 A${more}`,
    );
    expect(findings.find((f) => f.rule === 'contact-arc')?.verdict).toBe(expected);
  });

  // "Selecting the proper MOV voltage rating", NTE Electronics: for 220 V AC a high line of 242 V counts, and of its list the nearest
  // greater value is taken.
  test('is a varistor for the mains at its highest', () => {
    expect(varistorFor(220)).toBe(250);
    expect(varistorFor(230)).toBe(275);
    expect(varistorFor(120)).toBe(150);
    expect(varistorFor(24)).toBe(30);
    expect(varistorFor(1000)).toBeUndefined();
  });
});

describe('what an inductive load stores', () => {
  // Omron tests contacts for inductive loads at a power factor of 0.4 or L/R of 7 ms (D4MC, p. 2, Ratings).
  test('on direct voltage is no less than with L/R of 7 ms, from 3.5 W on', () => {
    expect(directEnergy(3.5)).toBeCloseTo(0.5 * 7e-3 * 3.5, 9);
    expect(directEnergy(100)).toBeCloseTo(0.5 * 0.1 * 100, 9);
  });

  // The same from its impedance: 230 Ω at cos φ 0.4 are 210.8 Ω of reactance, 0.671 H at 50 Hz, and 1.414 A at the peak.
  test('on alternating voltage is that of its reactance', () => {
    const henries = (230 * Math.sqrt(1 - 0.16)) / (2 * Math.PI * 50);
    expect(alternatingEnergy(230, 1, 0.4, 50)).toBeCloseTo((henries * 2) / 2, 12);
  });
});
