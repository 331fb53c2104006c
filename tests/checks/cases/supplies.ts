/** Cases of the rules about supplies, inlets, fuses, regulators and rails. */
import type { Case } from './case.js';
import { onBoard, onChip, onSupplies } from './case.js';

const draws = (amps: string, from = 'main.5v'): string =>
  `pump: { type: constant-current, current: ${amps}, supply: ${from} }`;
const QUIET = 'regulator-3v3: { quiescent: 0 mA }';
/** The board's own 50 mA and what a load draws go through a fuse that holds 500 mA. */
const fused = (amps: string): string => onBoard(draws(amps), { regulators: `fuse-usb: { hold: 500 mA }, ${QUIET}` });
const alone = (amps: string, current = ', current: 1 A', policy?: 'classroom'): string =>
  onSupplies(`bench: { voltage: 5 V${current} }`, draws(amps, 'bench'), policy ? { policy } : {});

/** The 3.3 V regulator straight from exactly 5 V, loaded with 50 mA: (5 - 3.3) V x 50 mA = 85 mW. */
const regulated = (figures: string, policy: 'everyday' | 'classroom' = 'everyday'): string =>
  onBoard(draws('50 mA', 'main.3v3'), {
    policy,
    powered: '5v: bench',
    regulators: `regulator-3v3: { voltage: 3.3 V, quiescent: 0 mA, ${figures} }`,
  });
/** 50 mA of board and 50 mA of load through the barrel's diode. */
const barrel = (most: string, policy: 'everyday' | 'classroom' = 'everyday'): string =>
  onBoard(draws('50 mA'), {
    policy,
    supplies: 'bench: { voltage: 9 V, current: 5 A }',
    powered: 'barrel: bench',
    regulators: `diode-barrel: { maximum-current: ${most} }, regulator-5v: { quiescent: 0 mA }, ${QUIET}`,
  });
const TWO = 'bench: { voltage: 5 V, current: 5 A }, brick: { voltage: 5 V, current: 2 A }';

/** A module that works from 4.5 to 5.5 V, behind 1 Ω that takes 100 mV. */
const windowed = (volts: string, window = '4.5 to 5.5 V'): string =>
  onSupplies(
    `bench: { voltage: ${volts}, current: 5 A }`,
    `pump: { type: module, active: 100 mA, idle: 100 mA, series: 1 Ω, supply: bench, supply-voltage: ${window} }`,
  );

/** A module for 4.5 V and more beside a servo, on 5 V behind 1 Ω. */
const beside = (stall: string): string =>
  onSupplies(
    'bench: { voltage: 5 V, resistance: 1 Ω, current: 5 A }',
    `pump: { type: module, active: 10 mA, idle: 10 mA, supply: bench, supply-voltage: 4.5 to 5.5 V }
     b: { type: servo, run: 100 mA, stall: ${stall}, supply: bench }`,
  );

/** A motor that starts on 3 V; its stall of 1 A takes 1 V in the MOSFET. */
const starting = (volts: string): string =>
  onSupplies(
    `bench: { voltage: ${volts}, current: 5 A }, logic: { voltage: 5 V, current: 1 A }`,
    'pump: { type: dc-motor, run: 100 mA, stall: 1 A, minimum-voltage: 3 V, series: 1 Ω, supply: bench }',
    { policy: 'classroom' },
  );

/** 10 mA and a capacitor straight on the supply. */
const charging = (farads: string): string =>
  `pump: { type: constant-current, current: 10 mA, supply: bench, input-capacitance: ${farads} }`;

/** The 5 V board at a USB port. @param own what its profile says of capacitors at the inlet */
const onPort = (more: string, own?: string): string => `ampledger: 1
title: On the bench
parts:
  board:
    extends: atmega328p-5v-board
    inlets: { usb: { ${own === undefined ? '' : `capacitance: ${own}`} } }
supplies: { bench: { type: usb2-port } }
controllers:
  main: { board: board, powered: { usb: bench }${more === '' ? '' : `, ${more}`} }
loads:
  ${draws('1 mA')}
`;

/** A bare ATmega328P, which works from 1.8 to 5.5 V, is reset at 2.9 V at the most and bears 6 V. */
const chipOn = (supply: string, load = draws('1 mA', 'bench')): string =>
  onChip(load).replace('bench: { voltage: 5 V, current: 5 A }', `bench: { ${supply}, current: 5 A }`);

