/** Cases of the rules about coils. */
import type { Case } from './case.js';
import { onBoard, onChip, onSupplies } from './case.js';

/** 5 V coils between a pin of 25 Ω and ground: 500 Ω take 9.5 mA, 287.5 Ω 16 mA, 285 Ω 16.1 mA. */
const onPin = (ohms: string, clamp: string): string =>
  `latch: { type: coil, voltage: 5 V, resistance: ${ohms}, pin: PB1${clamp} }`;
const CLAMPED = ', clamp: { part: diode-1n4148 }';
const behind = (more: string): string =>
  `latch: { type: coil, voltage: 5 V, resistance: 100 Ω, supply: bench, driver: { part: npn-2n2222a, pin: PB1, base-resistor: 1 kΩ }${more} }`;

/** At 20 °C a coil that pulls in at 4 V, typically at 3 V, and warms by 40 K/W: fed with 4.2 V it rests at 27 °C. */
const pullIn = (volts: string): string =>
  onSupplies(
    `cell: { voltage: ${volts}, current: 1 A }`,
    `latch: { type: coil, voltage: 5 V, resistance: 100 Ω, supply: cell, pull-in: typ 3 V max 4 V, drop-out: 0.5 V, maximum: 6 V, thermal-resistance: 40 K/W }`,
    { ambient: '20 °C' },
  );
const highest = (volts: string, maximum: string): string =>
  onSupplies(
    `cell: { voltage: ${volts}, current: 1 A }`,
    `latch: { type: coil, voltage: 5 V, resistance: 100 Ω, supply: cell${maximum} }`,
    { ambient: '20 °C' },
  );

/** A coil of the catalogue whose highest voltage is common practice, told as a range. */
const borne = (volts: string): string =>
  onSupplies(`cell: { voltage: ${volts}, current: 1 A }`, 'latch: { part: relay-coil-5v-70r, supply: cell }');

/** A coil of 100 Ω at 20 °C that warms by 100 K/W rests at 42.93 °C on 5 V: its winding is published to bear so much. */
const winding = (bears: string, policy: 'everyday' | 'classroom' = 'classroom'): string =>
  onSupplies('cell: { voltage: 5 V, current: 1 A }', 'latch: { part: warm, supply: cell, maximum: 9 V }', {
    ambient: '20 °C',
    policy,
    more: `parts: { warm: { extends: relay-coil-5v-70r, resistance: 100 Ω, power: 250 mW, thermal-resistance: 100 K/W, maximum-temperature: ${bears} } }`,
  });

/** A coil that pulls in at 4 V at 20 °C and warms by 40 K/W: on 8 V it comes to 43.4 °C, where it needs 4.37 V. */
const restart = (supply: string, more = '', ambient = '20 °C'): string =>
  onSupplies(
    `cell: { ${supply}, current: 1 A }`,
    `latch: { type: coil, voltage: 5 V, resistance: 100 Ω, supply: cell, drop-out: 0.5 V, maximum: 9 V, thermal-resistance: 40 K/W, ${more || 'pull-in: typ 3 V max 4 V'} }`,
    { ambient, policy: 'classroom' },
  );

/** 100 Ω behind 100 Ω that 10 mF bridge, on 5 V: it pulls in with nearly all of it, and 25 mA hold it. */
const economiser = (more: string, series = '{ resistance: 100 Ω, bypass: 10 mF }'): string =>
  onSupplies(
    'cell: { voltage: 5 V, current: 1 A }',
    `latch: { type: coil, voltage: 5 V, resistance: 100 Ω, supply: cell, pull-in: typ 3 V max 4 V, drop-out: 0.5 V, maximum: 6 V, series: ${series}${more} }`,
    { ambient: '20 °C' },
  );

/** On 6 V at 40 °C a coil of 100 Ω and 100 K/W comes to 70.1 °C; at 60 °C 3.47 V make it as hot. */
const derated = (volts: string, ambient: string): string =>
  onSupplies(
    `cell: { voltage: ${volts}, current: 1 A }`,
    'latch: { type: coil, voltage: 5 V, resistance: 100 Ω, supply: cell, thermal-resistance: 100 K/W, maximum: { value: 6 V, at: 40 °C } }',
    { ambient },
  );

