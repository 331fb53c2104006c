/** Cases of the rules about contacts and what hangs on them. */
import type { Case } from './case.js';
import { onChip, onSupplies } from './case.js';

const SUPPLIES = 'brick: { voltage: 5 V, current: 2 A }, main: { voltage: 24 V, current: 20 A }';
/** A relay that is always on or off, as its contact is asked about; its rows are all that is known of that. */
const relay = (rows: string, contact: string): string =>
  onSupplies(
    SUPPLIES,
    `relay: { type: coil, voltage: 5 V, resistance: 100 Ω, supply: brick, switched: elsewhere, contact-rating: [ ${rows} ], contact: { wired: normally-open, ${contact} } }`,
    { policy: 'classroom' },
  );
const onMain = (kind: string, amps: string, more = ''): string =>
  `load: { type: ${kind}, voltage: 24 V DC, current: ${amps}, supply: main${more} }`;
const TEN = '{ resistive: 10 A, voltage: 30 V DC }, { minimum: 100 mA, voltage: 5 V DC }';
const CURVE = '{ resistive: 8 A, voltage: 24 V DC }, { resistive: 500 mA, voltage: 60 V DC }';
const ssr = (output: string, contact: string): string =>
  onSupplies(
    SUPPLIES,
    `relay: { type: solid-state-relay, input: { led-drop: 1.2 V, series: 300 Ω, on-current: 5 mA }, supply: brick, switched: elsewhere, ${output}, contact: { ${contact} } }`,
    { policy: 'classroom' },
  );

/** A relay behind a transistor, clamped, that breaks a valve's current. */
const clamped = (clamp: string): string =>
  onChip(
    `relay: { type: coil, voltage: 5 V, resistance: 100 Ω, inductance: 100 mH, supply: bench, driver: { part: npn-2n2222a, pin: PB1, base-resistor: 1 kΩ }, clamp: { ${clamp} },
          contact-rating: [ { inductive: 5 A, voltage: 30 V DC } ], contact: { wired: normally-open, load: { type: inductive, voltage: 24 V DC, current: 1 A }, suppression: { type: tvs, zener-voltage: 33 V } } }`.replace(
      /\s+/g,
      ' ',
    ),
  );

/** A coil that pulses set, behind a driver. */
const latching = (driver: string, coils: string): string =>
  onChip(
    `a: { type: coil, voltage: 5 V, resistance: 100 Ω, supply: bench, latching: ${coils}, pulse: 50 ms, driver: { ${driver} } }`,
  );

/** An inductive load of 1 A on the mains, with something across it. */
const mains = (suppression: string, load = ''): string =>
  relay(
    '{ resistive: 10 A, voltage: 250 V AC }, { inductive: 3 A, voltage: 250 V AC }',
    `load: { type: inductive, voltage: 230 V AC, current: 1 A${load} }, suppression: { ${suppression} }`,
  );
const MOV = 'type: varistor, energy: 10 J';
/** 2 A at 24 V through a contact of so much, for a load that works from 23.8 V on. */
const dropping = (ohms: string): string =>
  relay(
    `${TEN}, { resistive: 10 A, voltage: 30 V DC }`,
    onMain('motor', '2 A', ', stall: 4 A, supply-voltage: 23.8 to 27 V'),
  ).replace('resistance: 100 Ω', `resistance: 100 Ω, contact-resistance: ${ohms}`);
/** A lamp on the one side of a changeover, and something on the other. */
const bothSides = (other: string): string => relay(TEN, `${onMain('resistive', '1 A')}, other-side: { ${other} }`);

