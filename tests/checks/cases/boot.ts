/** Cases of the rules about what loads do until firmware runs. The pins of an ATmega328P float, but for D13 of its board. */
import type { Case } from './case.js';
import { onBoard, onChip } from './case.js';

/** A coil on 5 V behind an NPN, whose base a leakage of 1 µA and a gain of some hundreds do not move it by. */
const coil = (pin: string, more = ''): string =>
  `valve: { part: relay-coil-5v-70r, supply: bench, driver: { part: npn-2n2222a, pin: ${pin}, base-resistor: 1 kΩ }, clamp: { part: diode-1n4148 }${more} }`;

/** A lamp behind a MOSFET that begins to conduct at 0.7 V or more. */
const lamp = (fitted: string, more = ''): string =>
  `lamp: { type: resistor, resistance: 50 Ω, power: 5 W, supply: bench, driver: { part: nmos-ao3400a, pin: PB1${fitted} }${more} }`;

/** The same on a chip whose pins do something else until firmware runs. */
const whose = (state: string, loads: string): string =>
  onChip(loads).replace('main: { chip: atmega328p,', `main: { chip: atmega328p, pins: { PB1: { at-boot: ${state} } },`);

/** An opto board that is active low: with the pin low its couplers get some 2 mA from the 5 V. */
const vents = (state: string, more: string): string =>
  whose(state, `vents: { part: relay-board-opto-low-5v-1, inputs: { 1: PB1 }, supply: bench${more} }`);

/** A bare ESP8266EX on exactly 3.3 V with what is fitted at its pins: GPIO0 has to be high at a reset, GPIO15 low. */
const strapped = (pins: string, loads: string): string =>
  onChip(loads)
    .replace('voltage: 5 V,', 'voltage: 3.3 V,')
    .replace('main: { chip: atmega328p,', `main: { chip: esp8266ex, pins: { ${pins} },`);

/** The 5 V board on a port; its second regulator takes up to 1.5 mA for itself. */
const usb = (state: string, active: string): string => `ampledger: 1
title: On the bench
ambient: 25 °C
supplies: { laptop: { type: usb2-port${state} } }
controllers: { main: { board: atmega328p-5v-board, powered: { usb: laptop }, draws: { active: ${active} } } }
`;

/** A coil behind an NPN on an output of a shift register. @param enable the register's line that holds its outputs off */
const registered = (enable = '', fitted = ''): string =>
  onChip(coil('bar.q0', ', safe-when: load-stopped'), {
    more: `expanders: { bar: { chip: 74hc595, supply: bench, control: { data: PB1, clock: PB2, latch: PB3${enable} } } }\n`,
  }).replace('main: { chip: atmega328p,', `main: { chip: atmega328p,${fitted}`);

/** The same coil on a channel of an array that is set over control lines. */
const serial = (enable = '', fitted = ''): string =>
  onChip('valve: { part: relay-coil-5v-70r, supply: bench, driver: { array: sink.1 }, safe-when: load-stopped }', {
    more: `arrays: { sink: { part: power-register-8, control: { data: PB1, clock: PB2, latch: PB3${enable} } } }\n`,
  }).replace('main: { chip: atmega328p,', `main: { chip: atmega328p,${fitted}`);

const HELD = ' pins: { PB0: { pull-up: 100 kΩ } },';

/** A servo whose signal hangs on a pin that floats. */
const servo = (more: string, fitted = ''): string =>
  onChip(
    `arm: { type: servo, voltage: 5 V, run: 200 mA, stall: 700 mA, idle: 10 mA, supply: bench, pin: PB1${more} }`,
  ).replace('main: { chip: atmega328p,', `main: { chip: atmega328p,${fitted}`);

/** A radio with an input that switches it on. */
const radio = (fitted = ''): string =>
  onChip(
    'radio: { type: module, idle: 1 mA, active: 100 mA, supply: bench, signals: { enable: PB1, data: PB2 } }',
  ).replace('main: { chip: atmega328p,', `main: { chip: atmega328p,${fitted}`);

/** A latching coil on the pin that the boot loader flashes, or on one that rests. */
const latching = (pin: string, safe: string): string =>
  onBoard(coil(pin, `, latching: one-coil, pulse: 50 ms, safe-when: ${safe}`));

/** A relay on such a pin, with nothing said of the load on its normally open side, and a lock on the other one. */
const bothSides = (pin: string): string =>
  onBoard(
    coil(
      pin,
      ', contact: { wired: normally-open, load: { type: lamp, voltage: 24 V DC, current: 100 mA }, other-side: { load: { type: resistive, voltage: 24 V DC, current: 200 mA }, safe-when: load-running } }',
    ),
  );

