/** Cases of the rules about chips and rails whose supply is dead while others live. */
import type { Case } from './case.js';
import { onBoard, onChip } from './case.js';

/** An opto board beside the 5 V board, each on a supply of its own; `logic` feeds its inputs. */
const apart = (logic: string, more = ''): string =>
  onBoard(
    `vents: { part: relay-board-opto-low-5v-1, inputs: { 1: D5 }, logic-supply: ${logic}, coil-supply: brick, jumper: ${logic === 'brick' ? 'fitted' : 'removed'}${more} }`,
    { supplies: 'bench: { voltage: 5 V, current: 5 A }, brick: { voltage: 5 V, current: 2 A }' },
  );

/** A bare chip on exactly 5 V, its pins exactly 25 Ω, and beside it a supply that may die. @param quiet a mode without it */
const beside = (loads: string, quiet = false, more = ''): string =>
  onChip(loads, { more: `${more}${quiet ? 'modes: { quiet: { active: [], without: [brick] } }' : ''}` }).replace(
    'supplies: { bench: { voltage: 5 V, current: 5 A } }',
    'supplies: { bench: { voltage: 5 V, current: 5 A }, brick: { voltage: 5 V, current: 2 A } }',
  );

/** A lamp between that supply and a pin that switches it on low: while the supply is dead, the pin that is high feeds it. */
const lamp = (ohms: string): string =>
  beside(`lamp: { type: resistor, resistance: ${ohms}, power: 5 W, active: low, pin: PB1, supply: brick }`);

/** Several such lamps of 125 Ω. */
const lamps = (pins: string): string =>
  beside(`lamps: { type: resistor, resistance: 125 Ω, power: 5 W, active: low, pins: [${pins}], supply: brick }`);

/** A shift register on one supply, steered by a chip on the other: its inputs bear 20 mA. */
const register = (supply: string, quiet = false): string =>
  beside(
    'level: { part: led-red-5mm, pins: [bar.q0], series: 680 Ω }',
    quiet,
    `expanders: { bar: { chip: 74hc595, supply: ${supply}, control: { data: PB1, clock: PB2, latch: PB3 } } }
`,
  );

/**
 * A sensor that takes exactly 1 mA, on a bus that the chip's own rail pulls up. While its supply is dead it takes 0.12 mA at
 * 0.6 V, half of it through each pull-up and through a clamp that keeps 0.43 V: (5 - 0.6 - 0.43) V / 60 µA are 66 kΩ.
 */
const sensor = (pull: string, quiet = false): string =>
  beside(
    'climate: { type: module, idle: 1 mA, active: 1 mA, supply: brick, signals: { sda: PC4, scl: PC5 } }',
    quiet,
  ).replace(
    'main: { chip: atmega328p,',
    `main: { chip: atmega328p, pins: { PC4: { pull-up: ${pull} }, PC5: { pull-up: ${pull} } },`,
  );

/** A coil on 12 V behind an array whose clamps lead to a supply of another 12 V. */
const clampedTo = (common: string): string =>
  onChip(
    'bell: { part: relay-coil-12v-400mw, supply: brick, driver: { array: sink.1, pin: PB1 }, safe-when: load-stopped }',
    { more: `arrays: { sink: { part: darlington-array-7, common: ${common} } }\n` },
  ).replace(
    'current: 5 A }',
    'current: 5 A }, brick: { voltage: 12 V, current: 1 A }, other: { voltage: 12 V, current: 1 A }',
  );

/**
 * A chip on a source that may die, and a lamp between another one and a pin: (5 - 0.44) V, less one clamp at 0.1 mA and at
 * least, over 45.6 kΩ are 0.1 mA. @param reverse what the source says of itself @param quiet a mode without it
 */
const fedBy = (ohms: string, reverse: string, quiet = false): string =>
  onChip(`lamp: { type: resistor, resistance: ${ohms}, active: low, pin: PB1, supply: brick }`, {
    more: quiet ? 'modes: { quiet: { active: [], without: [bench] } }' : '',
  }).replace('current: 5 A }', `current: 5 A${reverse} }, brick: { voltage: 5 V, current: 2 A, reverse: tolerated }`);

const FORBIDS = ', reverse: not-allowed';

/** A chip on 5 V and the driver of a load on another supply, which may die. @param driver with its load, as rows */
const driven = (driver: string, brick = 'brick: { voltage: 12 V, current: 2 A }'): string =>
  onChip(driver, { more: 'arrays: { sink: { part: darlington-array-7, common: brick } }' }).replace(
    'current: 5 A }',
    `current: 5 A }, ${brick}`,
  );