export const CONTACTS: readonly Case[] = [
  {
    rule: 'contact-current',
    when: 'breaks on a heater over the rating',
    verdict: 'breach',
    text: relay(TEN, onMain('resistive', '10.1 A')),
  },
  {
    rule: 'contact-current',
    when: 'is content with a heater exactly at the rating',
    verdict: 'silent',
    text: relay(TEN, onMain('resistive', '10 A')),
  },
  {
    rule: 'contact-current',
    when: 'strains on a motor over a fifth of the resistive rating',
    verdict: 'strain',
    text: relay(TEN, onMain('motor', '2.1 A', ', stall: 8 A')),
  },
  {
    rule: 'contact-current',
    when: 'is content with a motor at a fifth of it',
    verdict: 'silent',
    text: relay(TEN, onMain('motor', '2 A', ', stall: 8 A')),
  },
  {
    rule: 'contact-current',
    when: 'is content with a motor that a row of its own allows',
    verdict: 'silent',
    text: relay(`${TEN}, { motor: 5 A, voltage: 30 V DC }`, onMain('motor', '5 A', ', stall: 8 A')),
  },
  {
    rule: 'contact-current',
    when: 'strains on an inrush over the resistive rating',
    verdict: 'strain',
    text: relay(`${TEN}, { lamp: 5 A, voltage: 30 V DC }`, onMain('lamp', '1 A', ', inrush: 12 A')),
  },
  {
    rule: 'contact-current',
    when: 'is content with that inrush where it may be closed on',
    verdict: 'silent',
    text: relay(`${TEN}, { lamp: 5 A, voltage: 30 V DC }, { making: 15 A }`, onMain('lamp', '1 A', ', inrush: 12 A')),
  },
  {
    rule: 'contact-current',
    when: 'is unproven above the highest voltage that is rated',
    verdict: 'unproven',
    text: relay(TEN, 'load: { type: resistive, voltage: 48 V DC, current: 1 A }'),
  },
  {
    rule: 'contact-current',
    when: 'strains between two points of a breaking curve, over the higher one',
    verdict: 'strain',
    text: relay(CURVE, 'load: { type: resistive, voltage: 48 V DC, current: 700 mA }'),
  },
  {
    rule: 'contact-current',
    when: 'is unproven with nothing known of the load',
    verdict: 'unproven',
    text: relay(TEN, ''),
  },
  {
    rule: 'contact-minimum',
    when: 'breaks on a signal through a power contact',
    verdict: 'breach',
    text: relay(TEN, onMain('resistive', '20 mA')),
  },
  {
    rule: 'contact-minimum',
    when: 'breaks on a voltage too low to break through',
    verdict: 'breach',
    text: relay(TEN, 'load: { type: resistive, voltage: 3.3 V DC, current: 200 mA }'),
  },
  {
    rule: 'contact-minimum',
    when: 'breaks on a load too small to keep the output of a solid-state relay on',
    verdict: 'breach',
    text: ssr(
      'drop: 1.6 V, thermal-resistance: 7 K/W, maximum-junction: 125 °C, contact-rating: [ { resistive: 10 A, voltage: 280 V AC }, { minimum: 150 mA, voltage: 24 V } ]',
      'load: { type: resistive, voltage: 230 V AC, current: 100 mA }',
    ),
  },
  {
    rule: 'contact-minimum',
    when: 'is unproven with a small current of which nobody speaks',
    verdict: 'unproven',
    text: relay('{ resistive: 10 A, voltage: 30 V DC }', onMain('resistive', '20 mA')),
  },
  {
    rule: 'contact-minimum',
    when: 'is content with exactly the least',
    verdict: 'silent',
    text: relay(TEN, onMain('resistive', '100 mA')),
  },
  {
    rule: 'contact-arc',
    when: 'notes a valve on direct voltage with nothing across it',
    verdict: 'note',
    text: relay(TEN, onMain('inductive', '1 A')),
  },
  {
    rule: 'contact-arc',
    when: 'breaks on a diode across an alternating load',
    verdict: 'breach',
    text: relay(
      '{ resistive: 10 A, voltage: 250 V AC }',
      'load: { type: inductive, voltage: 24 V AC, current: 1 A }, suppression: { type: diode }',
    ),
  },
  {
    rule: 'contact-arc',
    when: 'notes a diode across the contact itself, which takes nothing over',
    verdict: 'note',
    text: relay(TEN, `${onMain('inductive', '1 A')}, suppression: { type: diode, across: contact }`),
  },
  {
    rule: 'contact-arc',
    when: 'is content with a diode across a valve on direct voltage',
    verdict: 'silent',
    text: relay(TEN, `${onMain('inductive', '1 A')}, suppression: { type: diode }`),
  },
  {
    rule: 'contact-arc',
    when: 'notes a contactor’s coil on the mains with nothing across it, and what would take its current over',
    verdict: 'note',
    text: relay(
      '{ inductive: 3 A, voltage: 250 V AC }',
      'load: { type: inductive, voltage: 230 V AC, current: 300 mA }',
    ),
  },
  {
    rule: 'contact-arc',
    when: 'notes a capacitor of less than half a microfarad an ampere',
    verdict: 'note',
    text: mains('type: rc, capacitance: 490 nF, resistance: 150 Ω, working-voltage: 275 V AC'),
  },
  {
    rule: 'contact-arc',
    when: 'is content with just that',
    verdict: 'silent',
    text: mains('type: rc, capacitance: 500 nF, resistance: 150 Ω, working-voltage: 275 V AC'),
  },
  {
    rule: 'contact-suppression',
    when: 'breaks on a varistor for 250 V where the mains may stand at 253 V',
    verdict: 'breach',
    text: mains(`${MOV}, working-voltage: 250 V AC`),
  },
  {
    rule: 'contact-suppression',
    when: 'is content with one for 253 V',
    verdict: 'silent',
    text: mains(`${MOV}, working-voltage: 253 V AC`),
  },
  {
    rule: 'contact-suppression',
    when: 'asks for what voltage a varistor is made where nobody says so',
    verdict: 'unproven',
    text: mains('type: varistor'),
  },
  {
    rule: 'contact-suppression',
    when: 'breaks on a varistor for half a joule across a load that stores a whole one',
    verdict: 'breach',
    text: mains('type: varistor, energy: 0.5 J, working-voltage: 275 V AC', ', inductance: 1 H'),
  },
  {
    rule: 'contact-suppression',
    when: 'is content with one for that joule',
    verdict: 'silent',
    text: mains('type: varistor, energy: 1.001 J, working-voltage: 275 V AC', ', inductance: 1 H'),
  },
  {
    rule: 'contact-suppression',
    when: 'asks for the inductance of a load that may store more than its varistor takes',
    verdict: 'unproven',
    text: mains('type: varistor, energy: 0.5 J, working-voltage: 275 V AC'),
  },
  {
    rule: 'contact-suppression',
    when: 'strains on a contact that closes on its capacitor with 358 V over 35 Ω',
    verdict: 'strain',
    text: mains('type: rc, capacitance: 1 µF, resistance: 35 Ω, working-voltage: 275 V AC'),
  },
  {
    rule: 'contact-suppression',
    when: 'is content with 36 Ω',
    verdict: 'silent',
    text: mains('type: rc, capacitance: 1 µF, resistance: 36 Ω, working-voltage: 275 V AC'),
  },
  {
    rule: 'contact-suppression',
    when: 'breaks on a suppressor across a load that leaves an opened contact more than it bears',
    verdict: 'breach',
    text: mains(`${MOV}, working-voltage: 275 V AC, clamping-voltage: { value: 710 V, at: 50 A }`).replace(
      'resistance: 100 Ω',
      'resistance: 100 Ω, contact-withstand: 750 V AC',
    ),
  },
  {
    rule: 'contact-suppression',
    when: 'is content with it across the contact',
    verdict: 'silent',
    text: mains(
      `${MOV}, across: contact, working-voltage: 275 V AC, clamping-voltage: { value: 710 V, at: 50 A }`,
    ).replace('resistance: 100 Ω', 'resistance: 100 Ω, contact-withstand: 750 V AC'),
  },
  {
    rule: 'contact-drop',
    when: 'strains on a contact that may leave a load 23.78 of the 23.8 V from which it works',
    verdict: 'strain',
    text: dropping('10 to 110 mΩ'),
  },
  {
    rule: 'contact-drop',
    when: 'breaks on a load for 12 V that hangs on 24 V',
    verdict: 'breach',
    text: relay(TEN, onMain('resistive', '1 A').replace('24 V DC', '12 V DC')),
  },
  {
    rule: 'contact-drop',
    when: 'is content with a load for 20 V there, which has to bear a quarter more than that',
    verdict: 'silent',
    text: relay(TEN, onMain('resistive', '1 A').replace('24 V DC', '20 V DC')),
  },
  {
    rule: 'contact-drop',
    when: 'is content with one that leaves it just that',
    verdict: 'silent',
    text: dropping('10 to 100 mΩ'),
  },
  {
    rule: 'contact-sides',
    when: 'breaks where a lamp on the mains shares a changeover with 24 V',
    verdict: 'breach',
    text: bothSides('load: { type: resistive, voltage: 230 V AC, current: 200 mA }'),
  },
  {
    rule: 'contact-sides',
    when: 'strains on 24 V AC beside 24 V DC',
    verdict: 'strain',
    text: bothSides('load: { type: resistive, voltage: 24 V AC, current: 200 mA }'),
  },
  {
    rule: 'contact-sides',
    when: 'notes an arc that may join the two sides',
    verdict: 'note',
    text: bothSides(onMain('inductive', '1 A')),
  },
  {
    rule: 'contact-sides',
    when: 'is content with two plain loads on one supply',
    verdict: 'silent',
    text: bothSides(onMain('resistive', '1 A')),
  },
  {
    rule: 'contact-current',
    when: 'breaks on the other side of a changeover, which may switch less',
    verdict: 'breach',
    text: bothSides(onMain('resistive', '5.1 A')).replace(
      TEN,
      `${TEN}, { resistive: 5 A, voltage: 30 V DC, wired: normally-closed }`,
    ),
  },
  {
    rule: 'contact-current',
    when: 'is content with just what that side may',
    verdict: 'silent',
    text: bothSides(onMain('resistive', '5 A')).replace(
      TEN,
      `${TEN}, { resistive: 5 A, voltage: 30 V DC, wired: normally-closed }`,
    ),
  },
  {
    rule: 'safe-state',
    when: 'breaks on a heater on the other side that must not run without power',
    verdict: 'breach',
    text: bothSides(`${onMain('resistive', '1 A')}, safe-when: load-stopped`),
  },
  {
    rule: 'safe-state',
    when: 'is content with a lock there that must stay shut',
    verdict: 'silent',
    text: bothSides(`${onMain('resistive', '1 A')}, safe-when: load-running`),
  },
  {
    rule: 'contact-leak',
    when: 'breaks on a small load that a capacitor across the contact keeps on',
    verdict: 'breach',
    text: relay(
      '{ resistive: 10 A, voltage: 250 V AC }',
      'load: { type: resistive, voltage: 230 V AC, current: 80 mA }, suppression: { type: rc, across: contact, capacitance: 100 nF }',
    ),
  },
  {
    rule: 'contact-leak',
    when: 'is content with the same capacitor across the load',
    verdict: 'silent',
    text: relay(
      '{ resistive: 10 A, voltage: 250 V AC }',
      'load: { type: resistive, voltage: 230 V AC, current: 80 mA }, suppression: { type: rc, across: load, capacitance: 100 nF }',
    ),
  },
  {
    rule: 'contact-heat',
    when: 'breaks on an output that gets hotter than it bears',
    verdict: 'breach',
    text: ssr(
      'drop: 1.6 V, thermal-resistance: 8 K/W, maximum-junction: 125 °C, contact-rating: [ { resistive: 10 A, voltage: 280 V AC } ]',
      'load: { type: resistive, voltage: 230 V AC, current: 8 A }',
    ),
  },
  {
    rule: 'contact-heat',
    when: 'is content with a cooler heat sink',
    verdict: 'silent',
    text: ssr(
      'drop: 1.6 V, thermal-resistance: 7 K/W, maximum-junction: 125 °C, contact-rating: [ { resistive: 10 A, voltage: 280 V AC } ]',
      'load: { type: resistive, voltage: 230 V AC, current: 8 A }',
    ),
  },
  {
    rule: 'safe-state',
    when: 'breaks on a heater that runs when its relay has no power and must not',
    verdict: 'breach',
    text: relay(TEN, `${onMain('resistive', '1 A')}, safe-when: load-stopped`).replace(
      'wired: normally-open',
      'wired: normally-closed',
    ),
  },
  {
    rule: 'safe-state',
    when: 'is content with it on the normally open contact',
    verdict: 'silent',
    text: relay(TEN, `${onMain('resistive', '1 A')}, safe-when: load-stopped`),
  },
  {
    rule: 'safe-state',
    when: 'strains on a lock that must stay shut, fed by what feeds its coil',
    verdict: 'strain',
    text: relay(
      TEN,
      'load: { type: resistive, voltage: 5 V DC, current: 1 A, supply: brick }, safe-when: load-running',
    ).replace('wired: normally-open', 'wired: normally-closed'),
  },
  {
    rule: 'contact-choice',
    when: 'notes a coil that is on for twenty-three hours where one would do',
    verdict: 'note',
    text: relay(TEN, `${onMain('resistive', '1 A')}, load-time: 23 h/day`),
  },
  {
    rule: 'contact-choice',
    when: 'notes it of a load whose safe state wants it so',
    verdict: 'note',
    text: relay(TEN, `${onMain('resistive', '1 A')}, load-time: 23 h/day, safe-when: load-stopped`),
  },
  {
    rule: 'contact-choice',
    when: 'is content with half of the day',
    verdict: 'silent',
    text: relay(TEN, `${onMain('resistive', '1 A')}, load-time: 12 h/day`),
  },
  {
    rule: 'safe-state',
    when: 'strains on a latching relay, which stays as it is',
    verdict: 'strain',
    text: relay(TEN, `${onMain('resistive', '1 A')}, safe-when: load-stopped`).replace(
      'resistance: 100 Ω',
      'resistance: 100 Ω, latching: one-coil, pulse: 50 ms, operations: 4 /day',
    ),
  },
  {
    rule: 'coil-one-way',
    when: 'breaks on a latching coil behind a transistor, which never turns its current round',
    verdict: 'breach',
    text: latching('part: npn-2n2222a, pin: PB1, base-resistor: 1 kΩ', 'one-coil'),
  },
  {
    rule: 'coil-one-way',
    when: 'is content with a bridge',
    verdict: 'silent',
    text: latching('part: motor-driver-drv8833, pins: [PB1, PB2]', 'one-coil'),
  },
  {
    rule: 'coil-one-way',
    when: 'is content with a relay of two coils',
    verdict: 'silent',
    text: latching('part: npn-2n2222a, pin: PB1, base-resistor: 1 kΩ', 'two-coil'),
  },
  {
    rule: 'coil-held-on',
    when: 'notes a latching coil that firmware might leave on',
    verdict: 'note',
    text: relay(TEN, onMain('resistive', '1 A')).replace('resistance: 100 Ω', 'resistance: 100 Ω, latching: two-coil'),
  },
  {
    rule: 'coil-held-on',
    when: 'is content with a coil that falls back by itself',
    verdict: 'silent',
    text: relay(TEN, onMain('resistive', '1 A')),
  },
  {
    rule: 'contact-life',
    when: 'strains on a contact for 100 000 operations that a thermostat wears out in 100 days',
    verdict: 'strain',
    text: relay(`{ resistive: 10 A, voltage: 30 V DC, operations: 100000 }`, onMain('resistive', '1 A')).replace(
      'resistance: 100 Ω',
      'resistance: 100 Ω, operations: 2000 /day',
    ),
  },
  {
    rule: 'contact-life',
    when: 'is unproven with operations that nobody rates',
    verdict: 'unproven',
    text: relay(TEN, onMain('resistive', '1 A')).replace('resistance: 100 Ω', 'resistance: 100 Ω, operations: 20 /day'),
  },
  {
    rule: 'contact-life',
    when: 'is content with operations that a row rates',
    verdict: 'silent',
    text: relay(`{ resistive: 10 A, voltage: 30 V DC, operations: 100000 }`, onMain('resistive', '1 A')).replace(
      'resistance: 100 Ω',
      'resistance: 100 Ω, operations: 20 /day',
    ),
  },
  {
    rule: 'contact-slow',
    when: 'notes a plain diode across the coil of a relay that breaks a valve’s current',
    verdict: 'note',
    text: clamped('part: diode-1n4148'),
  },
  {
    rule: 'contact-slow',
    when: 'is content where the valve hangs on the normally closed contact, which a coil opens that is switched on',
    verdict: 'silent',
    text: clamped('part: diode-1n4148').replace('wired: normally-open', 'wired: normally-closed'),
  },
  {
    rule: 'contact-slow',
    when: 'is content with a diode across the valve as well, which leaves no arc to break',
    verdict: 'silent',
    text: clamped('part: diode-1n4148').replace('type: tvs, zener-voltage: 33 V', 'type: diode'),
  },
  {
    rule: 'contact-slow',
    when: 'is content with a zener in series with it',
    verdict: 'silent',
    text: clamped('type: diode-zener, current: 1 A, zener-voltage: 24 V'),
  },
];
