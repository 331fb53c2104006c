/** Cases of the rules about signal lines: levels, what is pushed into pins, inputs that float. */
import type { Case } from './case.js';
import { limits as rows } from './case.js';

/**
 * A bare ATmega328P on exactly 5 V whose pins have exactly 25 Ω: it reads low up to 1.5 V and high from 3 V. Beside it an
 * ESP32 on exactly 3.3 V that reads low up to 0.825 V and high from 2.475 V, and lives from the same supply or from another.
 */
const lines = (incoming: string, { more = '', wifi = 'low', pins = '', limits = '' } = {}): string =>
  `ampledger: 1
title: On the bench
ambient: 25 °C
policy: everyday
supplies: { bench: { voltage: 5 V, current: 5 A }, low: { voltage: 3.3 V, current: 1 A }, other: { voltage: 5 V, current: 1 A } }
parts: { own: { extends: atmega328p } }
controllers:
  main: { chip: own, supply: bench, pin-resistance: { source: 25 Ω, sink: 25 Ω }, draws: { active: 10 mA }${pins && `, pins: { ${pins} }`}${rows(limits)} }
  wifi: { chip: esp32, supply: ${wifi}, draws: { active: 100 mA } }
incoming:
  line: { ${incoming} }
${more}`;

/** Reads by no published levels. */
const silent = (incoming: string): string =>
  lines(incoming).replace(
    'parts: { own: { extends: atmega328p } }',
    'parts: { own: { extends: atmega328p, thresholds: [] } }',
  );

/** The board whose PB6 has no clamp to its supply. */
const unclamped = (entries: string, section = 'incoming'): string => `ampledger: 1
title: On the bench
ambient: 25 °C
supplies: { bench: { voltage: 5 V, current: 5 A }, high: { voltage: 12 V, current: 1 A } }
controllers: { main: { board: stm32f103-board, powered: { usb: bench }, draws: { active: 50 mA } } }
${section}: { line: { ${entries} } }
`;

/** A power register of eight channels that a board steers, with its logic on a rail, or on nobody knows which. */
const steered = (supply: string, board = 'esp32-devkit', pins = 'data: GPIO23, clock: GPIO18, latch: GPIO5'): string =>
  `ampledger: 1
title: On the bench
ambient: 25 °C
supplies: { bench: { voltage: 5 V, current: 5 A } }
controllers: { main: { board: ${board}, powered: { usb: bench }, draws: { active: 50 mA } } }
arrays: { sink: { part: power-register-8, control: { ${pins} }${supply} } }
loads: { lamp: { type: resistor, resistance: 100 Ω, power: 1 W, supply: bench, driver: { array: sink.1 } } }
`;
const UNO = ['atmega328p-5v-board', 'data: D11, clock: D13, latch: D10'] as const;

