/**
 * What loads do while nobody is looking: until firmware runs, and with a supply dead. Small projects with the sum by hand; each
 * says all that is told of it in the families of boot and of what is fed backwards.
 */
import { expect, it } from 'vitest';
import { judged } from './judged.js';

const RULES =
  /^(boot-drives|boot-floats|strap-loaded|dead-drives|dead-fed|dead-pushed|dead-lifted|pin-injected|pin-current|supply-current|safe-state)$/;

const BENCH = 'supplies: { bench: { voltage: 5 V, current: 5 A }, brick: { voltage: 5 V, current: 5 A } }';
/** A chip on 5 V whose pins have 25 Ω, float at boot and are pulled by 20 to 50 kΩ where they are. @param pins what they do */
const chip = (loads: string, pins = ''): string =>
  `${BENCH}
controllers: { main: { chip: atmega328p, supply: bench, pin-resistance: { source: 25 Ω, sink: 25 Ω }, draws: { active: 10 mA }, pins: { ${pins} } } }
loads: { ${loads} }`;
const STOPPED = 'safe-when: load-stopped';
const pump = (driver: string, safe = STOPPED): string =>
  `pump: { type: resistor, resistance: 10 Ω, power: 5 W, supply: bench, ${safe}, driver: { pin: PB1, ${driver} } }`;
const valve = (driver: string, supply = 'bench'): string =>
  `valve: { part: relay-coil-5v-70r, supply: ${supply}, clamp: { part: diode-1n4148 }, ${STOPPED}, driver: { pin: PB1, ${driver} } }`;
const vents = (input: string, supplies = 'supply: bench'): string =>
  `vents: { part: relay-board-opto-low-5v-1, inputs: { 1: ${input} }, ${supplies}, ${STOPPED} }`;
const fan = (driver: string): string =>
  `fan: { type: dc-motor, run: 0.1 A, stall: 0.5 A, supply: bench, ${STOPPED}, driver: { ${driver}, pins: [PB1, PB2] } }`;
const UP = 'PB1: { at-boot: pulled-up }, PB2: { at-boot: pulled-up }';

it.each([
  // 1 µA times some 400 are 0.4 mA; the coil lets go below 3.6 mA.
  ['an NPN without a resistor at its base stays off', chip(valve('part: npn-2n2222a, base-resistor: 1 kΩ')), []],
  // 1 µA through 2.2 MΩ are 2.2 V, and the gate begins between 1 and 2 V; through 10 kΩ 10 mV.
  [
    'a gate with 2.2 MΩ may stand anywhere',
    chip(pump('part: nmos-irlz44n, pull-down: 2.2 MΩ')),
    ['strain boot-floats pump'],
  ],
  ['a gate with 10 kΩ is off', chip(pump('part: nmos-irlz44n, pull-down: 10 kΩ')), []],
  [
    'a gate with 10 kΩ leaves a load stopped that has to run',
    chip(pump('part: nmos-irlz44n, pull-down: 10 kΩ', 'safe-when: load-running')),
    ['breach boot-drives pump'],
  ],
  // 4.3 V over 20 to 50 kΩ are 86 to 215 µA, times 100 to 400: between 9 and 86 mA, where the coil wants 71 mA.
  [
    'a pin that is pulled up half drives an NPN',
    chip(valve('part: npn-2n2222a, base-resistor: 1 kΩ'), UP),
    ['strain boot-floats valve'],
  ],
  // Of 5 V over 20 kΩ 1 kΩ at the base leaves 0.25 V.
  [
    'a pin that is pulled up does not drive it past 1 kΩ',
    chip(valve('part: npn-2n2222a, base-resistor: 1 kΩ, pull-down: 1 kΩ'), UP),
    [],
  ],
  // 1 kΩ beside a floating pin takes (5 - 2.55) V / 2 kΩ = 1.2 mA through coupler and indicator.
  [
    'a pull-down at an input that is active low switches it on',
    chip(vents('{ pin: PB1, pull-down: 1 kΩ }')),
    ['breach boot-drives vents.1'],
  ],
  ['a floating pin leaves it off', chip(vents('PB1')), []],
  // 1 µA through at most 200 kΩ inside the bridge are 0.2 V of 5 V.
  ['the pull-downs inside a bridge hold it', chip(fan('part: motor-driver-drv8833')), []],
  // 100 kΩ beside 50 kΩ leave 3.3 V, 200 kΩ beside 20 kΩ 4.5 V: 3.5 V surely read high.
  [
    'its pull-downs lose against pins that are pulled up',
    chip(fan('part: motor-driver-drv8833'), UP),
    ['strain boot-floats fan'],
  ],
  // (5 - 0.5) V over 1.02 kΩ through the PNP's base into the dead pin: 3.9 mA, and its coil wants 71 mA / 100.
  [
    'a PNP on a supply of its own is on while the chip is dead',
    chip(valve('part: pnp-2n2907a, base-resistor: 1 kΩ, pull-up: 10 kΩ', 'brick')),
    ['breach dead-drives valve', 'note dead-lifted bench', 'strain pin-injected main.PB1'],
  ],
  // Behind an NPN the pin of a dead chip pulls nothing.
  ['an NPN is off then', chip(valve('part: npn-2n2222a, base-resistor: 1 kΩ', 'brick')), []],
])('%s', (_, text, expected) => {
  const { findings } = judged(`ampledger: 1\ntitle: t\nambient: 25 °C\n${text}\n`);
  const told = findings.filter((f) => RULES.test(f.rule)).map((f) => `${f.verdict} ${f.rule} ${f.about}`);
  expect(told.sort()).toEqual(expected);
});

