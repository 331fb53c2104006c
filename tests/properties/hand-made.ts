/** Projects made by hand: what people build, and what bends a tree the most. */
import type { Data } from './projects.js';

const usb = { port: { type: 'usb2-port' } };
const board = { main: { board: 'atmega328p-5v-board', powered: { usb: 'port' } } };

export const HAND_MADE: Readonly<Record<string, Data>> = {
  'loads on contacts, open and closed at rest, one of them on the coils’ own supply': {
    ampledger: 1,
    title: 'Contacts',
    ambient: '0 to 40 °C',
    supplies: {
      ...usb,
      brick: { voltage: '5 V ±5 %', current: '5 A', resistance: '50 to 100 mΩ' },
      big: { voltage: '24 V ±10 %', current: '5 A' },
    },
    controllers: board,
    loads: {
      vents: {
        part: 'relay-board-opto-low-5v-4',
        inputs: { 1: 'D4', 2: 'D5', 3: 'D6', 4: 'D7' },
        'logic-supply': 'main.5v',
        'coil-supply': 'brick',
        jumper: 'removed',
        contacts: {
          1: {
            wired: 'normally-open',
            load: { type: 'inductive', voltage: '24 V DC', current: '0.4 to 0.5 A', supply: 'big' },
          },
          2: {
            wired: 'normally-closed',
            load: { type: 'resistive', voltage: '5 V DC', current: '1 A', supply: 'brick' },
          },
          3: {
            wired: 'normally-closed',
            load: { type: 'motor', voltage: '24 V DC', current: '0.5 A', supply: 'big' },
          },
          4: { wired: 'normally-open', load: { type: 'resistive', voltage: '230 V AC', current: '2 A' } },
        },
      },
    },
  },
  'four relays of a board on the controller’s own 5 V, with a lamp on one of their pins': {
    ampledger: 1,
    title: 'Vents',
    ambient: '5 to 45 °C',
    supplies: usb,
    controllers: board,
    loads: {
      vents: {
        part: 'relay-board-opto-low-5v-4',
        inputs: { 1: 'D4', 2: 'D5', 3: 'D6', 4: { pin: 'D7', 'pull-up': '10 kΩ ±5 %' } },
        'logic-supply': 'main.5v',
        'coil-supply': 'main.5v',
        jumper: 'fitted',
      },
      lamp: { part: 'led-red-5mm', pin: 'D4', series: '1 kΩ ±5 %', active: 'low' },
    },
  },
  'a row of lamps on one port, sourced and sunk, beside an expander’s row': {
    ampledger: 1,
    title: 'Lamps',
    ambient: '-10 to 50 °C',
    supplies: usb,
    controllers: board,
    expanders: { bar: { chip: '74hc595', supply: 'main.5v', control: { data: 'D11', clock: 'D12', latch: 'D10' } } },
    loads: {
      high: { part: 'led-green-5mm', pins: ['D0', 'D1', 'D2'], series: '220 Ω ±5 %' },
      low: { part: 'led-blue-5mm', pins: ['D3', 'D4'], series: '100 Ω ±5 %', active: 'low' },
      row: { part: 'led-red-5mm', pins: ['bar.q0..q7'], series: '330 Ω ±5 %' },
      heartbeat: { part: 'led-yellow-5mm', pin: 'D13', series: '470 Ω ±5 %' },
    },
  },
  'coils behind transistors, a gate and an array, fed from a soft supply that feeds the board, too': {
    ampledger: 1,
    title: 'Coils',
    ambient: '10 to 40 °C',
    supplies: {
      port: { voltage: '5 V ±4 %', current: '3 A', resistance: '60 to 150 mΩ' },
      brick: { voltage: '12 V ±5 %', current: '2 A' },
    },
    controllers: board,
    arrays: { sink: { part: 'darlington-array-7', common: 'brick' } },
    loads: {
      gate: {
        part: 'relay-coil-5v-70r',
        supply: 'port',
        driver: { part: 'npn-2n2222a', pin: 'D8', 'base-resistor': '680 Ω ±5 %', 'pull-down': '10 kΩ ±5 %' },
        clamp: { part: 'diode-1n4148' },
      },
      valve: {
        part: 'relay-coil-5v-70r',
        supply: 'main.5v',
        driver: { part: 'nmos-ao3400a', pin: 'D9', 'gate-resistor': '100 Ω', 'pull-down': '100 kΩ ±10 %' },
        clamp: { part: 'diode-1n4148' },
      },
      bell: { part: 'relay-coil-12v-400mw', supply: 'brick', driver: { array: 'sink.1', pin: 'D2' } },
      horn: { part: 'relay-coil-5v-70r', pin: 'D10' },
      rest: { type: 'constant-current', current: '20 to 60 mA', supply: 'port' },
    },
  },
  'a barrel jack, its diode and its regulator, with the 3.3 V rail behind them': {
    ampledger: 1,
    title: 'Barrel',
    ambient: '0 to 60 °C',
    supplies: { adapter: { voltage: '9 V ±10 %', current: '1 A', resistance: '0.2 to 0.6 Ω' } },
    controllers: { main: { board: 'atmega328p-5v-board', powered: { barrel: 'adapter' } } },
    loads: {
      heater: { type: 'resistor', resistance: '100 Ω ±10 %', power: '1 W', supply: 'main.5v' },
      sensor: { type: 'module', active: '10 to 25 mA', idle: '1 to 2 mA', supply: 'main.3v3' },
      lamp: { part: 'led-white-5mm', pin: 'D5', series: '100 Ω ±5 %' },
      relay: { part: 'relay-board-transistor-high-5v-1', inputs: { 1: 'D6' }, supply: 'main.5v' },
    },
  },
  'a board, a coil and a pump at the ends of long wires, two of them on one, with plugs of their own': {
    ampledger: 1,
    title: 'Wires',
    ambient: '-10 to 50 °C',
    supplies: {
      port: { voltage: '5 V ±4 %', current: '3 A', resistance: '40 to 120 mΩ' },
      brick: { voltage: '12 V ±5 %', current: '2 A' },
    },
    controllers: board,
    loads: {
      latch: {
        part: 'relay-coil-5v-70r',
        supply: 'port',
        driver: { part: 'npn-2n2222a', pin: 'D8', 'base-resistor': '680 Ω ±5 %', 'pull-down': '10 kΩ ±5 %' },
        clamp: { part: 'diode-1n4148' },
      },
      pump: { type: 'constant-current', current: '150 to 260 mA', supply: 'port', switched: 'elsewhere' },
      heater: { type: 'resistor', resistance: '47 Ω ±10 %', power: '5 W', supply: 'brick', switched: 'elsewhere' },
      lamp: { part: 'led-white-5mm', series: '470 Ω ±5 %', supply: 'main.5v' },
      heartbeat: { part: 'led-red-5mm', pin: 'D9', series: '220 Ω ±5 %' },
    },
    wires: [
      { from: 'port', to: 'main.usb', length: '1.8 to 2.2 m', gauge: 'AWG 28', 'contact-resistance': '30 to 120 mΩ' },
      {
        from: 'port',
        to: ['latch', 'pump'],
        length: '5 m',
        gauge: '0.25 mm² ±5 %',
        'contact-resistance': '20 to 80 mΩ',
      },
      { from: 'brick', to: 'heater', resistance: '0.8 Ω ±10 %', rating: '1 A', name: 'heater-cable' },
      { from: 'heater.ground', to: 'brick.ground', length: '4 m', gauge: 'AWG 24' },
      { from: 'main.5v', to: 'lamp', length: '3 m', gauge: 'AWG 30', conductors: 1 },
    ],
  },
  'coils and lamps of one soft supply in three places, two lamps of two places on one pin': {
    ampledger: 1,
    title: 'Places',
    ambient: '-10 to 30 °C',
    places: { box: { ambient: '30 to 60 °C' }, cellar: { ambient: '8 to 12 °C' } },
    supplies: {
      port: { voltage: '5 V ±4 %', current: '3 A', resistance: '60 to 150 mΩ' },
      brick: { voltage: '12 V ±5 %', current: '2 A' },
    },
    controllers: { main: { board: 'atmega328p-5v-board', powered: { usb: 'port' }, place: 'cellar' } },
    arrays: { sink: { part: 'darlington-array-7', common: 'brick' } },
    loads: {
      latch: {
        part: 'relay-coil-5v-70r',
        supply: 'port',
        place: 'box',
        driver: { part: 'npn-2n2222a', pin: 'D8', 'base-resistor': '680 Ω ±5 %', 'pull-down': '10 kΩ ±5 %' },
        clamp: { part: 'diode-1n4148' },
      },
      valve: {
        part: 'relay-coil-5v-70r',
        supply: 'main.5v',
        driver: { part: 'nmos-ao3400a', pin: 'D9', 'gate-resistor': '100 Ω', 'pull-down': '100 kΩ ±10 %' },
        clamp: { part: 'diode-1n4148' },
      },
      bell: { part: 'relay-coil-12v-400mw', supply: 'brick', place: 'box', driver: { array: 'sink.1', pin: 'D2' } },
      near: { part: 'led-red-5mm', pin: 'D5', series: '220 Ω ±5 %', place: 'box' },
      far: { part: 'led-green-5mm', pin: 'D5', series: '330 Ω ±5 %' },
      horn: { part: 'relay-coil-5v-70r', pin: 'D10', place: 'box' },
    },
    wires: [
      { from: 'port', to: ['latch'], length: '6 m', gauge: 'AWG 26' },
      { from: 'brick', to: 'bell', length: '2 m', gauge: 'AWG 28', place: 'box' },
    ],
  },
  'a 3.3 V board behind a diode and a converter, with coils on the port’s side': {
    ampledger: 1,
    title: 'Converter',
    ambient: '10 to 40 °C',
    supplies: { port: { voltage: '5 V ±5 %', current: '1 A', resistance: '0.1 to 0.3 Ω' } },
    controllers: { main: { board: 'rp2040-board', powered: { usb: 'port' } } },
    loads: {
      relay: { part: 'relay-board-opto-low-5v-1', inputs: { 1: 'GP2' }, supply: 'main.vbus' },
      lamp: { part: 'led-red-5mm', pin: 'GP3', series: '220 Ω ±5 %' },
      sensor: { type: 'constant-current', current: '5 to 20 mA', supply: 'main.3v3' },
    },
  },
  'lines between two boards, from outside and on a bus': {
    ampledger: 1,
    title: 'Lines',
    ambient: '10 to 40 °C',
    supplies: {
      ...usb,
      logic: { voltage: '3.3 V ±3 %', current: '1 A' },
      brick: { voltage: '12 V ±5 %', current: '1 A' },
    },
    controllers: { ...board, wifi: { chip: 'esp32', supply: 'logic', draws: { active: '80 to 120 mA' } } },
    expanders: { bar: { chip: '74hc595', supply: 'main.5v', control: { data: 'wifi.GPIO4' } } },
    loads: {
      lamp: { part: 'led-red-5mm', pin: 'main.D3', series: '330 Ω ±5 %' },
      near: {
        type: 'module',
        active: '2 mA',
        supply: 'main.3v3',
        'pull-up': '10 kΩ ±5 %',
        signals: { sda: 'main.A4' },
      },
      far: {
        type: 'module',
        active: '2 mA',
        supply: 'main.3v3',
        'pull-up': '4.7 kΩ ±5 %',
        signals: { sda: 'main.A4' },
      },
    },
    incoming: {
      echo: { voltage: '5 V ±5 %', pin: 'wifi.GPIO16', series: '1.8 kΩ ±5 %', 'pull-down': '3.3 kΩ ±5 %' },
      talk: { from: 'main.D3', pin: 'wifi.GPIO17', series: '10 kΩ ±5 %', 'pull-down': '18 kΩ ±5 %' },
      answer: { from: 'wifi.GPIO18', pin: 'main.D2', series: '1 kΩ ±5 %' },
      stop: { type: 'contact', pin: 'main.D4', 'closes-to': 'ground', 'pull-up': '10 kΩ ±5 %' },
      limit: {
        type: 'contact',
        pin: 'main.D5',
        'closes-to': 'supply',
        with: 'brick',
        series: '22 kΩ',
        'pull-down': '10 kΩ',
      },
    },
  },
};
