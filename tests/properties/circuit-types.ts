/**
 * One small project a type of circuit: what people hang on a controller, each by itself, with a tolerance on everything. A
 * new type of load or driver belongs here.
 */
import type { Data } from './projects.js';

const usb = { port: { type: 'usb2-port' } };
const brick5 = { voltage: '5 V ±4 %', current: '2 A' };
const brick12 = { voltage: '12 V ±5 %', current: '2 A' };
const board = { main: { board: 'atmega328p-5v-board', powered: { usb: 'port' } } };

const on = (loads: Data, more: Data = {}): Data => ({
  ampledger: 1,
  title: 'One circuit',
  ambient: '5 to 45 °C',
  supplies: { ...usb, 'brick-5v': brick5, 'brick-12v': brick12 },
  controllers: board,
  loads,
  ...more,
});
const coil = (driver: Data): Data => ({
  coil: { part: 'relay-coil-5v-70r', supply: 'brick-5v', driver, clamp: { part: 'diode-1n4148' } },
});

export const CIRCUIT_TYPES: Readonly<Record<string, Data>> = {
  'an LED on a pin': on({ lamp: { part: 'led-red-5mm', pin: 'D13', series: '330 Ω ±5 %' } }),
  'an LED from a pin to its rail': on({
    lamp: { part: 'led-white-5mm', pin: 'D5', series: '82 Ω ±10 %', active: 'low' },
  }),
  'a coil on a pin': on({ horn: { part: 'relay-coil-5v-70r', pin: 'D9' } }),
  'a coil behind an NPN transistor': on(
    coil({ part: 'npn-2n2222a', pin: 'D8', 'base-resistor': '680 Ω ±5 %', 'pull-down': '10 kΩ ±5 %' }),
  ),
  'a coil behind an N-channel MOSFET': on(
    coil({ part: 'nmos-ao3400a', pin: 'D8', 'gate-resistor': '100 Ω ±5 %', 'pull-down': '100 kΩ ±5 %' }),
  ),
  'a coil behind a resistor that a capacitor bridges at first': on({
    valve: {
      part: 'relay-coil-5v-70r',
      supply: 'brick-5v',
      series: { resistance: '22 Ω ±10 %', power: '0.5 W', bypass: '1000 µF ±20 %' },
      driver: { part: 'npn-2n2222a', pin: 'D8', 'base-resistor': '470 Ω ±5 %' },
      clamp: { part: 'diode-1n4148' },
    },
  }),
  'a stepper behind a chopper that holds its current': on({
    axis: {
      ...{ type: 'stepper', 'maximum-current': '1.7 A', 'winding-resistance': '1.65 Ω ±10 %' },
      ...{ 'phase-current': '1 A', 'shaft-power': '0 to 2 W', supply: 'brick-12v' },
      driver: { part: 'chopper-a4988', pin: 'D8', 'logic-supply': 'main.5v' },
    },
  }),
  'a coil on the board’s own rail': on({
    coil: {
      part: 'relay-coil-5v-70r',
      supply: 'main.5v',
      driver: { part: 'npn-2n2222a', pin: 'D8', 'base-resistor': '680 Ω ±5 %' },
      clamp: { part: 'diode-1n4148' },
    },
  }),
  'two coils on channels of an array': on(
    {
      bell: { part: 'relay-coil-12v-400mw', supply: 'brick-12v', driver: { array: 'sink.1', pin: 'D2' } },
      door: { part: 'relay-coil-12v-400mw', supply: 'brick-12v', driver: { array: 'sink.2', pin: 'D3' } },
    },
    { arrays: { sink: { part: 'darlington-array-7', common: 'brick-12v' } } },
  ),
  'a relay board with couplers': on({
    vents: {
      part: 'relay-board-opto-low-5v-1',
      inputs: { 1: 'D4' },
      'logic-supply': 'main.5v',
      'coil-supply': 'brick-5v',
      jumper: 'removed',
    },
  }),
  'a relay board with transistor inputs': on({
    fan: { part: 'relay-board-transistor-high-5v-1', inputs: { 1: 'D6' }, supply: 'main.5v' },
  }),
  'a relay board whose coils lie in a bridge or behind a gate driver': on({
    latch: {
      type: 'relay-board',
      channels: 1,
      input: { coupling: 'transistor', active: 'high', indicator: 'none' },
      output: {
        type: 'h-bridge',
        threshold: '0.7 to 2 V',
        'on-resistance': '0.3 to 0.6 Ω',
        'maximum-current': '1.5 A',
      },
      coil: { voltage: '5 V', resistance: '100 Ω ±10 %', latching: 'one-coil', pulse: '50 ms' },
      inputs: { 1: 'D6' },
      supply: 'main.5v',
    },
    vents: {
      type: 'relay-board',
      channels: 1,
      input: {
        coupling: 'opto',
        active: 'low',
        indicator: 'none',
        series: '1 kΩ ±5 %',
        'led-drop': '1.1 to 1.3 V',
        'transfer-ratio': '100 to 300 %',
      },
      output: {
        stages: [
          { type: 'gate-driver', threshold: '0.8 to 2.4 V', 'pull-down': '10 kΩ ±5 %', 'on-resistance': 'max 7 Ω' },
          { part: 'nmos-ao3400a' },
        ],
      },
      coil: { voltage: '5 V', resistance: '70 Ω ±10 %' },
      clamp: { part: 'diode-1n4148' },
      inputs: { 1: 'D7' },
      'logic-supply': 'main.5v',
      'coil-supply': 'brick-5v',
    },
  }),
  'a heater on a normally open contact and a fan on a normally closed one': on(
    {
      vents: {
        part: 'relay-board-opto-low-5v-2',
        inputs: { 1: 'D4', 2: 'D5' },
        'logic-supply': 'main.5v',
        'coil-supply': 'brick-5v',
        jumper: 'removed',
        'contact-resistance': '20 to 100 mΩ',
        contacts: {
          1: {
            wired: 'normally-open',
            load: { type: 'resistive', voltage: '12 V DC', current: '0.7 to 0.8 A', supply: 'brick-12v' },
            'other-side': {
              load: {
                type: 'inductive',
                voltage: '12 V DC',
                current: '0.2 to 0.3 A',
                supply: 'brick-12v',
                'supply-voltage': '10.8 to 13.2 V',
              },
              suppression: { part: 'tvs-smaj15a', energy: '0.5 J' },
            },
          },
          2: {
            wired: 'normally-closed',
            load: { type: 'motor', voltage: '12 V DC', current: '0.2 to 0.3 A', stall: '0.8 A', supply: 'brick-12v' },
          },
        },
      },
    },
    {
      wires: [{ from: 'brick-12v', to: 'vents', length: '3 m', gauge: 'AWG 22' }],
      modes: { working: { active: ['vents.1'] }, resting: { active: ['vents.2'] } },
    },
  ),
  'a row of LEDs on an expander': on(
    { row: { part: 'led-red-5mm', pins: ['bar.q0..q3'], series: '330 Ω ±5 %' } },
    {
      expanders: { bar: { chip: '74hc595', supply: 'main.5v', control: { data: 'D11', clock: 'D12', latch: 'D10' } } },
    },
  ),
  'LEDs on a port expander that bears so many watts, in and out of its pins': on(
    {
      high: { part: 'led-red-5mm', pins: ['more.GPA0..GPA1'], series: '330 Ω ±5 %' },
      low: { part: 'led-red-5mm', pins: ['more.GPB0..GPB1'], series: '220 Ω ±10 %', active: 'low' },
    },
    {
      expanders: {
        more: {
          chip: 'mcp23017',
          supply: 'main.5v',
          draws: { active: '0.5 to 1 mA' },
          limits: [{ 'applies-to': 'each-pin', power: '50 mW', grade: 'operating' }],
        },
      },
    },
  ),
  'a diode, a linear regulator and a second one behind it': on(
    {
      heater: { type: 'resistor', resistance: '100 Ω ±10 %', power: '1 W', supply: 'main.5v' },
      sensor: { type: 'constant-current', current: '10 to 25 mA', supply: 'main.3v3' },
    },
    {
      supplies: { adapter: { voltage: '9 V ±10 %', current: '1 A', resistance: '0.2 to 0.6 Ω' } },
      controllers: { main: { board: 'atmega328p-5v-board', powered: { barrel: 'adapter' } } },
    },
  ),
  'a converter behind a diode': on(
    {
      lamp: { part: 'led-red-5mm', pin: 'GP3', series: '220 Ω ±5 %' },
      sensor: { type: 'constant-current', current: '5 to 20 mA', supply: 'main.3v3' },
    },
    {
      supplies: { port: { voltage: '5 V ±5 %', current: '1 A', resistance: '0.1 to 0.3 Ω' } },
      controllers: { main: { board: 'rp2040-board', powered: { usb: 'port' } } },
    },
  ),
  'a heater at the end of a wire': on(
    { heater: { type: 'resistor', resistance: '22 Ω ±10 %', power: '10 W', supply: 'brick-12v' } },
    { wires: [{ from: 'brick-12v', to: 'heater', length: '5 m', gauge: 'AWG 24', name: 'lead' }] },
  ),
};