/** A chip of 10 mA and a module that takes 100 mA, and 1.2 A in bursts of 1 ms. @param more of the supply */
const bursting = (more: string): string =>
  onChip('pump: { type: module, active: 100 mA, idle: 100 mA, peak: 1.2 A, peak-time: 1 ms, supply: bench }').replace(
    'current: 5 A',
    `current: 1 A${more}`,
  );

/** A radio beside a servo that stalls for 10 ms, on 5 V behind 1 Ω. */
const dipping = (most: string, more: string): string =>
  onSupplies(
    `bench: { voltage: 5 V, resistance: 1 Ω, current: 5 A${more} }`,
    `pump: { type: module, active: 10 mA, idle: 10 mA, supply: bench, maximum-dip: ${most} }
     b: { type: servo, run: 100 mA, stall: 600 mA, stall-time: 10 ms, supply: bench }`,
  );

/** A cell of typically 3 V that counts as empty at 2.8 V. */
const cell = (figures: string, load: string): string =>
  onSupplies(`bench: { voltage: 2.8 / 3 / 3.2 V, current: 50 mA, end-voltage: 2.8 V, ${figures} }`, load);
const bursts = 'pump: { type: module, active: 5 mA, idle: 5 mA, peak: 15 mA, peak-time: 1 ms, supply: bench }';

/** A battery of 3 V that is wanted to last. */
const lasting = (capacity: string, wanted: string, load: string, more = ''): string =>
  onSupplies(`bench: { voltage: 3 V, current: 1 A, capacity: ${capacity}, wanted-life: ${wanted} }`, load, { more });
const sometimes = 'pump: { type: module, active: 20 mA, idle: 1 mA, supply: bench }';
const SHARES = 'modes: { at-work: { active: [pump], share: 10 % }, resting: { active: [], share: 90 % } }';

/** 400 mA from a port that is awake, and less from one that sleeps. */
const sleeping = (amps: string): string =>
  onSupplies('bench: { type: usb2-port }', `pump: { type: module, active: 400 mA, idle: ${amps}, supply: bench }`, {
    more: 'modes: { at-work: { active: [pump] }, asleep: { active: [], supplies: { bench: suspended } } }',
  });

/** The 5 V board on an adapter that does not regulate. @param most what its jack takes */
const adapted = (most: string): string => `ampledger: 1
title: On the bench
parts: { board: { extends: atmega328p-5v-board, inlets: { barrel: { voltage: max ${most} } } } }
supplies: { bench: { type: mains-adapter-unregulated-9v } }
controllers: { main: { board: board, powered: { barrel: bench } } }
loads:
  ${draws('1 mA')}
`;

/** The 5 V board at its barrel jack: 50 mA of board over the diode and a regulator that needs 1 V. */
const atJack = (volts: string, more = ''): string =>
  onBoard(draws('50 mA'), {
    supplies: `bench: { voltage: ${volts}, current: 5 A }`,
    powered: 'barrel: bench',
    regulators: `diode-barrel: { forward-voltage: 0.7 V }, regulator-5v: { voltage: 4.9 to 5.1 V, quiescent: 0 mA${more} }, ${QUIET}`,
  });
/** The same rail with nothing on it whose window anybody states. */
const windowless = (text: string): string =>
  text
    .replace(
      'title: On the bench',
      'title: On the bench\nparts: { board: { extends: atmega328p-5v-board, chip: plain }, plain: { extends: atmega328p, supply: { operating: unknown, absolute: unknown }, brown-out: unknown } }',
    )
    .replace('board: atmega328p-5v-board', 'board: board');
/** A divider of two resistors of 1 kΩ on 9 V, as a supply. */
const halved = (amps: string): string =>
  onSupplies(
    'bench: { voltage: 9 V, current: 1 A }, half: { from: bench, type: divider, upper: 1 kΩ, lower: 1 kΩ }',
    draws(amps, 'half'),
  );

/** A switching regulator for 12 V. */
const switched = (source: string, amps: string, input = '4.5 to 9 V'): string =>
  onSupplies(
    `bench: { voltage: ${source}, current: 5 A },
             fan: { from: bench, type: switching-regulator, voltage: 12 V, current: 1 A, efficiency: 80 %, input: ${input} }`,
    draws(amps, 'fan'),
  );

