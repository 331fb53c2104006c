/** A file with every section of the format: names bind, everything is judged, and nothing else is in the way. */
import { expect, test } from 'vitest';
import { judged } from '../checks/judged.js';

const TEXT = `ampledger: 1
title: Seedling house
ambient: 5 to 45 °C
places: { hot-box: { ambient: 30 to 60 °C } }
policy: everyday
parts:
  gate-relay: { extends: relay-coil-5v-70r, resistance: 62 Ω ±10 % }

supplies:
  laptop:   { type: usb2-port }
  brick-5v: { voltage: 5 V ±4 %, current: 2 A }
  brick-12v: { voltage: 12 V ±5 %, current: 1 A }
  pump-24v: { voltage: 24 V ±10 %, current: 3 A }
  logic:    { from: brick-5v, type: linear-regulator, voltage: 3.3 V ±2 %, current: 800 mA,
              dropout: { value: 1.2 V, at: 800 mA }, quiescent: 5 mA, thermal-resistance: 90 K/W }

controllers:
  main: { board: atmega328p-5v-board, powered: { usb: laptop }, pins: { D8: { pull: up } } }
  wifi: { chip: esp8266ex, supply: logic, draws: { active: 80 mA, peak: 400 mA, peak-time: 1 ms } }
expanders:
  bar:  { chip: 74hc595, supply: main.5v, control: { data: D11, clock: D12, latch: D10 } }
arrays:
  sink: { part: darlington-array-7, common: brick-12v }

loads:
  vents:
    part: relay-board-opto-low-5v-4
    inputs: { 1: D4, 2: D5, 3: D6, 4: { pin: D7, pull-up: 10 kΩ } }
    logic-supply: main.5v
    coil-supply: main.5v
    jumper: fitted
    grounds: joined
    isolation: wanted
    contacts:
      1: { wired: normally-open, load: { type: motor, voltage: 24 V DC, current: 1.2 A, supply: pump-24v },
           load-time: 6 h/day, safe-when: load-stopped }
  mist-valve:
    part: gate-relay
    supply: brick-5v
    driver: { part: npn-2n2222a, pin: D8, base-resistor: 1 kΩ ±5 %, pull-down: 10 kΩ }
    clamp:  { part: diode-1n4148 }
  bell:      { part: relay-coil-12v-400mw, supply: brick-12v, driver: { array: sink.1, pin: D2 } }
  horn:      { part: relay-coil-5v-70r, pin: D9 }
  heartbeat: { part: led-green-5mm, pin: D13, series: 330 Ω ±5 % }
  level-bar: { part: led-red-5mm, pins: [bar.q0..q7], series: 220 Ω ±5 % }
  climate:   { part: sensor-bme280, supply: main.3v3, signals: { sda: A4, scl: A5 } }
  pump:      { type: dc-motor, supply: brick-5v, run: 180 mA, stall: 800 mA, stall-time: 150 ms,
               driver: { part: nmos-ao3400a, pin: D3, gate-resistor: 100 Ω, pull-down: 100 kΩ },
               clamp: { type: schottky, current: 1 A }, pwm: { frequency: 1 kHz, duty: 60 % } }

incoming:
  echo:   { voltage: 5 V ±5 %, resistance: 120 Ω, pin: A1, series: 1.8 kΩ, pull-down: 3.3 kΩ }
  stop:   { type: contact, pin: A0, closes-to: ground, pull-up: 10 kΩ }
  link:   { from: wifi.GPIO1, pin: D0, series: 1 kΩ }

modes:
  venting: { active: [vents.1, vents.2, heartbeat], share: 20 % }
  misting: { active: [mist-valve, pump, heartbeat, level-bar.*], share: 5 % }
  resting: { active: [heartbeat], share: 75 % }
  reset:   { active: [vents.*], during: boot }
  parked:  { active: [], without: [laptop] }
interlocks:
  - { at-most: 1, of: [vents.1, vents.2], by: wiring }
  - { needs: mist-valve, for: pump, by: firmware }
wires:
  - { from: brick-5v, to: [vents, pump], length: 2 m, gauge: AWG 24 }
measured:
  - { of: vents.1.coil, voltage: 4.18 V, mode: venting }
variants:
  external: { loads.vents.coil-supply: brick-5v, loads.vents.jumper: removed }
waivers:
  - { rule: regulator-heat, about: main.regulator-5v, reason: bench use only, until: 2027-03-01 }
`;

test('a file with every section is audited whole', () => {
  const { findings, accounts, project } = judged(TEXT);
  // Pins go without their owner where only one of several controllers has them.
  expect(project.uses.filter((u) => u.by === 'horn').map((u) => u.pin)).toEqual(['main.D9']);
  const told = findings.filter((f) => f.verdict === 'breach').map((f) => `${f.rule} ${f.about}`);
  expect(told).toEqual([
    'coil-on-pin horn',
    'coil-no-clamp horn',
    // (3.3 - 0.5) V / 1 kΩ, over pin D0 and the board's fuse.
    'dead-fed laptop',
    'boot-drives vents.1',
    'pin-current horn',
    'total-current bar.supply-pins',
    'supply-current laptop',
  ]);
  expect(findings.map((f) => f.rule)).toContain('wire-idle');
  // Fed over USB the regulator behind the barrel jack is idle: nothing is there to set aside.
  expect(findings.map((f) => f.rule)).toContain('waiver-unused');
  for (const id of [
    'logic',
    'brick-5v',
    'mist-valve.driver',
    'bell.coil',
    'pump.clamp',
    'vents.4.coil',
    'vents.1.contact',
    'pump-24v',
    'echo',
  ])
    expect(
      accounts.map(({ account }) => account.id),
      id,
    ).toContain(id);
});

test('a pin that two controllers have is asked for by its owner', () => {
  const both = TEXT.replace('wifi: { chip: esp8266ex, supply: logic', 'wifi: { chip: atmega328p, supply: logic')
    .replace('from: wifi.GPIO1', 'from: wifi.PB1')
    .replace('pin: D9 }', 'pin: PB1 }');
  expect(() => judged(both)).toThrow(/`main` and `wifi` both have a pin `PB1`/);
});