export const LINES: readonly Case[] = [
  {
    rule: 'level-high',
    when: 'strains on a register on 5 V that reads high from 85 % of that, steered by pins of 3.3 V',
    verdict: 'strain',
    text: steered(', supply: bench'),
  },
  {
    rule: 'level-high',
    when: 'strains on it where nobody says what feeds it: it works from 4.5 V on',
    verdict: 'strain',
    text: steered(''),
  },
  {
    rule: 'level-high',
    when: 'is content with pins of its own 5 V',
    verdict: 'silent',
    text: steered('', ...UNO),
  },
  {
    rule: 'level-over',
    when: 'breaks on 12 V at a pin without a clamp, which follows them',
    verdict: 'breach',
    text: unclamped('voltage: 12 V, resistance: 10 kΩ, pin: PB6'),
  },
  {
    rule: 'level-over',
    when: 'strains on 6 V there',
    verdict: 'strain',
    text: unclamped('voltage: 6 V, resistance: 10 kΩ, pin: PB6'),
  },
  {
    rule: 'level-over',
    when: 'is content with 5 V, which such pins are made for',
    verdict: 'silent',
    text: unclamped('voltage: 5 V ±5 %, resistance: 10 kΩ, pin: PB6'),
  },
  {
    rule: 'level-over',
    when: 'breaks where the base of a PNP on 12 V draws such a pin up while it has let go',
    verdict: 'breach',
    text: unclamped(
      'type: resistor, resistance: 1 kΩ, power: 5 W, supply: high, driver: { part: pnp-2n2907a, pin: PB6, base-resistor: 4.7 kΩ }',
      'loads',
    ),
  },
  {
    rule: 'level-over',
    when: 'is content where that PNP stands on 5 V',
    verdict: 'silent',
    text: unclamped(
      'type: resistor, resistance: 1 kΩ, power: 5 W, supply: bench, driver: { part: pnp-2n2907a, pin: PB6, base-resistor: 4.7 kΩ }',
      'loads',
    ),
  },
  {
    rule: 'level-high',
    when: 'is thin at 3.1 V, 3 % above the 3 V it is read high from',
    verdict: 'thin',
    text: lines('voltage: 3.1 V, resistance: 100 Ω, pin: main.PB1'),
  },
  {
    rule: 'level-high',
    when: 'strains at 2.9 V: the typical input turns at 2.25 V, half way between its two levels',
    verdict: 'strain',
    text: lines('voltage: 2.9 V, resistance: 100 Ω, pin: main.PB1'),
  },
  {
    rule: 'level-high',
    when: 'breaks at 2.2 V, which even a typical input takes for low',
    verdict: 'breach',
    text: lines('voltage: 2.2 V, resistance: 100 Ω, pin: main.PB1'),
  },
  {
    rule: 'level-high',
    when: 'is content at 3.15 V, exactly 5 % above',
    verdict: 'silent',
    text: lines('voltage: 3.15 V, resistance: 100 Ω, pin: main.PB1'),
  },
  {
    rule: 'level-high',
    when: 'is content with 5 V over 1.8 kΩ and 3.3 kΩ at a pin of 3.3 V: 3.235 V where 2.475 V are high',
    verdict: 'silent',
    text: lines('voltage: 5 V, pin: wifi.GPIO4, series: 1.8 kΩ, pull-down: 3.3 kΩ'),
  },
  {
    rule: 'level-high',
    when: 'strains where the other resistor was taken for the divider: 5 V · 1.8 / (1.8 + 3.3) = 1.76 V at a pin of 3.3 V',
    verdict: 'strain',
    text: lines('voltage: 5 V, pin: wifi.GPIO4, series: 3.3 kΩ, pull-down: 1.8 kΩ'),
  },
  {
    rule: 'level-high',
    when: 'asks at 3.4 V where nobody publishes a level and 3.5 V would be usual',
    verdict: 'unproven',
    text: silent('voltage: 3.4 V, resistance: 100 Ω, pin: main.PB1'),
  },
  {
    rule: 'level-high',
    when: 'is content at exactly those 3.5 V',
    verdict: 'silent',
    text: silent('voltage: 3.5 V, resistance: 100 Ω, pin: main.PB1'),
  },
  {
    rule: 'level-high',
    when: 'strains at 2.4 V where nobody publishes a level: less than half of the supply',
    verdict: 'strain',
    text: silent('voltage: 2.4 V, resistance: 100 Ω, pin: main.PB1'),
  },
  {
    rule: 'level-high',
    when: 'is content with what is measured, not read: 0 to 5 V',
    verdict: 'silent',
    text: lines('voltage: 0 to 5 V, resistance: 100 Ω, pin: main.PB1'),
  },
  {
    rule: 'level-high',
    when: 'asks for a resistor that is called unknown',
    verdict: 'unproven',
    text: lines('voltage: 5 V, series: unknown, pin: main.PB1'),
  },
  {
    rule: 'level-low',
    when: 'strains where 10 kΩ against a pull-up of 20 kΩ leaves 1.67 V, and low is up to 1.5 V',
    verdict: 'strain',
    text: lines('type: contact, pin: main.PB1, closes-to: ground, series: 10 kΩ, pull-up: 20 kΩ'),
  },
  {
    rule: 'level-low',
    when: 'is content with 7.5 kΩ against 20 kΩ: 1.364 V is 9 % below',
    verdict: 'silent',
    text: lines('type: contact, pin: main.PB1, closes-to: ground, series: 7.5 kΩ, pull-up: 20 kΩ'),
  },
  {
    rule: 'level-high',
    when: 'strains where 3.3 V drive a shift register on 5 V, which reads high from 3.5 V',
    verdict: 'strain',
    text: register('3.3 V'),
  },
  {
    rule: 'level-high',
    when: 'is content with 3.68 V there, 5 % above',
    verdict: 'silent',
    text: register('3.68 V'),
  },
  {
    rule: 'level-high',
    when: 'asks where 3.3 V drive a module on 5 V whose levels nobody publishes',
    verdict: 'unproven',
    text: register('3.3 V').replace(
      /expanders: .*/,
      'loads: { m: { type: module, active: 1 mA, supply: bench, signals: { din: GPIO4 } } }',
    ),
  },
  {
    rule: 'level-high',
    when: 'is content with a 5 V pin that drives a module on 3.3 V',
    verdict: 'silent',
    text: onBus([]).replace(
      'loads:',
      'loads: { m: { type: module, active: 1 mA, supply: low, signals: { din: PC4 } } }',
    ),
  },
  {
    rule: 'level-high',
    when: 'strains on a servo that gets 2.9 V, where practice wants 3 V',
    verdict: 'strain',
    text: servo('2.9 V'),
  },
  {
    rule: 'level-high',
    when: 'is content with a servo on 5 V that gets 3.3 V',
    verdict: 'silent',
    text: servo('3.3 V'),
  },
  {
    rule: 'level-over',
    when: 'asks whether that module bears 5 V on its input',
    verdict: 'unproven',
    text: onBus([]).replace(
      'loads:',
      'loads: { m: { type: module, active: 1 mA, supply: low, signals: { din: PC4 } } }',
    ),
  },
  {
    rule: 'level-over',
    when: 'is content where both live from 5 V',
    verdict: 'silent',
    text: onBus([]).replace(
      'loads:',
      'loads: { m: { type: module, active: 1 mA, supply: bench, signals: { din: PC4 } } }',
    ),
  },
  {
    rule: 'level-over',
    when: 'asks what a module on 5 V drives onto a pin of 3.3 V',
    verdict: 'unproven',
    text: register('3.3 V').replace(
      /expanders: .*/,
      'loads: { m: { type: module, active: 1 mA, supply: bench, signals: { echo: GPIO4 } } }',
    ),
  },
  {
    rule: 'level-over',
    when: 'asks no more once `incoming` says it',
    verdict: 'silent',
    text: register('3.3 V').replace(
      /expanders: .*/,
      `loads: { m: { type: module, active: 1 mA, supply: bench, signals: { echo: GPIO4 } } }
incoming: { echo: { voltage: 5 V, pin: GPIO4, series: 1.8 kΩ, pull-down: 3.3 kΩ } }`,
    ),
  },
  {
    rule: 'bus-current',
    when: 'strains on three modules of 2.2 kΩ: 733 Ω let (5 − 0.4) V / 733 Ω = 6.3 mA through where 3 mA are sure',
    verdict: 'strain',
    text: onBus(Array.from({ length: 3 }, () => 'supply: bench, pull-up: 2.2 kΩ')),
  },
  {
    rule: 'bus-current',
    when: 'is content at 1533.4 Ω, the least for 5 V: (5 − 0.4) V / 3 mA = 1533.3 Ω',
    verdict: 'silent',
    text: onBus(['supply: bench, pull-up: 1533.4 Ω']),
  },
  {
    rule: 'bus-rise',
    when: 'strains on the pull-up inside the chip alone: 0.847 · 50 kΩ · 70 pF = 3 µs',
    verdict: 'strain',
    text: onBus(['supply: bench'], 'PC4: { pull: up }'),
  },
  {
    rule: 'bus-rise',
    when: 'is content with 16.8 kΩ at the pin: 0.847 · 16.8 kΩ · 70 pF = 0.996 µs',
    verdict: 'silent',
    text: onBus(['supply: bench'], 'PC4: { pull-up: 16.8 kΩ }'),
  },
  {
    rule: 'bus-rise',
    when: 'asks what pulls the line up where nobody says so',
    verdict: 'unproven',
    text: onBus(['supply: bench']),
  },
  {
    rule: 'pin-injected',
    when: 'breaks on 5 V over 1 kΩ at a pin of 3.3 V: (5 − 3.3 − 0.5) V / 1 kΩ is more than 1 mA',
    verdict: 'breach',
    text: lines('voltage: 5 V, pin: wifi.GPIO4, series: 1 kΩ'),
  },
  {
    rule: 'pin-injected',
    when: 'strains over 10 kΩ, where it is about 0.12 mA',
    verdict: 'strain',
    text: lines('voltage: 5 V, pin: wifi.GPIO4, series: 10 kΩ'),
  },
  {
    rule: 'pin-injected',
    when: 'is content over 15 kΩ: less than 0.1 mA is worth a note',
    verdict: 'silent',
    text: lines('voltage: 5 V, pin: wifi.GPIO4, series: 15 kΩ'),
  },
  {
    rule: 'pin-injected',
    when: 'goes by what is published: 1 mA breaks a stated 0.5 mA',
    verdict: 'breach',
    text: lines('voltage: 10 V, pin: main.PB1, series: 4.7 kΩ', {
      limits: '{ applies-to: each-pin, injected: 0.5 mA, grade: absolute }',
    }),
  },
  {
    rule: 'pin-injected',
    when: 'is content with the same where 2 mA are published',
    verdict: 'silent',
    text: lines('voltage: 10 V, pin: main.PB1, series: 4.7 kΩ', {
      limits: '{ applies-to: each-pin, injected: 2 mA, grade: operating }',
    }),
  },
  {
    rule: 'pin-injected',
    when: 'strains on a live 5 V pin at a chip whose own supply may be dead: (5 − 0.5) V / 4.7 kΩ',
    verdict: 'strain',
    text: lines('from: main.PB1, pin: wifi.GPIO4, series: 4.7 kΩ', { wifi: 'other' }),
  },
  {
    rule: 'pin-injected',
    when: 'is content where both live from one supply',
    verdict: 'silent',
    text: lines('from: main.PB1, pin: wifi.GPIO4, series: 4.7 kΩ', { wifi: 'bench' }),
  },
  {
    rule: 'pin-clamps',
    when: 'notes the 80 µA over 15 kΩ',
    verdict: 'note',
    text: lines('voltage: 5 V, pin: wifi.GPIO4, series: 15 kΩ'),
  },
  {
    rule: 'pin-clamps',
    when: 'has nothing to say of 3.6 V at a pin of 3.3 V: the clamp does not carry yet',
    verdict: 'silent',
    text: lines('voltage: 3.6 V, pin: wifi.GPIO4, series: 15 kΩ'),
  },
  {
    rule: 'pin-current',
    when: 'counts a pull-up fitted at a driven pin: 5 V / (222.5 + 25) Ω flow in while it is low',
    verdict: 'strain',
    text: pulledPin('222.5 Ω'),
  },
  {
    rule: 'pin-current',
    when: 'is content with 225 Ω there: exactly 20 mA',
    verdict: 'silent',
    text: pulledPin('225 Ω'),
  },
  {
    rule: 'pin-drive',
    when: 'notes 9 mA from a pin that was set to drive 4 mA: 3.3 V / 300 Ω, less what the pin takes',
    verdict: 'note',
    text: driving('4 mA', '300 Ω'),
  },
  {
    rule: 'pin-drive',
    when: 'has nothing to say where 2 mA flow',
    verdict: 'silent',
    text: driving('4 mA', '1.5 kΩ'),
  },
  {
    rule: 'pin-drive',
    when: 'has nothing to say of the highest setting, which is a limit of its own',
    verdict: 'silent',
    text: driving('12 mA', '300 Ω'),
  },
  {
    rule: 'input-floats',
    when: 'strains on a contact that nothing holds while it is open',
    verdict: 'strain',
    text: lines('type: contact, pin: main.PB1, closes-to: ground'),
  },
  {
    rule: 'input-floats',
    when: 'is content with the pull-up inside the chip',
    verdict: 'silent',
    text: lines('type: contact, pin: main.PB1, closes-to: ground', { pins: 'PB1: { pull: up }' }),
  },
  {
    rule: 'two-outputs',
    when: 'breaks on a pin that drives a lamp and is driven from outside',
    verdict: 'breach',
    text: lines('voltage: 5 V, resistance: 100 Ω, pin: main.PB1', {
      more: 'loads: { lamp: { part: led-red-5mm, pin: main.PB1, series: 1 kΩ } }',
    }),
  },
  {
    rule: 'two-outputs',
    when: 'is content with the lamp on the pin beside it',
    verdict: 'silent',
    text: lines('voltage: 5 V, resistance: 100 Ω, pin: main.PB1', {
      more: 'loads: { lamp: { part: led-red-5mm, pin: main.PB2, series: 1 kΩ } }',
    }),
  },
  {
    rule: 'rail-lifted',
    when: 'strains where 5 V over 1 kΩ pushes 1.2 mA into a rail that draws 1 mA',
    verdict: 'strain',
    text: onRail('1 mA'),
  },
  {
    rule: 'rail-lifted',
    when: 'is content where the rail draws 2 mA at the least',
    verdict: 'silent',
    text: onRail('2 mA'),
  },
];