/**
 * A 3.3 V controller at an input fed with up to 5.25 V: at 35 °C 4.56 µA go through indicator and coupler when it is off,
 * times 160.4 %, times a gain of 400: 2.93 mA in the coil, which is 0.2253 V over its 77 Ω. Typically it is nanoamperes.
 */
const rest = (dropOut: string, part = 'relay-board-opto-low-5v-1'): string => `ampledger: 1
title: On the bench
ambient: 10 to 35 °C
policy: everyday
supplies: { laptop: { type: usb2-port } }
controllers: { main: { board: rp2040-board, powered: { usb: laptop } } }
loads:
  latch: { part: ${part}, inputs: { 1: GP15 }, supply: main.vbus${dropOut} }
`;
const lets = (dropOut: string): string => `, coil: { drop-out: ${dropOut} }`;

/** A winding of exactly 50 Ω at 20 °C on 5 V: 100 mA for its clamp to take over. */
const clamped = (clamp: string): string =>
  `latch: { type: coil, voltage: 5 V, resistance: 50 Ω, supply: bench, maximum: 9 V, clamp: { type: diode${clamp} }, driver: { type: npn, gain: 500, pin: PB1, base-resistor: 1 kΩ, maximum-current: 1 A } }`;

/** A winding of exactly 240 Ω at 20 °C on 12 V, 50 mA, behind a transistor for so many volts. */
const thrown = (clamp: string, bears = '100 V', supply = '12 V'): string =>
  onChip(
    `latch: { type: coil, voltage: 12 V, resistance: 240 Ω, inductance: 300 mH, supply: brick, maximum: 20 V, clamp: { ${clamp} }, driver: { type: npn, gain: 500, pin: PB1, base-resistor: 1 kΩ, maximum-current: 1 A, maximum-voltage: ${bears}, thermal-resistance: 200 K/W } }`,
    { ambient: '20 °C', policy: 'classroom' },
  ).replace('supplies: {', `supplies: { brick: { voltage: ${supply}, current: 1 A },`);
/** 24 V and, at 50 mA, exactly 1 V: with the supply's 12 V that is 37 V. */
const PAIR = 'type: diode-zener, current: 1 A, zener-voltage: 24 V, forward-voltage: { value: 1 V, at: 50 mA }';

/** A coil of 100 Ω and 100 mH at 20 °C behind a transistor that keeps 0.2 V: 48 mA, 115.2 µJ, a thousand times a second. */
const pulsed = (power: string): string =>
  onChip(
    `a: { type: coil, voltage: 5 V, resistance: 100 Ω, inductance: 100 mH, supply: bench, driver: { type: npn, gain: 100, saturation: 0.2 V, pin: PB1, base-resistor: 1 kΩ, maximum-current: 1 A, maximum-voltage: 60 V }, clamp: { type: diode-zener, zener-voltage: 24 V, current: 1 A, power: ${power} }, pwm: { frequency: 1 kHz, duty: 50 % } }`,
    { policy: 'classroom', ambient: '20 °C' },
  );

/** A stepper rated for 1.7 A whose chopper holds so much in each winding. */
const stepper = (amps: string): string =>
  onSupplies(
    'bench: { voltage: 12 V, current: 5 A }',
    `load: { type: stepper, winding-resistance: 1.65 Ω, maximum-current: 1.7 A, phase-current: ${amps}, supply: bench, driver: { type: chopper, on-resistance: 0.5 Ω, maximum-current: 2.5 A, thermal-resistance: 20 K/W } }`,
    { policy: 'classroom' },
  );