/** A relay of 12 V whose array has its clamps on 5 V. */
const pushed = (reverse: string): string =>
  onSupplies(
    `bench: { voltage: 12 V, current: 1 A }, low: { voltage: 5 V, current: 1 A, reverse: ${reverse} }, logic: { voltage: 5 V, current: 1 A }`,
    `pump: { type: coil, voltage: 12 V, resistance: 240 Ω, supply: bench, driver: { array: sink.1, pin: PD2 } }
b: { type: constant-current, current: 1 mA, supply: low }`,
    {
      more: 'controllers: { main: { chip: atmega328p, supply: logic } }\narrays: { sink: { part: darlington-array-7, common: low } }',
    },
  );

export const SUPPLIES: readonly Case[] = [
  {
    rule: 'supplies-joined',
    when: 'breaks where a wire joins two supplies',
    verdict: 'breach',
    text: onSupplies(TWO, draws('50 mA', 'brick'), {
      more: 'wires: [{ from: brick, to: bench, length: 1 m, gauge: AWG 20 }]',
    }),
  },
  {
    rule: 'supplies-joined',
    when: 'is content with a wire from one of two supplies to what it feeds',
    verdict: 'silent',
    text: onSupplies(TWO, draws('50 mA', 'brick'), {
      more: 'wires: [{ from: brick, to: pump, length: 1 m, gauge: AWG 20 }]',
    }),
  },
  {
    rule: 'load-voltage',
    when: 'breaks where a module for 4.5 V and more gets 4.4 V',
    verdict: 'breach',
    text: windowed('4.5 V'),
  },
  {
    rule: 'load-voltage',
    when: 'is content with exactly 4.5 V at its terminals',
    verdict: 'silent',
    text: windowed('4.6 V'),
  },
  {
    rule: 'load-voltage',
    when: 'strains where only the lowest of 4.5 to 5 V falls short at the terminals',
    verdict: 'strain',
    text: windowed('4.5 to 5 V'),
  },
  {
    rule: 'load-voltage',
    when: 'breaks where a module for 3.6 V hangs on 5 V',
    verdict: 'breach',
    text: windowed('5 V', 'max 3.6 V'),
  },
  {
    rule: 'load-voltage',
    when: 'is content with exactly 5.5 V at its terminals',
    verdict: 'silent',
    text: windowed('5.6 V'),
  },
  {
    rule: 'load-voltage',
    when: 'strains where a servo’s stall on the same supply takes a module below its window',
    verdict: 'strain',
    text: beside('1 A'),
  },
  {
    rule: 'load-voltage',
    when: 'is content where the stall leaves 4.51 V',
    verdict: 'silent',
    text: beside('480 mA'),
  },
  {
    rule: 'load-voltage',
    when: 'strains where a motor that starts on 3 V keeps 2.9 V while it stalls',
    verdict: 'strain',
    text: starting('3.9 V'),
  },
  {
    rule: 'load-voltage',
    when: 'is content where it keeps exactly 3 V',
    verdict: 'silent',
    text: starting('4 V'),
  },
  {
    rule: 'fuse-holds',
    when: 'breaks at 505 mA through a fuse for 500 mA, typically too',
    verdict: 'breach',
    text: fused('455 mA'),
  },
  {
    rule: 'fuse-holds',
    when: 'strains at up to 505 mA where a typical build draws 400 mA: holding is a function',
    verdict: 'strain',
    text: fused('300 to 455 mA typ 350 mA'),
  },
  { rule: 'fuse-holds', when: 'is thin at 404 mA, short of 20 % in hand', verdict: 'thin', text: fused('354 mA') },
  { rule: 'fuse-holds', when: 'is content with exactly 400 mA', verdict: 'silent', text: fused('350 mA') },
  {
    rule: 'inlet-current',
    when: 'strains at 1.51 A through a connector that practice trusts with 1.5 A',
    verdict: 'strain',
    text: onBoard(draws('1.46 A')),
  },
  {
    rule: 'inlet-current',
    when: 'is content with exactly 1.5 A, practice being a margin already',
    verdict: 'silent',
    text: onBoard(draws('1.45 A')),
  },
  {
    rule: 'rail-current',
    when: 'strains at 50.5 mA from a 3.3 V rail that practice trusts with 50 mA',
    verdict: 'strain',
    text: onBoard(draws('50.5 mA', 'main.3v3')),
  },
  {
    rule: 'rail-current',
    when: 'is content with exactly 50 mA',
    verdict: 'silent',
    text: onBoard(draws('50 mA', 'main.3v3')),
  },
  {
    rule: 'regulator-current',
    when: 'breaks at 50 mA from a regulator for 49.5 mA',
    verdict: 'breach',
    text: regulated('current: 49.5 mA', 'classroom'),
  },
  {
    rule: 'regulator-current',
    when: 'is content with exactly 50 mA where nothing has to be in hand',
    verdict: 'silent',
    text: regulated('current: 50 mA', 'classroom'),
  },
  { rule: 'regulator-current', when: 'is thin at 50 of 62 mA', verdict: 'thin', text: regulated('current: 62 mA') },
  {
    rule: 'regulator-current',
    when: 'is content with 50 of 62.5 mA',
    verdict: 'silent',
    text: regulated('current: 62.5 mA'),
  },
  {
    rule: 'regulator-heat',
    when: 'breaks at 85 mW and 1190 K/W: 126 °C where 125 °C is a damage limit',
    verdict: 'breach',
    text: regulated('thermal-resistance: 1190 K/W'),
  },
  {
    rule: 'regulator-heat',
    when: 'is content with 1176 K/W, 124.96 °C, where nothing has to be in hand',
    verdict: 'silent',
    text: regulated('thermal-resistance: 1176 K/W', 'classroom'),
  },
  {
    rule: 'regulator-heat',
    when: 'is thin at 950 K/W, 106 °C: less than a fifth of the permitted 100 K left',
    verdict: 'thin',
    text: regulated('thermal-resistance: 950 K/W'),
  },
  {
    rule: 'regulator-heat',
    when: 'is content with 941 K/W, 104.99 °C',
    verdict: 'silent',
    text: regulated('thermal-resistance: 941 K/W'),
  },
  {
    rule: 'regulator-input',
    when: 'breaks at 5 V into a regulator for 4.95 V',
    verdict: 'breach',
    text: regulated('input: max 4.95 V'),
  },
  {
    rule: 'regulator-input',
    when: 'is content with exactly 5 V',
    verdict: 'silent',
    text: regulated('input: max 5 V'),
  },
  {
    rule: 'regulator-dropout',
    when: 'notes it where the worst corner leaves 4.8 V of at least 4.9 V, and the chip still works',
    verdict: 'note',
    text: atJack('6.5 to 7.5 V', ', dropout: 1 V'),
  },
  {
    rule: 'regulator-dropout',
    when: 'is content where it leaves 4.94 V',
    verdict: 'silent',
    text: atJack('6.7 to 7.5 V', ', dropout: 1 V'),
  },
  {
    rule: 'regulator-dropout',
    when: 'strains where a typical build is out of regulation, though inside every window',
    verdict: 'strain',
    text: atJack('6.5 V', ', dropout: 1 V'),
  },
  {
    rule: 'regulator-dropout',
    when: 'strains out of regulation at the worst corner where nothing says what the rail has to be',
    verdict: 'strain',
    text: windowless(atJack('6.5 to 7.5 V', ', dropout: 1 V')),
  },
  {
    rule: 'regulator-dropout',
    when: 'breaks where the typical build falls out of a window with it',
    verdict: 'breach',
    text: atJack('5.9 V', ', dropout: 1 V').replace(
      'loads:',
      'loads:\n  b: { type: module, idle: 1 mA, active: 1 mA, supply: main.5v, supply-voltage: 4.5 to 5.5 V }',
    ),
  },
  {
    rule: 'regulator-dropout',
    when: 'asks for a dropout that nobody states where 2.5 V would be too much',
    verdict: 'unproven',
    text: atJack('8 V', ', dropout: unknown'),
  },
  {
    rule: 'regulator-dropout',
    when: 'is content without one where 2.5 V are to spare',
    verdict: 'silent',
    text: atJack('8.2 V', ', dropout: unknown'),
  },
  {
    rule: 'rail-voltage',
    when: 'breaks on a chip for 5.5 V at 5.6 V',
    verdict: 'breach',
    text: chipOn('voltage: 5.6 V'),
  },
  {
    rule: 'rail-voltage',
    when: 'strains where only the highest of 5 to 5.6 V is too much',
    verdict: 'strain',
    text: chipOn('voltage: 5 to 5.6 V'),
  },
  { rule: 'rail-voltage', when: 'is content with exactly 5.5 V', verdict: 'silent', text: chipOn('voltage: 5.5 V') },
  {
    rule: 'rail-voltage',
    when: 'strains where the lowest of 2.8 to 3.6 V is under the 2.9 V at which the chip may reset',
    verdict: 'strain',
    text: chipOn('voltage: 2.8 to 3.6 V'),
  },
  {
    rule: 'rail-voltage',
    when: 'is content with exactly 2.9 V',
    verdict: 'silent',
    text: chipOn('voltage: 2.9 to 3.6 V'),
  },
  {
    rule: 'rail-voltage',
    when: 'strains where a stall of 1.2 A takes 2.4 V in the supply, and 200 mA only 0.4 V',
    verdict: 'strain',
    text: chipOn('voltage: 5 V, resistance: 2 Ω', 'pump: { type: servo, run: 200 mA, stall: 1.2 A, supply: bench }'),
  },
  {
    rule: 'rail-voltage',
    when: 'is content where the stall leaves 2.98 V',
    verdict: 'silent',
    text: chipOn('voltage: 5 V, resistance: 2 Ω', 'pump: { type: servo, run: 200 mA, stall: 1 A, supply: bench }'),
  },
  {
    rule: 'rail-voltage',
    when: 'breaks where 12 V are put on an inlet for 5 V',
    verdict: 'breach',
    text: onBoard(draws('1 mA'), { supplies: 'bench: { voltage: 12 V, current: 1 A }' }),
  },
  {
    rule: 'rail-voltage',
    when: 'is content with 5 V on it',
    verdict: 'silent',
    text: onBoard(draws('1 mA')),
  },
  {
    rule: 'series-current',
    when: 'breaks at 100 mA in a diode for 99 mA',
    verdict: 'breach',
    text: barrel('99 mA', 'classroom'),
  },
  {
    rule: 'series-current',
    when: 'is content with exactly 100 mA where nothing has to be in hand',
    verdict: 'silent',
    text: barrel('100 mA', 'classroom'),
  },
  { rule: 'series-current', when: 'is thin at 100 of 124 mA', verdict: 'thin', text: barrel('124 mA') },
  { rule: 'series-current', when: 'is content with 100 of 125 mA', verdict: 'silent', text: barrel('125 mA') },
  { rule: 'supply-current', when: 'breaks at 1.01 A from a supply for 1 A', verdict: 'breach', text: alone('1.01 A') },
  {
    rule: 'supply-current',
    when: 'is content with exactly 1 A where nothing has to be in hand',
    verdict: 'silent',
    text: alone('1 A', ', current: 1 A', 'classroom'),
  },
  { rule: 'supply-current', when: 'is thin at 0.81 A', verdict: 'thin', text: alone('810 mA') },
  { rule: 'supply-current', when: 'is content with exactly 0.8 A', verdict: 'silent', text: alone('800 mA') },
  {
    rule: 'supply-current',
    when: 'asks what a supply can give where nobody says so',
    verdict: 'unproven',
    text: alone('10 mA', ''),
  },
  {
    rule: 'supply-current',
    when: 'breaks on a USB port that has not been configured and is asked for 101 mA',
    verdict: 'breach',
    text: onSupplies('bench: { type: usb2-port, state: unconfigured }', draws('101 mA', 'bench')),
  },
  {
    rule: 'supply-current',
    when: 'is content with 80 mA from it, a fifth in hand of its one unit load',
    verdict: 'silent',
    text: onSupplies('bench: { type: usb2-port, state: unconfigured }', draws('80 mA', 'bench')),
  },
  {
    rule: 'supply-current',
    when: 'breaks on a suspended port that is asked for 3 mA',
    verdict: 'breach',
    text: onSupplies('bench: { type: usb2-port, state: suspended }', draws('3 mA', 'bench')),
  },
  {
    rule: 'supply-current',
    when: 'is content with 2 mA from it',
    verdict: 'silent',
    text: onSupplies('bench: { type: usb2-port, state: suspended }', draws('2 mA', 'bench')),
  },
  {
    rule: 'supply-current',
    when: 'asks what a port of its own gives while it is not configured',
    verdict: 'unproven',
    text: onSupplies('bench: { voltage: 5 V, current: 1 A, state: unconfigured }', draws('10 mA', 'bench')),
  },
  {
    rule: 'supply-current',
    when: 'breaks where a mode in which the port sleeps draws 3 mA, though it gives 400 mA in another',
    verdict: 'breach',
    text: sleeping('3 mA'),
  },
  {
    rule: 'supply-current',
    when: 'is content with 2 mA while it sleeps',
    verdict: 'silent',
    text: sleeping('2 mA'),
  },
  {
    rule: 'supply-current',
    when: 'asks what a port gives in the state that a mode puts it in',
    verdict: 'unproven',
    text: sleeping('2 mA').replace('type: usb2-port', 'voltage: 5 V, current: 500 mA'),
  },
  {
    rule: 'supply-power',
    when: 'breaks at 5.05 W from a supply for 5 W',
    verdict: 'breach',
    text: alone('1.01 A', ', current: 2 A, power: 5 W'),
  },
  {
    rule: 'supply-power',
    when: 'is content with exactly 5 W where nothing has to be in hand',
    verdict: 'silent',
    text: alone('1 A', ', current: 2 A, power: 5 W', 'classroom'),
  },
  {
    rule: 'supply-power',
    when: 'is thin at 4.05 W of 5 W',
    verdict: 'thin',
    text: alone('810 mA', ', current: 2 A, power: 5 W'),
  },
  {
    rule: 'supply-current',
    when: 'breaks where a burst of 1.2 A and 1 ms is asked of a supply for 1 A, on a chip that works from 2.9 V',
    verdict: 'breach',
    text: bursting(''),
  },
  {
    rule: 'supply-current',
    when: 'is content where 1000 µF carry the burst: 1.1 mC out of it alone leave 3.9 of 5 V',
    verdict: 'silent',
    text: bursting(', capacitance: 1000 µF'),
  },
  {
    rule: 'supply-current',
    when: 'breaks where 470 µF cannot: they would leave 2.66 V',
    verdict: 'breach',
    text: bursting(', capacitance: 470 µF'),
  },
  {
    rule: 'supply-power',
    when: 'is content with a burst that a capacitor carries',
    verdict: 'silent',
    text: bursting(', capacitance: 1000 µF, power: 5 W'),
  },
  {
    rule: 'load-dip',
    when: 'strains where a stall of 500 mA more takes 0.5 V in the supply, and 400 mV are borne',
    verdict: 'strain',
    text: dipping('400 mV', ''),
  },
  {
    rule: 'load-dip',
    when: 'is content with exactly 0.5 V',
    verdict: 'silent',
    text: dipping('500 mV', ''),
  },
  {
    rule: 'load-dip',
    when: 'is content where a capacitor of one time constant, 10 ms, leaves 63 % of it: 316 mV of 320 mV',
    verdict: 'silent',
    text: dipping('320 mV', ', capacitance: 10000 µF'),
  },
  {
    rule: 'load-dip',
    when: 'strains where that is more than 310 mV',
    verdict: 'strain',
    text: dipping('310 mV', ', capacitance: 10000 µF'),
  },
  {
    rule: 'rail-voltage',
    when: 'is content where the stall that would leave 2.6 V is over before a capacitor is empty',
    verdict: 'silent',
    text: chipOn(
      'voltage: 5 V, resistance: 2 Ω, capacitance: 10000 µF',
      'pump: { type: servo, run: 200 mA, stall: 1.2 A, stall-time: 5 ms, supply: bench }',
    ),
  },
  {
    rule: 'rail-voltage',
    when: 'strains where it lasts ten times as long',
    verdict: 'strain',
    text: chipOn(
      'voltage: 5 V, resistance: 2 Ω, capacitance: 10000 µF',
      'pump: { type: servo, run: 200 mA, stall: 1.2 A, stall-time: 50 ms, supply: bench }',
    ),
  },
  {
    rule: 'battery-sags',
    when: 'strains where 9 mA take up to 360 mV in a cell of 3 V that is empty at 2.8 V',
    verdict: 'strain',
    text: cell('resistance: 10 / 20 / 40 Ω', draws('9 mA', 'bench')),
  },
  {
    rule: 'battery-sags',
    when: 'breaks where a typical cell falls below it, too',
    verdict: 'breach',
    text: cell('resistance: 10 / 20 / 40 Ω', draws('11 mA', 'bench')),
  },
  {
    rule: 'battery-sags',
    when: 'is content with exactly 200 mV less',
    verdict: 'silent',
    text: cell('resistance: 10 / 20 / 40 Ω', draws('5 mA', 'bench')),
  },
  {
    rule: 'battery-sags',
    when: 'strains where a tiny cell is asked for a burst of 15 mA',
    verdict: 'strain',
    text: cell('resistance: 20 Ω', bursts),
  },
  {
    rule: 'battery-sags',
    when: 'is content where a capacitor beside it gives the burst',
    verdict: 'silent',
    text: cell('resistance: 20 Ω, capacitance: 1000 µF', bursts),
  },
  {
    rule: 'battery-life',
    when: 'breaks where 1000 mAh give 10 mA for 100 h and 101 h are wanted',
    verdict: 'breach',
    text: lasting('1000 mAh', '101 h', draws('10 mA', 'bench')),
  },
  {
    rule: 'battery-life',
    when: 'is content with exactly 100 h',
    verdict: 'silent',
    text: lasting('1000 mAh', '100 h', draws('10 mA', 'bench')),
  },
  {
    rule: 'battery-life',
    when: 'strains where only the weakest of its kind falls short',
    verdict: 'strain',
    text: lasting('900 to 1100 mAh', '95 h', draws('10 mA', 'bench')),
  },
  {
    rule: 'battery-life',
    when: 'breaks where a heavier drain takes of the charge that a light one has',
    verdict: 'breach',
    text: lasting('[{ value: 1000 mAh, at: 1 mA }, { value: 500 mAh, at: 19 mA }]', '76 h', draws('10 mA', 'bench')),
  },
  {
    rule: 'battery-life',
    when: 'is content with what lies between the two: 750 mAh, 75 h',
    verdict: 'silent',
    text: lasting('[{ value: 1000 mAh, at: 1 mA }, { value: 500 mAh, at: 19 mA }]', '75 h', draws('10 mA', 'bench')),
  },
  {
    rule: 'battery-life',
    when: 'asks how the time is shared where nothing says so and the hungriest state does not last',
    verdict: 'unproven',
    text: lasting('1000 mAh', '100 h', sometimes),
  },
  {
    rule: 'battery-life',
    when: 'is content where the hungriest state lasts long enough',
    verdict: 'silent',
    text: lasting('1000 mAh', '50 h', sometimes),
  },
  {
    rule: 'battery-life',
    when: 'counts modes by their shares: a tenth of 20 mA and nine tenths of 1 mA are 2.9 mA, 344 h',
    verdict: 'silent',
    text: lasting('1000 mAh', '344 h', sometimes, SHARES),
  },
  {
    rule: 'battery-life',
    when: 'breaks where 346 h are wanted',
    verdict: 'breach',
    text: lasting('1000 mAh', '346 h', sometimes, SHARES),
  },
  {
    rule: 'battery-life',
    when: 'counts bursts by how often they come: 100 mA for 10 ms a second are 1 mA more, 344 h to 256 h',
    verdict: 'breach',
    text: lasting(
      '1000 mAh',
      '257 h',
      sometimes.replace('idle', 'peak: 120 mA, peak-time: 10 ms, peak-every: 100 ms, idle'),
      SHARES,
    ),
  },
  {
    rule: 'battery-life',
    when: 'asks for a capacity that nobody states',
    verdict: 'unproven',
    text: lasting('unknown', '1 h', draws('10 mA', 'bench')),
  },
  {
    rule: 'rail-voltage',
    when: 'breaks where an adapter for 9 V stands at 14 V with little drawn, on an inlet for 12 V',
    verdict: 'breach',
    text: adapted('12 V'),
  },
  {
    rule: 'rail-voltage',
    when: 'is content on an inlet for 15 V',
    verdict: 'silent',
    text: adapted('15 V'),
  },
  {
    rule: 'supply-capacitance',
    when: 'strains where the file puts 10.1 µF on a USB port made for 10 µF',
    verdict: 'strain',
    text: onSupplies('bench: { type: usb2-port }', charging('10.1 µF')),
  },
  {
    rule: 'supply-capacitance',
    when: 'is content with exactly 10 µF',
    verdict: 'silent',
    text: onSupplies('bench: { type: usb2-port }', charging('10 µF')),
  },
  {
    rule: 'supply-capacitance',
    when: 'breaks where a supply says itself what it can charge, and more is on it',
    verdict: 'breach',
    text: onSupplies('bench: { voltage: 5 V, current: 1 A, maximum-capacitance: 50 µF }', charging('51 µF')),
  },
  {
    rule: 'supply-capacitance',
    when: 'strains where capacitors on the 5 V rail of a board, behind its fuse, are too many for its port',
    verdict: 'strain',
    text: onPort('rails: { 5v: { capacitance: 470 µF } }'),
  },
  {
    rule: 'supply-capacitance',
    when: 'is content with capacitors behind a regulator',
    verdict: 'silent',
    text: onPort('rails: { 3v3: { capacitance: 470 µF } }'),
  },
  {
    rule: 'supply-capacitance',
    when: 'notes it where a board of the catalogue has the capacitors itself',
    verdict: 'note',
    text: onPort('', '22 µF'),
  },
  {
    rule: 'supply-capacitance',
    when: 'is content with a board that has 10 µF',
    verdict: 'silent',
    text: onPort('', '10 µF'),
  },
  {
    rule: 'no-source',
    when: 'breaks on a controller that nothing powers',
    verdict: 'breach',
    text: onBoard(draws('10 mA', 'bench')).replace('powered: { usb: bench }, ', ''),
  },
  {
    rule: 'no-source',
    when: 'is content once its USB inlet is fed',
    verdict: 'silent',
    text: onBoard(draws('10 mA', 'bench')),
  },
  {
    rule: 'supplies-joined',
    when: 'breaks on a brick wired to the 5 V rail while USB feeds it as well',
    verdict: 'breach',
    text: onBoard(draws('10 mA'), { supplies: TWO, powered: 'usb: bench, 5v: brick' }),
  },
  {
    rule: 'supplies-joined',
    when: 'is content with the brick alone',
    verdict: 'silent',
    text: onBoard(draws('10 mA'), { supplies: TWO, powered: '5v: brick' }),
  },
  {
    rule: 'regulator-back-fed',
    when: 'is a note where the 5 V rail is powered directly',
    verdict: 'note',
    text: onBoard(draws('10 mA'), { powered: '5v: bench' }),
  },
  {
    rule: 'regulator-back-fed',
    when: 'is content where power comes in by an inlet',
    verdict: 'silent',
    text: onBoard(draws('10 mA')),
  },
  {
    rule: 'regulator-back-fed',
    when: 'breaks where the regulator does not bear it',
    verdict: 'breach',
    text: onBoard(draws('10 mA'), {
      powered: '5v: bench',
      regulators: `regulator-5v: { reverse: not-allowed }, ${QUIET}`,
    }),
  },
  {
    rule: 'divider-sags',
    when: 'breaks where 5 mA hang on two resistors of 1 kΩ',
    verdict: 'breach',
    text: halved('5 mA'),
  },
  {
    rule: 'divider-sags',
    when: 'strains where 0.4 mA, or 0.5 mA at most, hang on them',
    verdict: 'strain',
    text: halved('typ 0.4 mA max 0.5 mA'),
  },
  {
    rule: 'divider-sags',
    // 0.2 mA through 500 Ω take 0.1 V of 4.5 V: 97.8 % are left.
    when: 'is content where 0.2 mA hang on them',
    verdict: 'silent',
    text: halved('0.2 mA'),
  },
  {
    rule: 'regulator-starved',
    when: 'breaks where a regulator for 4.5 V and more gets 4.4 V',
    verdict: 'breach',
    text: switched('4.4 V', '100 mA'),
  },
  {
    rule: 'regulator-starved',
    when: 'strains where it may get 4.4 V',
    verdict: 'strain',
    text: switched('4.4 to 5.2 V', '100 mA'),
  },
  {
    rule: 'regulator-starved',
    // 12 V x 0.5 A / 80 % are 7.5 W; 6 V behind 2 Ω give 4.5 W at most.
    when: 'breaks where a source gives less power than is asked of it, and collapses',
    verdict: 'breach',
    text: switched('6 V, resistance: 2 Ω', '500 mA', '1 to 9 V'),
  },
  {
    rule: 'regulator-starved',
    when: 'is content with 4.5 V',
    verdict: 'silent',
    text: switched('4.5 V', '100 mA'),
  },
  {
    rule: 'source-fed-back',
    // The clamps lead (12 - 5) V less a diode through 240 Ω to a supply that gives 1 mA.
    when: 'breaks where clamps lead from 12 V to a supply for 5 V that bears nothing back',
    verdict: 'breach',
    text: pushed('not-allowed'),
  },
  {
    rule: 'source-fed-back',
    when: 'leaves what a line pushes into a pin to the rules of pins',
    verdict: 'silent',
    text: onChip('', { more: 'incoming: { fan: { voltage: 12 V, resistance: 1 kΩ, pin: PB1 } }' })
      .replace('bench: { voltage: 5 V, current: 5 A }', 'bench: { voltage: 5 V, current: 5 A, reverse: not-allowed }')
      .replace('draws: { active: 10 mA }', 'draws: { active: 1 mA }')
      .replace('loads:', 'loads: {}'),
  },
  {
    rule: 'source-fed-back',
    when: 'is content where that supply bears it',
    verdict: 'silent',
    text: pushed('tolerated'),
  },
];