/** Modules that share a bus with a chip on exactly 5 V. */
function onBus(modules: readonly string[], pins = ''): string {
  return `ampledger: 1
title: On the bench
ambient: 25 °C
policy: everyday
supplies: { bench: { voltage: 5 V, current: 5 A }, low: { voltage: 3.3 V, current: 1 A } }
controllers: { main: { chip: atmega328p, supply: bench, draws: { active: 10 mA }, pins: { ${pins} } } }
loads:
${modules.map((m, k) => `  m${k}: { type: module, active: 1 mA, signals: { sda: PC4 }, ${m} }`).join('\n')}`;
}

/** A shift register on 5 V whose data line a pin of an ESP32 drives, on a supply of its own. */
function register(volts: string): string {
  return `ampledger: 1
title: On the bench
ambient: 25 °C
policy: everyday
supplies: { bench: { voltage: 5 V, current: 5 A }, low: { voltage: ${volts}, current: 1 A } }
controllers: { main: { chip: esp32, supply: low, draws: { active: 100 mA } } }
expanders: { bar: { chip: 74hc595, supply: bench, control: { data: GPIO4 } } }`;
}

/** A servo on 5 V that a pin of an ESP32 talks to. */
function servo(volts: string): string {
  return register(volts).replace(
    /expanders: .*/,
    'loads: { arm: { type: servo, supply: bench, voltage: 5 V, idle: 5 mA, run: 200 mA, stall: 700 mA, stall-time: 0.2 s, pin: GPIO4 } }',
  );
}