export const COILS: readonly Case[] = [
  {
    rule: 'coil-holds',
    when: 'breaks where 25 mA hold a coil of 100 Ω that typically wants 2.6 V',
    verdict: 'breach',
    text: economiser(', holding: typ 2.6 V max 3 V'),
  },
  {
    rule: 'coil-holds',
    when: 'strains where it may want 2.6 V',
    verdict: 'strain',
    text: economiser(', holding: typ 1.5 V max 2.6 V'),
  },
  {
    rule: 'coil-holds',
    when: 'is content with exactly what it wants, 2.5 V',
    verdict: 'silent',
    text: economiser(', holding: typ 1.5 V max 2.5 V'),
  },
  {
    rule: 'coil-holds',
    when: 'takes the highest usual drop-out voltage where nobody states more: 40 % of 5 V',
    verdict: 'silent',
    text: economiser(''),
  },
  {
    rule: 'coil-pull-in',
    when: 'is content where a capacitor bridges the resistor that would leave it half of what it needs',
    verdict: 'silent',
    text: economiser(''),
  },
  {
    rule: 'coil-pull-in',
    when: 'breaks without that capacitor',
    verdict: 'breach',
    text: economiser('', '100 Ω'),
  },
  {
    rule: 'coil-pull-in',
    when: 'breaks with one that has charged before the armature closes',
    verdict: 'breach',
    text: economiser('', '{ resistance: 100 Ω, bypass: 10 µF }'),
  },
  {
    rule: 'coil-on-pin',
    when: 'breaks on a bare coil without a clamp, however little it takes',
    verdict: 'breach',
    shown: true,
    text: onChip(onPin('500 Ω', '')),
  },
  {
    rule: 'coil-on-pin',
    when: 'still strains on one that is clamped and takes half of what is promised',
    verdict: 'strain',
    text: onChip(onPin('500 Ω', CLAMPED)),
  },
  {
    rule: 'coil-on-pin',
    when: 'still strains on one that is clamped and leaves exactly 20 % of it in hand',
    verdict: 'strain',
    text: onChip(onPin('287.5 Ω', CLAMPED), { ambient: '20 °C' }),
  },
  {
    rule: 'coil-on-pin',
    when: 'breaks on one that is clamped and leaves less than that in hand',
    verdict: 'breach',
    text: onChip(onPin('285 Ω', CLAMPED), { ambient: '20 °C' }),
  },
  {
    rule: 'coil-on-pin',
    when: 'is content with the same coil behind a transistor',
    verdict: 'silent',
    text: onChip(behind(CLAMPED)),
  },
  {
    rule: 'coil-no-clamp',
    when: 'breaks on a coil behind a transistor with nothing across it',
    verdict: 'breach',
    shown: true,
    text: onChip(behind('')),
  },
  {
    rule: 'coil-no-clamp',
    when: 'is content with a diode across it',
    verdict: 'silent',
    shown: true,
    text: onChip(behind(CLAMPED)),
  },
  {
    rule: 'clamp-reversed',
    when: 'breaks on a diode that is fitted the wrong way round',
    verdict: 'breach',
    shown: true,
    text: onChip(behind(', clamp: { part: diode-1n4148, fitted: reversed }')),
  },
  {
    rule: 'clamp-reversed',
    when: 'is content with the diode the right way round',
    verdict: 'silent',
    shown: true,
    text: onChip(behind(CLAMPED)),
  },
  {
    rule: 'coil-pull-in',
    when: 'breaks where even the typical coil, which needs 3 V, gets 2.97 V',
    verdict: 'breach',
    text: pullIn('2.97 V'),
  },
  {
    rule: 'coil-pull-in',
    when: 'strains where the worst coil needs 4 V and gets 3.96 V',
    verdict: 'strain',
    shown: true,
    text: pullIn('3.96 V'),
  },
  {
    rule: 'coil-pull-in',
    when: 'strains where 4.05 V pull it in cold but not after its own heat, which wants 4.10 V',
    verdict: 'strain',
    text: pullIn('4.05 V'),
  },
  {
    rule: 'coil-pull-in',
    when: 'is thin at 4.19 V, short of 5 % more than 4 V',
    verdict: 'thin',
    text: pullIn('4.19 V'),
  },
  {
    rule: 'coil-pull-in',
    when: 'is content with 4.2 V, which 4.11 V after its own heat lie below',
    verdict: 'silent',
    shown: true,
    text: pullIn('4.2 V'),
  },
  {
    rule: 'coil-pull-in',
    when: 'strains on a battery that has heated it with 8 V and has 4.2 V left to switch it on again',
    verdict: 'strain',
    text: restart('voltage: 4.2 to 8 V, regulated: false'),
  },
  {
    rule: 'coil-pull-in',
    when: 'is content with a regulated supply of the same tolerance, which heats and restarts it at one voltage',
    verdict: 'silent',
    text: restart('voltage: 4.2 to 8 V'),
  },
  {
    rule: 'coil-pull-in',
    when: 'strains at 4.59 V where its maker asks for 4.6 V at 40 °C of a warm coil, whatever copper would say',
    verdict: 'strain',
    text: restart(
      'voltage: 4.59 V',
      'pull-in: [{ value: typ 3 V max 4 V, at: 20 °C }, { value: max 4.6 V, at: 40 °C }]',
      '40 °C',
    ),
  },
  {
    rule: 'coil-pull-in',
    when: 'is content with 4.6 V there',
    verdict: 'silent',
    text: restart(
      'voltage: 4.6 V',
      'pull-in: [{ value: typ 3 V max 4 V, at: 20 °C }, { value: max 4.6 V, at: 40 °C }]',
      '40 °C',
    ),
  },
  {
    rule: 'coil-pull-in',
    when: 'is content with 4.05 V where it never has to pull in while it is warm',
    verdict: 'silent',
    text: restart('voltage: 4.05 V', 'pull-in: typ 3 V max 4 V, restart: cold'),
  },
  {
    rule: 'coil-pull-in',
    when: 'strains at 4.05 V where it has to',
    verdict: 'strain',
    text: restart('voltage: 4.05 V', 'pull-in: typ 3 V max 4 V, restart: hot'),
  },
  {
    rule: 'coil-voltage',
    when: 'breaks at 3.5 V in 60 °C on a coil that is rated 6 V at 40 °C, since less makes it as hot there',
    verdict: 'breach',
    text: derated('3.5 V', '60 °C'),
  },
  {
    rule: 'coil-voltage',
    when: 'is content with 3.45 V there',
    verdict: 'silent',
    text: derated('3.45 V', '60 °C'),
  },
  { rule: 'coil-voltage', when: 'is content with 6 V at 40 °C', verdict: 'silent', text: derated('6 V', '40 °C') },
  {
    rule: 'coil-heat',
    when: 'breaks where the winding comes to 42.9 °C and bears 42 °C',
    verdict: 'breach',
    text: winding('42 °C'),
  },
  { rule: 'coil-heat', when: 'is content where it bears 43 °C', verdict: 'silent', text: winding('43 °C') },
  {
    rule: 'coil-heat',
    when: 'is thin where less than 20 % of the permitted rise is left',
    verdict: 'thin',
    text: winding('48 °C', 'everyday'),
  },
  {
    rule: 'coil-heat',
    when: 'is content where that is left',
    verdict: 'silent',
    text: winding('49 °C', 'everyday'),
  },
  {
    rule: 'coil-voltage',
    when: 'strains at 6.3 V on a coil of which practice has it that it bears 6 to 6.5 V',
    verdict: 'strain',
    text: borne('6.3 V'),
  },
  { rule: 'coil-voltage', when: 'breaks beyond all of that range', verdict: 'breach', text: borne('6.6 V') },
  {
    rule: 'coil-voltage',
    when: 'breaks at 6.06 V on a coil for at most 6 V',
    verdict: 'breach',
    text: highest('6.06 V', ', maximum: 6 V'),
  },
  {
    rule: 'coil-voltage',
    when: 'is content with exactly 6 V: voltage maxima are margins already',
    verdict: 'silent',
    text: highest('6 V', ', maximum: 6 V'),
  },
  {
    rule: 'coil-voltage',
    when: 'strains at 5.6 V where nobody states a maximum: inside 110 to 130 % of 5 V',
    verdict: 'strain',
    text: highest('5.6 V', ''),
  },
  {
    rule: 'coil-voltage',
    when: 'breaks at 6.6 V, beyond all of that range',
    verdict: 'breach',
    text: highest('6.6 V', ''),
  },
  { rule: 'coil-voltage', when: 'is content with exactly 110 %', verdict: 'silent', text: highest('5.5 V', '') },
  {
    rule: 'coil-release',
    when: 'breaks without the indicator in series: the typical board never lets go',
    verdict: 'breach',
    text: rest('', 'relay-board-opto-low-5v-1-no-indicator'),
  },
  {
    rule: 'coil-release',
    when: 'strains where 2.93 mA still flow at worst and 0.22 V / 77 Ω = 2.86 mA hold the coil',
    verdict: 'strain',
    text: rest(lets('min 0.22 V typ 1 V')),
  },
  {
    rule: 'coil-release',
    when: 'is content where 0.23 V / 77 Ω = 2.99 mA would hold it',
    verdict: 'silent',
    text: rest(lets('min 0.23 V typ 1 V')),
  },
  {
    rule: 'clamp-rating',
    when: 'breaks at 100 mA in a diode for 99 mA',
    verdict: 'breach',
    text: onChip(clamped(', current: 99 mA'), { policy: 'classroom', ambient: '20 °C' }),
  },
  {
    rule: 'clamp-rating',
    when: 'is content with a diode for exactly 100 mA where nothing has to be in hand',
    verdict: 'silent',
    text: onChip(clamped(', current: 100 mA'), { policy: 'classroom', ambient: '20 °C' }),
  },
  {
    rule: 'clamp-rating',
    when: 'is thin at 100 of 124 mA',
    verdict: 'thin',
    text: onChip(clamped(', current: 124 mA'), { ambient: '20 °C' }),
  },
  {
    rule: 'clamp-rating',
    when: 'is content with 100 of 125 mA',
    verdict: 'silent',
    text: onChip(clamped(', current: 125 mA'), { ambient: '20 °C' }),
  },
  {
    rule: 'clamp-rating',
    when: 'breaks at a reverse voltage of 4.9 V under a supply of 5 V',
    verdict: 'breach',
    text: onChip(clamped(', current: 1 A, reverse-voltage: 4.9 V'), { ambient: '20 °C' }),
  },
  {
    rule: 'driver-voltage',
    when: 'breaks where supply, zener and diode make 37 V at switching off, on a transistor for 36.9 V',
    verdict: 'breach',
    text: thrown(PAIR, '36.9 V'),
  },
  {
    rule: 'driver-voltage',
    when: 'is content with the same clamp on a transistor for 37.1 V',
    verdict: 'silent',
    text: thrown(PAIR, '37.1 V'),
  },
  {
    rule: 'driver-voltage',
    when: 'asks for the breakdown of a clamp that breaks down where nobody states it',
    verdict: 'unproven',
    text: thrown('type: diode-zener, current: 1 A', '37 V'),
  },
  {
    rule: 'driver-voltage',
    when: 'breaks on a suppressor of 26 V, whichever way round, on a transistor for 37 V',
    verdict: 'breach',
    text: thrown('type: tvs, fitted: reversed, current: 1 A, zener-voltage: 26 V', '37 V'),
  },
  {
    rule: 'driver-voltage',
    when: 'is content with a zener by itself, which conducts forward and throws no more than a diode',
    verdict: 'silent',
    text: thrown('type: zener, current: 1 A, zener-voltage: 26 V', '37 V'),
  },
  {
    rule: 'clamp-rating',
    when: 'breaks on a zener that breaks down at 11.9 V under a supply of 12 V: it conducts all the time',
    verdict: 'breach',
    text: thrown('type: zener, current: 1 A, zener-voltage: 11.9 V'),
  },
  {
    rule: 'clamp-rating',
    when: 'breaks on a suppressor that does so',
    verdict: 'breach',
    text: thrown('type: tvs, current: 1 A, zener-voltage: 11.4 to 12.6 V'),
  },
  {
    rule: 'clamp-rating',
    when: 'is content with a zener that stays above the supply',
    verdict: 'silent',
    text: thrown('type: zener, current: 1 A, zener-voltage: 12.1 V'),
  },
  {
    rule: 'clamp-rating',
    when: 'is content with a zener below the supply where a diode before it blocks',
    verdict: 'silent',
    text: thrown('type: diode-zener, current: 1 A, zener-voltage: 5.1 V'),
  },
  {
    rule: 'clamp-rating',
    when: 'asks at what voltage a zener breaks down where nobody says so',
    verdict: 'unproven',
    text: thrown('type: zener, current: 1 A'),
  },
  {
    rule: 'clamp-rating',
    when: 'breaks on a zener that gets hotter than it bears with the coil’s energy a thousand times a second',
    verdict: 'breach',
    text: pulsed('115 mW'),
  },
  {
    rule: 'clamp-rating',
    when: 'is content with one that bears just that',
    verdict: 'silent',
    text: pulsed('117 mW'),
  },
  {
    rule: 'clamp-reversed',
    when: 'breaks on a zener that is fitted the wrong way round',
    verdict: 'breach',
    text: thrown('type: zener, current: 1 A, zener-voltage: 24 V, fitted: reversed'),
  },
  {
    rule: 'clamp-reversed',
    when: 'breaks on diode and zener that are fitted the wrong way round and clamp nothing',
    verdict: 'breach',
    text: thrown('type: diode-zener, current: 1 A, zener-voltage: 24 V, fitted: reversed'),
  },
  {
    rule: 'clamp-reversed',
    when: 'is content with a suppressor, which has no wrong way round',
    verdict: 'silent',
    text: thrown('type: tvs, current: 1 A, zener-voltage: 24 V, fitted: reversed'),
  },
  {
    rule: 'clamp-rating',
    when: 'asks what a diode may carry where nobody says so',
    verdict: 'unproven',
    text: onChip(clamped(''), { ambient: '20 °C' }),
  },
  {
    rule: 'clamp-rating',
    when: 'breaks on a channel of an array whose clamp is for 500 mA, with a coil that takes more',
    verdict: 'breach',
    text: onBoard(
      'latch: { type: coil, voltage: 5 V, resistance: 5 Ω, supply: bench, driver: { array: sink.1, pin: D2 } }',
      {
        more: 'arrays: { sink: { part: darlington-array-7, common: bench } }',
      },
    ),
  },
  {
    rule: 'clamp-rating',
    when: 'is content there with one that takes a tenth of that',
    verdict: 'silent',
    text: onBoard('latch: { part: relay-coil-5v-70r, supply: bench, driver: { array: sink.1, pin: D2 } }', {
      more: 'arrays: { sink: { part: darlington-array-7, common: bench } }',
    }),
  },
  {
    rule: 'coil-no-clamp',
    when: 'is content with a channel of an array whose common pin sits on the coil’s supply',
    verdict: 'silent',
    text: onBoard('latch: { part: relay-coil-5v-70r, supply: bench, driver: { array: sink.1, pin: D2 } }', {
      more: 'arrays: { sink: { part: darlington-array-7, common: bench } }',
    }),
  },
  {
    rule: 'coil-no-clamp',
    when: 'breaks on the same channel when that common pin hangs in the air',
    verdict: 'breach',
    text: onBoard('latch: { part: relay-coil-5v-70r, supply: bench, driver: { array: sink.1, pin: D2 } }', {
      more: 'arrays: { sink: { part: darlington-array-7 } }',
    }),
  },
  {
    rule: 'phase-current',
    when: 'breaks at 1.75 A in each winding of a motor rated for 1.7 A',
    verdict: 'breach',
    text: stepper('1.75 A'),
  },
  { rule: 'phase-current', when: 'is content with exactly 1.7 A', verdict: 'silent', text: stepper('1.7 A') },
];