const bridge = (more: string): string =>
  driven(
    `fan: { type: dc-motor, run: 0.1 A, stall: 0.5 A, supply: brick, driver: { type: h-bridge, pins: [PB1, PB2], on-resistance: 0.5 Ω, maximum-current: 1 A${more} } }`,
    'brick: { voltage: 6 V, current: 2 A }, logic: { voltage: 5 V, current: 1 A }',
  );

const BELL = 'bell: { part: relay-coil-12v-400mw, supply: brick, driver: { array: sink.1, pin: PB1 } }';

export const DEAD: readonly Case[] = [
  {
    rule: 'dead-fed',
    when: 'strains where 43 kΩ from a live supply push 0.11 mA back through a pin into a source that bears nothing back',
    verdict: 'strain',
    text: fedBy('43 kΩ', FORBIDS),
  },
  {
    rule: 'dead-fed',
    when: 'is content with 47 kΩ: less than 0.1 mA',
    verdict: 'silent',
    text: fedBy('47 kΩ', FORBIDS),
  },
  {
    rule: 'dead-fed',
    when: 'breaks where a mode of the file says that it is dead',
    verdict: 'breach',
    text: fedBy('1 kΩ', FORBIDS, true),
  },
  {
    rule: 'dead-fed',
    when: 'is unproven then where nobody says what the source bears',
    verdict: 'unproven',
    text: fedBy('1 kΩ', '', true),
  },
  {
    rule: 'dead-fed',
    when: 'is a note where no mode says so, and a pin that is high feeds a source of which nobody says anything',
    verdict: 'note',
    text: lamp('1 kΩ'),
  },
  {
    rule: 'dead-fed',
    when: 'is content where the source bears it',
    verdict: 'silent',
    text: fedBy('1 kΩ', ', reverse: tolerated', true),
  },
  {
    rule: 'dead-fed',
    // (5 - 0.53) V / (25 + 1850 + 324) Ω, through base and collector of the first transistor.
    when: 'strains where an input of a Darlington array leads 2 mA backwards through its coil into a source that forbids it',
    verdict: 'strain',
    text: driven(BELL, `brick: { voltage: 12 V, current: 2 A${FORBIDS} }`),
  },
  {
    rule: 'dead-fed',
    when: 'is content where only practice advises against it, for no more than two junctions leave comes up there',
    verdict: 'silent',
    text: driven(BELL, 'brick: { type: mains-adapter-12v-1a }'),
  },
  {
    rule: 'dead-fed',
    // (12 - 1) V / 324 Ω
    when: 'strains where the clamps of an array lead 34 mA from the coil into another source that is dead',
    verdict: 'strain',
    text: driven(
      BELL,
      `coil: { voltage: 12 V, current: 2 A, reverse: tolerated }, brick: { voltage: 12 V, current: 1 A${FORBIDS} }`,
    ).replace('supply: brick, driver', 'supply: coil, driver'),
  },
  {
    rule: 'dead-drives',
    when: 'breaks where the clamps of an array lead to another supply: while that is dead, they are a way past the switch',
    verdict: 'breach',
    text: clampedTo('other'),
  },
  {
    rule: 'dead-drives',
    when: 'is content where they lead to the supply of the coil',
    verdict: 'silent',
    text: clampedTo('brick'),
  },
  {
    rule: 'dead-drives',
    when: 'breaks where some 2 mA from the brick light a coupler through the pin of a board that is switched off',
    verdict: 'breach',
    text: apart('brick', ', safe-when: load-stopped'),
  },
  {
    rule: 'dead-drives',
    when: 'is a note where the file does not say what is safe',
    verdict: 'note',
    text: apart('brick'),
  },
  {
    rule: 'dead-drives',
    when: 'is content where the load may run',
    verdict: 'silent',
    text: apart('brick', ', safe-when: load-running'),
  },
  {
    rule: 'dead-drives',
    when: 'is content where its inputs die with the chip',
    verdict: 'silent',
    text: apart('main.5v', ', safe-when: load-stopped'),
  },
  {
    rule: 'dead-drives',
    when: 'strains where 1 MΩ hold a gate to the brick, and the dead pin behind 2.2 MΩ leaves it 1.4 V: neither 0.7 V nor 1.5 V',
    verdict: 'strain',
    text: onBoard(
      'lamp: { type: resistor, resistance: 50 Ω, power: 5 W, supply: brick, safe-when: load-stopped, driver: { type: pmos, pin: D5, gate-resistor: 2.2 MΩ, pull-up: 1 MΩ, threshold: 0.7 to 1.5 V, on-resistance: { value: 0.1 Ω, at: 4.5 V }, maximum-current: 2 A, maximum-voltage: 20 V } }',
      { supplies: 'bench: { voltage: 5 V, current: 5 A }, brick: { voltage: 5 V, current: 2 A }' },
    ),
  },
  {
    rule: 'dead-pushed',
    when: 'strains where a pin feeds a dead supply through 99 Ω: 5 V / (99 + 25) Ω are over 40 mA',
    verdict: 'strain',
    text: lamp('99 Ω'),
  },
  {
    rule: 'dead-pushed',
    when: 'is content with 100 Ω: exactly 40 mA',
    verdict: 'silent',
    text: lamp('100 Ω'),
  },
  {
    rule: 'dead-pushed',
    when: 'strains where seven lamps feed a dead supply with 33 mA each: 233 mA, where the chip’s supply pins bear 200 mA',
    verdict: 'strain',
    text: lamps('PB1, PB2, PB3, PC1, PC2, PD5, PD6'),
  },
  {
    rule: 'dead-pushed',
    when: 'is content with three of them',
    verdict: 'silent',
    text: lamps('PB1, PB2, PB3'),
  },
  {
    rule: 'dead-pushed',
    when: 'strains where nothing but a pin stands before the clamp of a chip that is dead',
    verdict: 'strain',
    text: register('brick'),
  },
  {
    rule: 'dead-pushed',
    when: 'breaks where a mode of the file says so',
    verdict: 'breach',
    text: register('brick', true),
  },
  {
    rule: 'dead-pushed',
    when: 'is content where both live from one supply',
    verdict: 'silent',
    text: register('bench'),
  },
  {
    rule: 'dead-pushed',
    when: 'is a note where nobody publishes the clamp of a strip that is dead',
    verdict: 'note',
    text: beside('strip: { type: pixels, count: 30, pin: PB1, supply: brick, full-each: 60 mA, idle-each: 1 mA }'),
  },
  {
    rule: 'dead-pushed',
    when: 'is content with 180 Ω in the line of such a strip: less than 5 V / 205 Ω',
    verdict: 'silent',
    text: beside(
      'strip: { type: pixels, count: 30, pin: PB1, supply: brick, full-each: 60 mA, idle-each: 1 mA, series: 180 Ω }',
    ),
  },
  {
    rule: 'dead-pushed',
    when: 'strains where nothing but a pin stands before the input of a gate driver that is dead: 4.4 V over 25 Ω',
    verdict: 'strain',
    text: driven(
      'lamp: { type: resistor, resistance: 24 Ω, power: 10 W, supply: brick, driver: { pin: PB1, stages: [ { part: gate-driver-tc4422, supply: brick }, { part: nmos-irlz44n, pull-down: 100 kΩ } ] } }',
    ),
  },
  {
    rule: 'dead-pushed',
    when: 'is a note where the logic of a bridge is dead and nobody says what its inputs have',
    verdict: 'note',
    text: bridge(', logic-supply: logic'),
  },
  {
    rule: 'dead-pushed',
    when: 'is content where they bear 7 V, whatever feeds them',
    verdict: 'silent',
    text: bridge(', logic-supply: logic, input-maximum: 7 V'),
  },
  {
    rule: 'dead-pushed',
    when: 'is content where its logic lives from the supply of the chip',
    verdict: 'silent',
    text: bridge(', logic-supply: bench'),
  },
  {
    rule: 'dead-lifted',
    when: 'is a note where pull-ups of 62 kΩ lift what is dead above 0.6 V',
    verdict: 'note',
    text: sensor('62 kΩ'),
  },
  {
    rule: 'dead-lifted',
    when: 'strains where a mode of the file says so',
    verdict: 'strain',
    text: sensor('62 kΩ', true),
  },
  {
    rule: 'dead-lifted',
    when: 'is no more than a note with 68 kΩ then: less, if it draws in proportion; but nobody says how little it takes',
    verdict: 'note',
    text: sensor('68 kΩ', true),
  },
  {
    rule: 'dead-lifted',
    // 2 x (5 - 0.43) V / 100 kΩ
    when: 'is content with 100 kΩ: less than 0.1 mA comes in',
    verdict: 'silent',
    text: sensor('100 kΩ', true),
  },
  {
    rule: 'dead-lifted',
    when: 'is content where the bus and what hangs on it live from one supply',
    verdict: 'silent',
    text: sensor('4.7 kΩ').replace('supply: brick, signals', 'supply: bench, signals'),
  },
];