/** A pin of 25 Ω on 5 V that switches next to nothing, with a resistor to its rail. */
function pulledPin(pullUp: string): string {
  return lines('voltage: 5 V, resistance: 100 Ω, pin: main.PB5', {
    pins: `PB1: { pull-up: ${pullUp} }`,
    more: 'loads: { lamp: { type: resistor, resistance: 1 MΩ, power: 1 W, pin: main.PB1 } }',
  });
}

/** A resistor on a pin of an RP2040 with a drive setting. */
function driving(drive: string, ohms: string): string {
  return `ampledger: 1
title: On the bench
ambient: 25 °C
policy: everyday
supplies: { low: { voltage: 3.3 V, current: 1 A } }
controllers: { main: { chip: rp2040, supply: low, draws: { active: 20 mA }, pins: { GPIO3: { drive: ${drive} } } } }
loads: { lamp: { type: resistor, resistance: ${ohms}, power: 1 W, pin: GPIO3 } }`;
}

/** The 3.3 V rail of a board with an RP2040 that draws a known current. */
function onRail(draws: string): string {
  return `ampledger: 1
title: On the bench
ambient: 25 °C
policy: everyday
supplies: { bench: { voltage: 5 V, current: 5 A } }
controllers: { main: { board: rp2040-board, powered: { usb: bench }, draws: { active: ${draws} } } }
incoming: { line: { voltage: 5 V, pin: GP4, series: 1 kΩ } }`;
}