const uart = (series: string): string => `
supplies: { one: { voltage: 5 V, current: 1 A }, two: { voltage: 5 V, current: 1 A } }
controllers:
  a: { chip: atmega328p, supply: one, pin-resistance: { source: 25 Ω, sink: 25 Ω }, draws: { active: 10 mA } }
  b: { chip: atmega328p, supply: two, pin-resistance: { source: 25 Ω, sink: 25 Ω }, draws: { active: 10 mA } }
incoming: { line: { from: a.PD1, pin: b.PD0${series} } }
modes: { half: { active: [], without: [two] } }`;

it.each([
  // 4.4 V over 25 Ω; a pin bears 40 mA, and clamps of logic some 20 mA. 10 mA at 5 V are 500 Ω: it lives on 4.2 V.
  ['', ['breach dead-fed two', 'breach pin-current line', 'breach pin-injected line', 'strain dead-lifted two']],
  // 4.55 V over 10 kΩ are 0.45 mA, and leave 0.2 V at 500 Ω.
  [', series: 10 kΩ', ['breach dead-fed two', 'note dead-lifted two', 'strain pin-injected line']],
  // 4.56 V over 47 kΩ are less than 0.1 mA.
  [', series: 47 kΩ', []],
])('a serial line%s into a controller without its supply', (series, expected) => {
  const text = `ampledger: 1\ntitle: t\nambient: 25 °C${uart(series)}\n`.replace(
    'two: { voltage: 5 V,',
    'two: { voltage: 5 V, reverse: not-allowed,',
  );
  const told = judged(text)
    .findings.filter((f) => RULES.test(f.rule))
    .map((f) => `${f.verdict} ${f.rule} ${f.about}`);
  expect(told.sort()).toEqual(expected);
});

it('a board goes over to its other supply where a mode says that the one is dead', () => {
  const { accounts } = judged(`ampledger: 1
title: t
ambient: 25 °C
supplies: { laptop: { type: usb2-port, state: unconfigured }, brick: { voltage: 9 V, current: 1 A } }
controllers: { main: { board: atmega328p-5v-board, powered: { barrel: brick, usb: laptop }, draws: { active: 50 mA } } }
loads: { lamp: { type: resistor, resistance: 50 Ω, power: 1 W, supply: main.5v } }
modes: { off: { active: [], without: [brick] } }
`);
  // The lamp takes up to 5.25 V / 50 Ω, of which the port owes 100 mA before it is configured.
  const { account, verdict } = accounts.find((a) => a.account.id === 'laptop' && a.account.quantity === 'current')!;
  expect(verdict).toBe('breach');
  expect(account.mode).toBe('off');
  expect(account.draw!.max).toBeCloseTo(0.05 + 5.23 / 50, 2);
});

it('tells once what two sets of dead supplies bring about alike, of the worst of them', () => {
  const { findings } = judged(`ampledger: 1
title: t
ambient: 25 °C
supplies: { laptop: { type: usb2-port }, spare: { voltage: 5 V, current: 1 A }, brick: { voltage: 5 V, current: 1 A, reverse: tolerated } }
controllers: { main: { board: atmega328p-5v-board, powered: { usb: laptop } } }
loads: { lamp: { type: resistor, resistance: 330 Ω, active: low, pin: D5, supply: brick, safe-when: load-stopped } }
modes: { parked: { active: [], without: [laptop, spare] } }
`);
  // (5 - 0.57) V / 330 Ω are 13.4 mA, through pin, rail and fuse.
  expect(findings.filter((f) => f.rule.startsWith('dead-')).map((f) => [f.verdict, f.rule, f.names['dead']])).toEqual([
    ['breach', 'dead-fed', 'laptop, spare'],
    ['breach', 'dead-drives', 'laptop'],
    ['strain', 'dead-lifted', 'laptop, spare'],
  ]);
});
