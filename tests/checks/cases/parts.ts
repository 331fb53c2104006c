/** Cases of the rules about what loads and resistors bear. */
import type { Case } from './case.js';
import { onChip, onSupplies } from './case.js';

/** A lamp that drops exactly 2 V at 20 mA and 25 °C, with 125 Ω behind a pin of 25 Ω: 20 mA. */
const lamp = (most: string): string =>
  `load: { type: led, forward-voltage: { value: 2 V, at: 20 mA }, pin: PB1, series: 125 Ω${most} }`;
/** On exactly 5 V: 100 Ω turn 0.25 W to heat. */
const resistor = (ohms: string, power = ''): string =>
  onSupplies(
    'bench: { voltage: 5 V, current: 5 A }',
    `load: { type: resistor, resistance: ${ohms}, supply: bench${power} }`,
  );

/** A load of exactly so many amperes at the end of a wire. */
const wired = (amps: string, wire: string, policy: 'everyday' | 'classroom' = 'everyday'): string =>
  onSupplies(
    'bench: { voltage: 12 V, current: 50 A }',
    `load: { type: constant-current, current: ${amps}, supply: bench }`,
    { policy, more: `wires: [{ from: bench, to: load, ${wire} }]` },
  );

/** The input of a solid-state relay that is pulled down from exactly 5 V by a pin: 1 V in its LED, 375 Ω and the pin's 25 Ω. */
const solidState = (input: string, more = 'supply: bench'): string =>
  onChip(
    `load: { type: solid-state-relay, pin: PB1, active: low, ${more}, input: { led-drop: { value: 1 V, at: 10 mA }, series: 375 Ω, ${input} } }`,
    { policy: 'classroom' },
  );
/** The same from a supply of its own, 1.2 V above the pin's high level: what its LED keeps then is next to nothing, or not. */
const pulledHigher = (off: string): string =>
  solidState(`on-current: 5 mA, off-current: ${off}`, 'supply: higher').replace(
    'bench: { voltage: 5 V, current: 5 A }',
    'bench: { voltage: 5 V, current: 5 A }, higher: { voltage: 6.4 V, current: 5 A }',
  );

/** On exactly 5 V: 250 Ω carry 20 mA. */
const needing = (needs: string, ohms = '250 Ω'): string =>
  onSupplies(
    'bench: { voltage: 5 V, current: 5 A }',
    `load: { type: resistor, resistance: ${ohms}, power: 5 W, supply: bench, needs: ${needs} }`,
  );

/** LEDs of 1.9 to 2.1 V on exactly 5 V behind 100 Ω. */
const together = (more: string): string =>
  onSupplies(
    'bench: { voltage: 5 V, current: 5 A }',
    `load: { type: led, forward-voltage: { value: 1.9 to 2.1 V, at: 20 mA }, maximum-current: 100 mA, series: 100 Ω, supply: bench, ${more} }`,
  );

/** A valve on exactly 5 V, pulsed, with a diode across it that blocks again after so long. */
const pulsed = (frequency: string, clamp: string, type = 'resistance: 100 Ω'): string =>
  onChip(
    `load: { type: coil, voltage: 3 V, ${type}, pull-in: 60 %, supply: bench, driver: { part: nmos-ao3400a, pin: PB1, pull-down: 100 kΩ }, clamp: ${clamp}, pwm: { frequency: ${frequency}, duty: 90 % } }`,
  );
const OWN_DIODE = 'quick: { extends: diode-1n4148, recovery-time: 4 us }';
const withOwnDiode = (frequency: string): string =>
  `${pulsed(frequency, '{ part: quick }')}\nparts: { ${OWN_DIODE} }\n`;

/** Six LEDs between three pins, whose drops lie so far apart. */
const charlieplexed = (drop: string): string =>
  onChip(
    `a: { type: display, charlieplexed-pins: [PD0..PD2], series: 100 Ω, forward-voltage: { value: ${drop}, at: 10 mA }, maximum-current: 20 mA }`,
  );

/** Four digits of one segment each that drops exactly 2 V at 20 mA and 25 °C, with 100 Ω between two pins of 25 Ω on 5 V: 20 mA. */
const scanned = (most: string, more = ''): string =>
  onChip(
    `load: { type: display, common: cathode, forward-voltage: { value: 2 V, at: 20 mA }, maximum-current: ${most}, series: 100 Ω, segment-pins: [PD0], digit-pins: [PB0..PB3]${more && `, ${more}`} }`,
    { policy: 'classroom' },
  );