export const BOOT: readonly Case[] = [
  {
    rule: 'boot-drives',
    when: 'breaks where the boot loader flashes a pin on which a valve hangs that is safe only while it is stopped',
    verdict: 'breach',
    text: onBoard(coil('D13', ', safe-when: load-stopped')),
  },
  {
    rule: 'boot-drives',
    when: 'breaks where it does so to a relay whose other side has to keep a lock shut',
    verdict: 'breach',
    text: bothSides('D13'),
  },
  {
    rule: 'boot-drives',
    when: 'is a note where the file does not say what is safe',
    verdict: 'note',
    text: onBoard(coil('D13')),
  },
  {
    rule: 'boot-drives',
    when: 'is content on a pin beside it, which floats: 1 µA and a gain of hundreds are less than the coil holds with',
    verdict: 'silent',
    text: onBoard(coil('D12', ', safe-when: load-stopped')),
  },
  {
    rule: 'boot-drives',
    when: 'breaks where a pin is low that switches a relay board on',
    verdict: 'breach',
    text: vents('low', ', safe-when: load-stopped'),
  },
  {
    rule: 'boot-drives',
    when: 'is content with it where that is the safe state',
    verdict: 'silent',
    text: vents('low', ', safe-when: load-running'),
  },
  {
    rule: 'boot-drives',
    when: 'breaks where nothing pulls the board low and its load is to run',
    verdict: 'breach',
    text: vents('floating', ', safe-when: load-running'),
  },
  {
    rule: 'boot-drives',
    when: 'is content where nothing pulls it low and its load is to stand still',
    verdict: 'silent',
    text: vents('floating', ', safe-when: load-stopped'),
  },
  {
    rule: 'boot-drives',
    when: 'is a note where a mode of the file says that it is on',
    verdict: 'note',
    text: onChip(lamp(', pull-down: 100 kΩ'), { more: 'modes: { start: { active: [lamp], during: boot } }' }),
  },
  {
    rule: 'boot-drives',
    when: 'breaks where the pull-up inside the chip drives a gate: 5 V behind 20 to 50 kΩ',
    verdict: 'breach',
    text: whose('pulled-up', lamp('', ', safe-when: load-stopped')),
  },
  {
    rule: 'boot-drives',
    when: 'is content where 1 kΩ hold it against that: 5 V of 21 kΩ leave 0.24 V',
    verdict: 'silent',
    text: whose('pulled-up', lamp(', pull-down: 1 kΩ', ', safe-when: load-stopped')),
  },
  {
    rule: 'boot-drives',
    when: 'breaks where a register wakes as it likes and a valve with it',
    verdict: 'breach',
    text: registered(),
  },
  {
    rule: 'boot-drives',
    when: 'breaks where its enable line hangs on a pin that floats',
    verdict: 'breach',
    text: registered(', enable: PB0'),
  },
  {
    rule: 'boot-drives',
    when: 'is content where a resistor keeps that line high: the outputs are off, and a base in the air leaks 1 µA',
    verdict: 'silent',
    text: registered(', enable: PB0', HELD),
  },
  {
    rule: 'boot-drives',
    when: 'breaks where the channels of an array are set over control lines, and wake as they like',
    verdict: 'breach',
    text: serial(),
  },
  {
    rule: 'boot-drives',
    when: 'is content where a resistor keeps their enable line high',
    verdict: 'silent',
    text: serial(', enable: PB0', HELD),
  },
  {
    rule: 'boot-drives',
    when: 'breaks where pulses at a reset move a latching relay, which stays so',
    verdict: 'breach',
    text: latching('D13', 'load-stopped'),
  },
  {
    rule: 'boot-drives',
    when: 'is content where nothing moves a latching relay whose load is to run: it stays as it was',
    verdict: 'silent',
    text: latching('D12', 'load-running'),
  },
  {
    rule: 'boot-floats',
    when: 'is a note where nothing holds the signal of a servo',
    verdict: 'note',
    text: servo(''),
  },
  {
    rule: 'boot-floats',
    when: 'strains where that servo may not move',
    verdict: 'strain',
    text: servo(', safe-when: load-stopped'),
  },
  {
    rule: 'boot-floats',
    when: 'strains where 820 kΩ hold its signal: 1 µA makes 0.82 V of it',
    verdict: 'strain',
    text: servo(', safe-when: load-stopped', ' pins: { PB1: { pull-down: 820 kΩ } },'),
  },
  {
    rule: 'boot-floats',
    when: 'is content with 750 kΩ',
    verdict: 'silent',
    text: servo(', safe-when: load-stopped', ' pins: { PB1: { pull-down: 750 kΩ } },'),
  },
  {
    rule: 'boot-floats',
    when: 'is content where the pin is pulled inside the chip',
    verdict: 'silent',
    text: servo(', safe-when: load-stopped', ' pins: { PB1: { at-boot: pulled-down } },'),
  },
  {
    rule: 'boot-floats',
    when: 'is a note where nothing holds the enable line of a radio, and none for its data line',
    verdict: 'note',
    text: radio(),
  },
  {
    rule: 'boot-floats',
    when: 'is content where a resistor holds that line',
    verdict: 'silent',
    text: radio(' pins: { PB1: { pull-down: 100 kΩ } },'),
  },
  {
    rule: 'boot-floats',
    when: 'strains where nothing holds a gate whose load is safe only while it is stopped',
    verdict: 'strain',
    text: onChip(lamp('', ', safe-when: load-stopped')),
  },
  {
    rule: 'boot-floats',
    when: 'is a note where the file does not say what is safe',
    verdict: 'note',
    text: onChip(lamp('')),
  },
  {
    rule: 'boot-floats',
    when: 'strains where 1 µA at 750 kΩ come to 0.75 V, and the gate may conduct from 0.7 V on',
    verdict: 'strain',
    text: onChip(lamp(', pull-down: 750 kΩ', ', safe-when: load-stopped')),
  },
  {
    rule: 'boot-floats',
    when: 'is content where 1 µA at 680 kΩ come to 0.68 V',
    verdict: 'silent',
    text: onChip(lamp(', pull-down: 680 kΩ', ', safe-when: load-stopped')),
  },
  {
    rule: 'boot-floats',
    when: 'strains where a pull-up inside the chip and a resistor leave a gate half way',
    verdict: 'strain',
    text: whose('pulled-up', lamp(', pull-down: 10 kΩ', ', safe-when: load-stopped')),
  },
  {
    rule: 'boot-floats',
    when: 'is a note where the logic inputs of a bridge hang on pins that float',
    verdict: 'note',
    text: onBoard(
      'gate: { type: dc-motor, voltage: 5 V, run: 100 mA, stall: 400 mA, supply: bench, driver: { part: motor-driver-l293d, pins: [D5, D6] } }',
    ),
  },
  {
    rule: 'boot-floats',
    when: 'is content where the bridge holds them at ground itself: 1 µA through at most 150 kΩ',
    verdict: 'silent',
    text: onBoard(
      'gate: { type: dc-motor, voltage: 5 V, run: 100 mA, stall: 400 mA, supply: bench, driver: { part: h-bridge-3a6, pins: [D5, D6] } }',
    ),
  },
  {
    rule: 'strap-loaded',
    when: 'is a note where an LED hangs from GPIO0 to ground: against 10 kΩ it leaves less than 2.48 V',
    verdict: 'note',
    text: strapped('GPIO0: { pull-up: 10 kΩ }', 'lamp: { part: led-red-5mm, pin: GPIO0, series: 330 Ω }'),
  },
  {
    rule: 'strap-loaded',
    when: 'is content where the LED hangs from the rail to GPIO0',
    verdict: 'silent',
    text: strapped('GPIO0: { pull-up: 10 kΩ }', 'lamp: { part: led-red-5mm, pin: GPIO0, active: low, series: 330 Ω }'),
  },
  {
    rule: 'strap-loaded',
    when: 'is a note where 71 kΩ against 24 kΩ leave 3.3 V × 71/95 less 18 mV for the leakage, 2.45 V of the 2.48 V that surely read high',
    verdict: 'note',
    text: strapped('GPIO0: { pull-up: 24 kΩ }', 'lamp: { type: resistor, resistance: 71 kΩ, pin: GPIO0 }'),
  },
  {
    rule: 'strap-loaded',
    when: 'is content with 75 kΩ there: 3.3 V × 75/99, less 18 mV for the leakage, are 2.48 V',
    verdict: 'silent',
    text: strapped('GPIO0: { pull-up: 24 kΩ }', 'lamp: { type: resistor, resistance: 75 kΩ, pin: GPIO0 }'),
  },
  {
    rule: 'strap-loaded',
    when: 'is a note where a button hangs on such a pin',
    verdict: 'note',
    text: strapped('GPIO0: { pull-up: 10 kΩ }', '{}').replace(
      /loads:[^]*$/,
      'incoming: { stop: { type: contact, pin: GPIO0, closes-to: ground } }\n',
    ),
  },
  {
    rule: 'strap-loaded',
    when: 'is a note where the file says that a pin has to be low, and 10 kΩ pull it up',
    verdict: 'note',
    text: onChip('lamp: { type: resistor, resistance: 1 kΩ, active: low, pin: PB1 }').replace(
      'main: { chip: atmega328p,',
      'main: { chip: atmega328p, pins: { PB1: { strap: low } },',
    ),
  },
  {
    rule: 'supply-current',
    when: 'is a note where a port owes 100 mA until it is configured, and 110 mA are drawn before firmware runs',
    verdict: 'note',
    text: usb('', '110 mA'),
  },
  {
    rule: 'supply-current',
    when: 'is content with 95 mA',
    verdict: 'silent',
    text: usb('', '95 mA'),
  },
  {
    rule: 'supply-current',
    when: 'is content with 110 mA where the file says that the port is configured',
    verdict: 'silent',
    text: usb(', state: configured', '110 mA'),
  },
];