export const PARTS: readonly Case[] = [
  {
    rule: 'leds-glow',
    when: 'strains on red and white LEDs between the same pins: one white drops more than two reds',
    verdict: 'strain',
    text: charlieplexed('1.6 to 3.4 V typ 2.3 V'),
  },
  {
    rule: 'leds-glow',
    when: 'is content with LEDs of one kind',
    verdict: 'silent',
    text: charlieplexed('1.8 to 2.2 V'),
  },
  {
    rule: 'slow-clamp',
    when: 'strains where a diode takes more than a hundredth of a period to block again: 4 µs of 400 µs',
    verdict: 'strain',
    text: withOwnDiode('2.51 kHz'),
  },
  {
    rule: 'slow-clamp',
    when: 'is content with a hundredth',
    verdict: 'silent',
    text: withOwnDiode('2.5 kHz'),
  },
  {
    rule: 'slow-clamp',
    when: 'asks how fast a diode is at pulses at which it could matter',
    verdict: 'unproven',
    text: pulsed('2.1 kHz', '{ type: diode, current: 1 A }'),
  },
  {
    rule: 'relay-pulsed',
    when: 'strains where an armature can follow the pulses',
    verdict: 'strain',
    text: pulsed('990 Hz', '{ type: schottky, current: 1 A }'),
  },
  {
    rule: 'relay-pulsed',
    when: 'is content where it cannot',
    verdict: 'silent',
    text: pulsed('1 kHz', '{ type: schottky, current: 1 A }'),
  },
  {
    rule: 'leds-share-resistor',
    when: 'strains where two LEDs hang side by side on one resistor',
    verdict: 'strain',
    text: together('in-parallel: 2'),
  },
  {
    rule: 'leds-share-resistor',
    when: 'is content where they stand in a row',
    verdict: 'silent',
    text: together('in-series: 2'),
  },
  {
    rule: 'load-needs',
    when: 'breaks where three LEDs of 2 V stand in a row on 5 V',
    verdict: 'breach',
    text: together('in-series: 3'),
  },
  {
    rule: 'load-needs',
    when: 'is content where two of them do',
    verdict: 'silent',
    text: together('in-series: 2'),
  },
  {
    rule: 'load-needs',
    when: 'breaks where the input of a solid-state relay gets 10 mA and turns on with 10.1 mA',
    verdict: 'breach',
    text: solidState('on-current: 10.1 mA'),
  },
  {
    rule: 'load-needs',
    when: 'is content where it turns on with 9.99 mA and nothing has to be in hand',
    verdict: 'silent',
    text: solidState('on-current: 9.99 mA').replace('policy: classroom', 'policy: { drive: 0 % }'),
  },
  {
    rule: 'input-release',
    when: 'breaks where a supply above the pin’s high level leaves the input 1 mA, and it is off below 0.5 mA',
    verdict: 'breach',
    text: pulledHigher('0.5 mA'),
  },
  {
    rule: 'input-release',
    when: 'is content where it is off below 2 mA',
    verdict: 'silent',
    text: pulledHigher('2 mA'),
  },
  {
    rule: 'input-release',
    when: 'asks when an input is off of which only the window is known',
    verdict: 'unproven',
    text: onChip('load: { type: solid-state-relay, pin: PB1, input: { window: 3 to 32 V, maximum-current: 20 mA } }'),
  },
  {
    rule: 'load-voltage',
    when: 'breaks where an input that turns on at 4.6 V gets 4.5 V: 5 V less 20 mA in a pin of 25 Ω',
    verdict: 'breach',
    text: onChip(
      'load: { type: solid-state-relay, pin: PB1, input: { window: 4.6 to 32 V, maximum-current: 20 mA, on-current: 20 mA } }',
    ),
  },
  {
    rule: 'wire-idle',
    when: 'is a note where another supply feeds what the wire leads to',
    verdict: 'note',
    text: onSupplies(
      'bench: { voltage: 12 V, current: 5 A }, brick: { voltage: 12 V, current: 5 A }',
      'load: { type: constant-current, current: 1 A, supply: bench }',
      { more: 'wires: [{ from: brick, to: load, length: 1 m, gauge: AWG 20 }]' },
    ),
  },
  {
    rule: 'wire-idle',
    when: 'is content with a wire that carries something',
    verdict: 'silent',
    text: wired('1 A', 'length: 1 m, gauge: AWG 20'),
  },
  {
    rule: 'wire-current',
    when: 'breaks at 1.01 A over a plug for 1 A',
    verdict: 'breach',
    text: wired('1.01 A', 'contact-resistance: 50 mΩ, rating: 1 A'),
  },
  {
    rule: 'wire-current',
    when: 'is thin at 810 mA over a plug for 1 A',
    verdict: 'thin',
    text: wired('810 mA', 'contact-resistance: 50 mΩ, rating: 1 A'),
  },
  {
    rule: 'wire-current',
    when: 'is content with exactly 800 mA over a plug for 1 A',
    verdict: 'silent',
    text: wired('800 mA', 'contact-resistance: 50 mΩ, rating: 1 A'),
  },
  {
    rule: 'wire-current',
    when: 'strains at 3.51 A where practice trusts a wire of AWG 24 with 3.5 A',
    verdict: 'strain',
    text: wired('3.51 A', 'length: 1 m, gauge: AWG 24'),
  },
  {
    rule: 'wire-current',
    when: 'is content with exactly 3.5 A, practice being a margin already',
    verdict: 'silent',
    text: wired('3.5 A', 'length: 1 m, gauge: AWG 24'),
  },
  {
    rule: 'wire-current',
    when: 'strains at 2.01 A where the same wire lies among others',
    verdict: 'strain',
    text: wired('2.01 A', 'length: 1 m, gauge: AWG 24, bundled: true'),
  },
  {
    rule: 'wire-current',
    when: 'asks how thick a wire is of which only the resistance is known',
    verdict: 'unproven',
    text: wired('100 mA', 'resistance: 0.2 Ω'),
  },
  {
    rule: 'wire-current',
    when: 'works the thickness out where the length is known as well',
    verdict: 'silent',
    text: wired('100 mA', 'resistance: 0.2 Ω, length: 2 m'),
  },
  {
    rule: 'load-needs',
    when: 'breaks where 20 mA flow and 20.1 mA are needed',
    verdict: 'breach',
    text: needing('20.1 mA'),
  },
  {
    rule: 'load-needs',
    when: 'is content with exactly 20 mA',
    verdict: 'silent',
    text: needing('20 mA'),
  },
  {
    rule: 'load-needs',
    when: 'strains where only the worst build, 5 % less, falls short of 19.5 mA',
    verdict: 'strain',
    text: needing('19.5 mA', '250 Ω ±5 %'),
  },
  {
    rule: 'load-current',
    when: 'breaks at 20 mA in a lamp for 19.8 mA',
    verdict: 'breach',
    text: onChip(lamp(', maximum-current: 19.8 mA'), { policy: 'classroom' }),
  },
  {
    rule: 'load-current',
    when: 'is content with a lamp for 20.01 mA where nothing has to be in hand',
    verdict: 'silent',
    text: onChip(lamp(', maximum-current: 20.01 mA'), { policy: 'classroom' }),
  },
  {
    rule: 'load-current',
    when: 'is thin at 20 of 24.8 mA',
    verdict: 'thin',
    text: onChip(lamp(', maximum-current: 24.8 mA')),
  },
  {
    rule: 'load-current',
    when: 'is content with 20 of 25.1 mA',
    verdict: 'silent',
    text: onChip(lamp(', maximum-current: 25.1 mA')),
  },
  {
    rule: 'load-current',
    when: 'asks what a lamp may carry where nobody says so',
    verdict: 'unproven',
    text: onChip(lamp('')),
  },
  {
    rule: 'load-current',
    when: 'asks what a motor draws when it is blocked',
    verdict: 'unproven',
    text: onSupplies('bench: { voltage: 5 V, current: 5 A }', 'load: { type: dc-motor, run: 100 mA, supply: bench }'),
  },
  {
    rule: 'load-current',
    when: 'is content with a motor whose stall current is stated',
    verdict: 'silent',
    text: onSupplies(
      'bench: { voltage: 5 V, current: 5 A }',
      'load: { type: dc-motor, run: 100 mA, stall: 500 mA, supply: bench }',
    ),
  },
  {
    rule: 'resistor-power',
    when: 'breaks at 0.2525 W where the usual 0.25 W is taken: 25 V² / 99 Ω',
    verdict: 'breach',
    text: resistor('99 Ω'),
  },
  {
    rule: 'resistor-power',
    when: 'is content with exactly 0.25 W, a figure of practice',
    verdict: 'silent',
    text: resistor('100 Ω'),
  },
  {
    rule: 'resistor-power',
    when: 'is thin at 0.25 of a stated 0.31 W',
    verdict: 'thin',
    text: resistor('100 Ω', ', power: 0.31 W'),
  },
  {
    rule: 'resistor-power',
    when: 'is content with 0.25 of a stated 0.3125 W',
    verdict: 'silent',
    text: resistor('100 Ω', ', power: 0.3125 W'),
  },
  {
    rule: 'scan-stops',
    when: 'strains where a segment that is lit a quarter of the time carries 20 mA, and bears 19 mA for ever',
    verdict: 'strain',
    text: scanned('19 mA'),
  },
  { rule: 'scan-stops', when: 'is content where it bears 20 mA', verdict: 'silent', text: scanned('20.01 mA') },
  {
    rule: 'display-flickers',
    when: 'notes 59 pictures a second',
    verdict: 'note',
    text: scanned('20.01 mA', 'refresh: 59 Hz'),
  },
  {
    rule: 'display-flickers',
    when: 'strains where 20 pictures a second show one digit after another',
    verdict: 'strain',
    text: scanned('20.01 mA', 'refresh: 20 Hz'),
  },
  {
    rule: 'display-flickers',
    when: 'is content with exactly 60',
    verdict: 'silent',
    text: scanned('20.01 mA', 'refresh: 60 Hz'),
  },
];
