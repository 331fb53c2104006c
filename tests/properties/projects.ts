/** Projects of every kind the ledger has to keep books of, made from a few choices; and how a test resolves them. */
import fc from 'fast-check';
import { builtIn } from '../../src/catalogue/built-in.js';
import type { Project } from '../../src/project/project.js';
import { resolve } from '../../src/project/resolve.js';

export type Entry = Readonly<Record<string, unknown>>;
export type Data = Readonly<Record<string, unknown>>;

/** @throws with all that is wrong with it */
export function projectOf(data: Data): Project {
  const resolved = resolve(data, 'project.yaml', builtIn);
  if ('problems' in resolved) throw new Error(JSON.stringify(resolved.problems, null, 1));
  return resolved.project;
}

/** A controller with what powers it, the supplies and rails that loads may hang on, and its free pins. */
interface Board {
  readonly supplies: Readonly<Record<string, Entry>>;
  readonly main: Entry;
  /** Rails and supplies near 5 V, the pins' own rail, and all. */
  readonly five: readonly string[];
  readonly own: string;
  readonly pins: readonly string[];
}

const pinsFrom = (letter: string, first: number, last: number): string[] =>
  Array.from({ length: last - first + 1 }, (_, k) => `${letter}${first + k}`);

const HEADERS = [...pinsFrom('D', 2, 13), ...pinsFrom('A', 0, 5)];
const port = { type: 'usb2-port' };
const soft = { voltage: '5 V ±4 %', current: '3 A', resistance: '40 to 120 mΩ' };
const brick = { voltage: '12 V ±5 %', current: '2 A' };

const BOARDS: Readonly<Record<string, Board>> = {
  usb: {
    supplies: { port, brick },
    main: { board: 'atmega328p-5v-board', powered: { usb: 'port' } },
    five: ['main.5v', 'port'],
    own: 'main.5v',
    pins: HEADERS,
  },
  'soft usb': {
    supplies: { port: soft, brick },
    main: { board: 'atmega328p-5v-board', powered: { usb: 'port' } },
    five: ['main.5v', 'port'],
    own: 'main.5v',
    pins: HEADERS,
  },
  barrel: {
    supplies: { adapter: { voltage: '9 V ±10 %', current: '1 A' }, extra: soft, brick },
    main: { board: 'atmega328p-5v-board', powered: { barrel: 'adapter' } },
    five: ['main.5v', 'extra'],
    own: 'main.5v',
    pins: HEADERS,
  },
  'low barrel': {
    supplies: { adapter: { voltage: '6 to 7.4 V', current: '1 A', resistance: '0.1 to 0.3 Ω' }, extra: soft, brick },
    main: { board: 'atmega328p-5v-board', powered: { barrel: 'adapter' } },
    five: ['main.5v', 'extra'],
    own: 'main.5v',
    pins: HEADERS,
  },
  rp2040: {
    supplies: { port: soft, brick },
    main: { board: 'rp2040-board', powered: { usb: 'port' } },
    five: ['main.vbus', 'main.vsys', 'port'],
    own: 'main.3v3',
    pins: [...pinsFrom('GP', 0, 22), 'GP25'],
  },
  esp32: {
    supplies: { port, brick },
    main: { board: 'esp32-devkit', powered: { usb: 'port' } },
    five: ['main.5v', 'port'],
    own: 'main.3v3',
    pins: ['GPIO4', 'GPIO5', ...pinsFrom('GPIO', 12, 19), ...pinsFrom('GPIO', 21, 23), ...pinsFrom('GPIO', 25, 27)],
  },
};

/** What may hang on a board: given its board, the next free pin, and a name of its own. */
type Hang = (board: Board, pin: () => string | undefined, id: string) => Readonly<Record<string, Entry>> | undefined;

const some = <T>(items: readonly T[], k: number): T => items[k % items.length]!;
const on = (pin: string | undefined, entry: (pin: string) => Entry, id: string) =>
  pin === undefined ? undefined : { [id]: entry(pin) };

const led: fc.Arbitrary<Hang> = fc
  .record({
    part: fc.constantFrom('led-red-5mm', 'led-green-5mm', 'led-white-5mm', 'led-blue-5mm'),
    ohms: fc.constantFrom('220 Ω ±5 %', '330 Ω ±5 %', '1 kΩ ±1 %', '82 Ω ±10 %'),
    active: fc.constantFrom('high', 'low'),
    twice: fc.boolean(),
    many: fc.constantFrom<Entry>({}, {}, { 'in-parallel': 3 }, { 'in-series': 2 }),
  })
  .map(({ part, ohms, active, twice, many }): Hang => (_, pin, id) => {
    const name = pin();
    const entry = { part, pin: name, series: ohms, active, ...many };
    if (name === undefined) return undefined;
    return twice ? { [id]: entry, [`${id}b`]: { ...entry, part: 'led-yellow-5mm' } } : { [id]: entry };
  });
const resistor: fc.Arbitrary<Hang> = fc
  .record({ ohms: fc.constantFrom('470 Ω ±5 %', '10 kΩ ±10 %', '150 Ω ±5 %'), active: fc.constantFrom('high', 'low') })
  .map(
    ({ ohms, active }): Hang =>
      (_, pin, id) =>
        on(pin(), (name) => ({ type: 'resistor', resistance: ohms, power: '1 W', pin: name, active }), id),
  );
const bareCoil: fc.Arbitrary<Hang> = fc.constantFrom('high', 'low').map(
  (active): Hang =>
    (_, pin, id) =>
      on(pin(), (name) => ({ part: 'relay-coil-5v-70r', pin: name, active }), id),
);
const drivenCoil: fc.Arbitrary<Hang> = fc
  .record({
    driver: fc.constantFrom<Entry>(
      { part: 'npn-2n2222a', 'base-resistor': '1 kΩ ±5 %' },
      { part: 'npn-2n2222a', 'base-resistor': '680 Ω ±10 %', 'pull-down': '10 kΩ ±5 %' },
      { part: 'nmos-ao3400a', 'gate-resistor': '100 Ω', 'pull-down': '100 kΩ ±10 %' },
      { part: 'nmos-ao3400a' },
    ),
    clamp: fc.constantFrom<Entry>(
      { part: 'diode-1n4148' },
      { type: 'diode-zener', current: '1 A', 'zener-voltage': '12 V ±5 %' },
      { type: 'tvs', current: '1 A', 'zener-voltage': '18 to 24 V' },
    ),
    heat: fc.constantFrom<Entry>({}, { 'thermal-resistance': '50 to 90 K/W', 'maximum-temperature': '85 °C' }),
    high: fc.boolean(),
    supply: fc.nat(8),
  })
  .map(
    ({ driver, clamp, heat, high, supply }): Hang =>
      (board, pin, id) =>
        on(
          pin(),
          (name) => ({
            ...(high
              ? { part: 'relay-coil-12v-400mw', supply: 'brick' }
              : { part: 'relay-coil-5v-70r', supply: some(board.five, supply) }),
            driver: { ...driver, pin: name },
            clamp,
            ...heat,
          }),
          id,
        ),
  );
const arrayLoad: fc.Arbitrary<Hang> = fc
  .record({
    kind: fc.constantFrom('low coil', 'high coil', 'lamp', 'heater', 'heavy'),
    joined: fc.boolean(),
    lower: fc.nat(3),
  })
  .map(({ kind, joined, lower }): Hang => (board, pin, id) => {
    // Channels of their own: two pins on one are two outputs that drive one net.
    const k = 2 * (Number(id.slice('load'.length)) % 8) + 1;
    const load: Readonly<Record<typeof kind, Entry>> = {
      'low coil': { part: 'relay-coil-5v-70r', supply: board.five[0] },
      'high coil': { part: 'relay-coil-12v-400mw', supply: 'brick' },
      lamp: { part: 'led-white-5mm', series: '470 Ω ±5 %', supply: 'brick' },
      heater: { type: 'resistor', resistance: '120 Ω ±10 %', power: '2 W', supply: 'brick' },
      heavy: { type: 'resistor', resistance: '18 Ω ±5 %', power: '10 W', supply: 'brick' },
    };
    const array = lower === 0 ? 'lower' : 'sink';
    const channels = joined ? [`${array}.${k}`, `${array}.${k + 1}`] : `${array}.${k}`;
    return on(pin(), (name) => ({ ...load[kind]!, driver: { array: channels, pin: name } }), id);
  });
/** Coils and lamps behind transistors and MOSFETs at their supply, and behind rows of stages. */
const staged: fc.Arbitrary<Hang> = fc
  .record({
    driver: fc.constantFrom<Entry>(
      { part: 'pnp-2n2907a', 'base-resistor': '680 Ω ±5 %', 'pull-up': '10 kΩ ±5 %' },
      { part: 'pmos-ao3401a', 'pull-up': '10 kΩ ±5 %', 'gate-resistor': '220 Ω ±5 %' },
      {
        stages: [
          { part: 'npn-2n2222a', 'base-resistor': '4.7 kΩ ±5 %', 'pull-down': '47 kΩ ±5 %' },
          { part: 'pnp-2n2907a', 'base-resistor': '820 Ω ±5 %', 'pull-up': '10 kΩ ±5 %' },
        ],
      },
      {
        stages: [
          { part: 'npn-2n2222a', 'base-resistor': '10 kΩ ±5 %' },
          { part: 'pmos-ao3401a', 'pull-up': '10 kΩ ±5 %', 'gate-resistor': '1 kΩ ±5 %' },
        ],
      },
      {
        stages: [
          { part: 'nmos-ao3400a', 'pull-down': '100 kΩ ±10 %' },
          { part: 'pnp-2n2907a', 'base-resistor': '1 kΩ ±5 %' },
        ],
      },
      {
        stages: [
          { part: 'npn-2n2222a', 'base-resistor': '4.7 kΩ ±5 %' },
          { part: 'npn-2n2222a', 'pull-up': '680 Ω ±5 %' },
        ],
      },
    ),
    load: fc.constantFrom('5 V', '12 V', 'lamp'),
    supply: fc.nat(8),
  })
  .map(
    ({ driver, load, supply }): Hang =>
      (board, pin, id) =>
        on(
          pin(),
          (name) => ({
            // What hangs straight on a pin has the pin's own rail, or it never lets go.
            ...(load === 'lamp'
              ? { part: 'led-white-5mm', series: '470 Ω ±5 %', supply: 'stages' in driver ? 'brick' : board.own }
              : load === '12 V' && 'stages' in driver
                ? { part: 'relay-coil-12v-400mw', supply: 'brick', clamp: { part: 'diode-1n4148' } }
                : {
                    part: 'relay-coil-5v-70r',
                    supply: 'stages' in driver ? some(board.five, supply) : board.own,
                    clamp: { part: 'diode-1n4148' },
                  }),
            driver: { ...driver, pin: name },
          }),
          id,
        ),
  );
const motor: fc.Arbitrary<Hang> = fc.nat(8).map(
  (supply): Hang =>
    (board, pin, id) =>
      on(
        pin(),
        (name) => ({
          type: 'dc-motor',
          supply: some(board.five, supply),
          run: '60 to 120 mA',
          stall: '300 mA',
          driver: { part: 'nmos-ao3400a', pin: name, 'pull-down': '100 kΩ' },
          clamp: { part: 'diode-schottky-1a' },
        }),
        id,
      ),
);
const relays: fc.Arbitrary<Hang> = fc
  .record({
    part: fc.constantFrom(
      'relay-board-opto-low-5v-4',
      'relay-board-opto-low-5v-1-no-indicator',
      'relay-board-transistor-high-5v-1',
    ),
    channels: fc.integer({ min: 1, max: 3 }),
    logic: fc.nat(8),
    coil: fc.nat(8),
    jumper: fc.constantFrom('fitted', 'removed'),
    pullUp: fc.boolean(),
  })
  .map(({ part, channels, logic, coil, jumper, pullUp }): Hang => (board, pin, id) => {
    const inputs: Record<string, unknown> = {};
    for (let k = 1; k <= (part.endsWith('-4') ? channels : 1); k++) {
      const name = pin();
      if (name !== undefined) inputs[k] = pullUp ? { pin: name, 'pull-up': '10 kΩ ±5 %' } : name;
    }
    if (Object.keys(inputs).length === 0) return undefined;
    const [one, other] = [some(board.five, logic), some(board.five, coil)];
    if (part.includes('transistor')) return { [id]: { part, inputs, supply: other } };
    return {
      [id]:
        jumper === 'fitted'
          ? { part, inputs, 'logic-supply': one, 'coil-supply': one, jumper }
          : { part, inputs, 'logic-supply': one, 'coil-supply': other, jumper },
    };
  });
const module: fc.Arbitrary<Hang> = fc
  .record({
    supply: fc.nat(8),
    kind: fc.constantFrom('module', 'constant', 'heater', 'lamp', 'pixels', 'stepper'),
  })
  .map(({ supply, kind }): Hang => (board, _, id) => {
    const at = some([...board.five, board.own, 'brick'], supply);
    // What draws hundreds of milliamperes hangs on a supply near 5 V.
    const strong = some(board.five, supply);
    const entry: Readonly<Record<typeof kind, Entry>> = {
      module: { type: 'module', active: '10 to 25 mA', idle: '1 to 2 mA', supply: at },
      constant: { type: 'constant-current', current: '5 to 30 mA', supply: at, 'supply-voltage': '3 to 14 V' },
      heater: {
        type: 'resistor',
        resistance: '220 Ω ±10 %',
        power: '1 W',
        supply: at,
        switched: 'elsewhere',
        needs: '10 mA',
      },
      lamp: { part: 'led-white-5mm', series: '470 Ω ±5 %', supply: at },
      pixels: { type: 'pixels', count: 4, 'full-each': '35 to 50 mA', brightness: '20 to 40 %', supply: strong },
      stepper: { part: 'stepper-28byj48-5v', 'phases-on': 1, supply: strong },
    };
    return { [id]: entry[kind]! };
  });
const expanded: fc.Arbitrary<Hang> = fc
  .nat(7)
  // What shares an output has one level there.
  .map((output): Hang => (_, __, id) => ({
    [id]: {
      part: 'led-red-5mm',
      pin: `bar.q${output}`,
      series: '330 Ω ±5 %',
      active: output % 2 === 0 ? 'high' : 'low',
    },
  }));
/** An LED on the pin that an indicator of the board itself hangs on, where there is one. */
const shared: fc.Arbitrary<Hang> = fc.constant((board, _, id) =>
  on(
    board.pins.find((p) => p === 'D13' || p === 'GP25'),
    (pin) => ({ part: 'led-green-5mm', pin, series: '470 Ω ±5 %', active: 'low' }),
    id,
  ),
);
/** A relay board with an LED on the pin of its input, that is lit with it. */
const lit: fc.Arbitrary<Hang> = fc.boolean().map((high): Hang => (board, pin, id) => {
  const name = pin();
  if (name === undefined) return undefined;
  const part = high ? 'relay-board-transistor-high-5v-1' : 'relay-board-opto-low-5v-1';
  return {
    [id]: { part, inputs: { 1: name }, supply: board.five[0] },
    [`${id}lamp`]: { part: 'led-red-5mm', pin: name, series: '470 Ω ±5 %', active: high ? 'high' : 'low' },
  };
});

/** A lamp, a buzzer or a converter behind a driver. */
const switched: fc.Arbitrary<Hang> = fc
  .record({
    supply: fc.nat(8),
    load: fc.constantFrom<Entry>(
      { part: 'lamp-6v-1w8' },
      { part: 'buzzer-magnetic-5v-47r', clamp: { part: 'diode-1n4148' } },
      {
        type: 'dc-motor',
        voltage: '5 V',
        'minimum-voltage': '3 V',
        run: '50 to 90 mA',
        stall: '250 mA',
        clamp: { part: 'diode-schottky-1a' },
      },
    ),
    gate: fc.boolean(),
  })
  .map(
    ({ supply, load, gate }): Hang =>
      (board, pin, id) =>
        on(
          pin(),
          (name) => ({
            ...load,
            supply: some(board.five, supply),
            driver: gate
              ? { part: 'nmos-ao3400a', pin: name, 'pull-down': '100 kΩ' }
              : { part: 'npn-2n2222a', pin: name, 'base-resistor': '470 Ω ±5 %' },
          }),
          id,
        ),
  );

/** What starts with a peak: a lamp, a servo. */
const starting: fc.Arbitrary<Hang> = fc
  .record({ supply: fc.nat(8), bulb: fc.boolean() })
  .map(({ supply, bulb }): Hang => (board, _, id) => {
    const at = some(board.five, supply);
    const servo = { type: 'servo', idle: '5 to 10 mA', run: '100 to 150 mA', stall: '300 mA', supply: at };
    return { [id]: bulb ? { part: 'lamp-6v-1w8', supply: at } : servo };
  });
/** What takes the same power from whatever it gets, behind a driver or a resistor. */
const converter: fc.Arbitrary<Hang> = fc
  .record({ supply: fc.nat(8), driven: fc.boolean() })
  .map(({ supply, driven }): Hang => (board, pin, id) => {
    const load = { type: 'constant-power', power: '0.2 to 0.5 W', supply: some(board.five, supply) };
    if (!driven) return { [id]: { ...load, series: '0.2 to 0.4 Ω' } };
    return on(
      pin(),
      (name) => ({ ...load, driver: { part: 'npn-2n2222a', pin: name, 'base-resistor': '470 Ω ±5 %' } }),
      id,
    );
  });
/** A display of two digits on one segment pin each, LEDs between each two of four pins, or the input of a solid-state relay. */
const shown: fc.Arbitrary<Hang> = fc
  .record({ what: fc.constantFrom('relay', 'digits', 'pairs'), anode: fc.boolean() })
  .map(({ what, anode }): Hang => (_, pin, id) => {
    if (what === 'relay')
      return on(pin(), (name) => ({ part: 'ssr-4-15v-25a', pin: name, active: anode ? 'low' : 'high' }), id);
    const pins = [pin(), pin(), pin(), pin()];
    if (pins.includes(undefined)) return undefined;
    if (what === 'pairs')
      return {
        [id]: {
          type: 'display',
          'forward-voltage': { value: '1.8 to 2.2 V', at: '10 mA' },
          'maximum-current': '20 mA',
          series: '150 Ω ±5 %',
          'charlieplexed-pins': pins,
          'lit-together': anode ? 3 : 1,
        },
      };
    return {
      [id]: {
        part: 'display-7-segment-red-4',
        common: anode ? 'anode' : 'cathode',
        series: '330 Ω ±5 %',
        'segment-pins': pins.slice(0, 2),
        'digit-pins': pins.slice(2),
      },
    };
  });

/** Resistors and coils behind couplers, alone or first of a row, bridges and open-drain outputs. */
const coupled: fc.Arbitrary<Hang> = fc
  .record({
    driver: fc.constantFrom<Entry>(
      { part: 'opto-817', series: '470 Ω ±5 %' },
      { part: 'opto-817', series: '330 Ω ±5 %', output: 'emitter' },
      {
        stages: [
          { part: 'opto-817', series: '680 Ω ±5 %', output: 'emitter' },
          { part: 'npn-2n2222a', 'base-resistor': '2.2 kΩ ±5 %', 'pull-down': '22 kΩ ±5 %' },
        ],
      },
      {
        stages: [
          // Little enough for the base to stand at half a volt while the coupler holds it.
          { part: 'opto-817', series: '560 Ω ±5 %', 'pull-up': '10 kΩ ±5 %' },
          { part: 'npn-2n2222a', 'base-resistor': '150 Ω ±5 %' },
        ],
      },
      { type: 'open-drain', saturation: { value: '0.1 to 0.7 V', at: '40 mA' }, 'maximum-current': '40 mA' },
      { part: 'h-bridge-3a6' },
    ),
    active: fc.constantFrom('high', 'low'),
    high: fc.boolean(),
  })
  .map(({ driver, active, high }): Hang => (board, pin, id) => {
    const small = driver['stages'] === undefined && driver['part'] !== 'h-bridge-3a6';
    const load = small
      ? { type: 'resistor', resistance: '1.5 kΩ ±10 %', power: '1 W', supply: high ? 'brick' : board.five[0] }
      : { part: 'relay-coil-12v-400mw', supply: 'brick' };
    const clamp = driver['stages'] === undefined ? {} : { clamp: { part: 'diode-1n4148' } };
    return on(pin(), (name) => ({ ...load, ...clamp, active, driver: { ...driver, pin: name } }), id);
  });
/** Relay boards of which nobody knows more than their levels, on a supply that the pins can match. */
const blackBox: fc.Arbitrary<Hang> = fc.record({ high: fc.boolean(), coil: fc.nat(8) }).map(
  ({ high, coil }): Hang =>
    (board, pin, id) =>
      on(
        pin(),
        (name) => ({
          type: 'relay-board',
          channels: 1,
          input: high
            ? { active: 'high', 'on-above': '2.4 V', 'off-below': '0.8 V', current: '2 to 4 mA' }
            : { active: 'low', 'on-above': '1.5 V', 'off-below': '0.5 V', current: '1 to 3 mA' },
          coil: { voltage: '5 V', resistance: '70 Ω ±10 %' },
          inputs: { 1: name },
          'logic-supply': board.own,
          'coil-supply': some(board.five, coil),
          jumper: 'removed',
        }),
        id,
      ),
);
/** A resistor or a lamp on two pins that are joined to carry it. */
const joined: fc.Arbitrary<Hang> = fc
  .record({ lamp: fc.boolean(), active: fc.constantFrom('high', 'low') })
  .map(({ lamp, active }): Hang => (_, pin, id) => {
    const pins = [pin(), pin()];
    if (pins.includes(undefined)) return undefined;
    const load = lamp
      ? { part: 'led-red-5mm', series: '82 Ω ±10 %' }
      : { type: 'resistor', resistance: '150 Ω ±5 %', power: '1 W' };
    return { [id]: { ...load, active, 'joined-pins': pins } };
  });

const HANGS = {
  led,
  resistor,
  bareCoil,
  drivenCoil,
  staged,
  arrayLoad,
  motor,
  relays,
  module,
  expanded,
  shared,
  lit,
  switched,
  starting,
  converter,
  shown,
  coupled,
  blackBox,
  joined,
};

/** Project files: a board, its supplies, and up to so many things that hang on it. */
export function projects({
  most = 7,
  boards = Object.keys(BOARDS),
  without = [] as readonly (keyof typeof HANGS)[],
  only = Object.keys(HANGS) as readonly (keyof typeof HANGS)[],
} = {}): fc.Arbitrary<Data> {
  const kinds = only.filter((k) => !without.includes(k));
  return fc
    .record({
      board: fc.constantFrom(...boards),
      hangs: fc.array(fc.oneof(...kinds.map((k) => HANGS[k])), { minLength: 1, maxLength: most }),
      ambient: fc.constantFrom('10 to 40 °C', '-10 to 60 °C', '25 °C'),
    })
    .map(({ board, hangs, ambient }) => built(BOARDS[board]!, hangs, ambient));
}

function built(board: Board, hangs: readonly Hang[], ambient: string): Data {
  const free = board.pins.filter((p) => p !== 'D13' && p !== 'GP25');
  const pin = (): string | undefined => free.shift();
  const loads: Record<string, Entry> = {};
  hangs.forEach((hang, k) => Object.assign(loads, hang(board, pin, `load${k}`) ?? {}));
  return {
    ampledger: 1,
    title: 'Made up',
    ambient,
    supplies: board.supplies,
    controllers: { main: board.main },
    expanders: { bar: { chip: '74hc595', supply: board.own } },
    parts: { 'wide-array': { extends: 'darlington-array-7', channels: 16 } },
    // A common pin tied lower than a load's supply feeds that rail backwards.
    arrays: {
      sink: { part: 'wide-array', common: 'brick' },
      lower: { part: 'wide-array', common: board.five[0] },
    },
    loads,
  };
}

/** The same project with its loads, its supplies and its board spread over three places. */
export function withPlaces(data: Data): Data {
  const names = ['box', undefined, 'cellar'] as const;
  const spread = (section: string, first: number): Readonly<Record<string, Entry>> =>
    Object.fromEntries(
      Object.entries(data[section] as Readonly<Record<string, Entry>>).map(([id, entry], k) => {
        const place = names[(first + k) % names.length];
        return [id, place === undefined ? entry : { ...entry, place }];
      }),
    );
  return {
    ...data,
    places: { box: { ambient: '30 to 60 °C' }, cellar: { ambient: '5 to 12 °C' } },
    loads: spread('loads', 0),
    supplies: spread('supplies', 1),
    controllers: spread('controllers', 2),
  };
}

/** The same project with resistors that may be less or more than the pins before them: of what hangs on one pin. */
export function withWideResistors(data: Data): Data {
  const loads = Object.entries(data['loads'] as Readonly<Record<string, Entry>>).map(([id, entry]) => {
    const key = entry['type'] === 'resistor' ? 'resistance' : 'series';
    return [
      id,
      typeof entry[key] === 'string' && entry['pin'] !== undefined ? { ...entry, [key]: '12 to 120 Ω' } : entry,
    ];
  });
  return { ...data, loads: Object.fromEntries(loads) as Readonly<Record<string, Entry>> };
}

/** The same project with a long thin cable to the board, and another to every load that a supply or rail feeds. */
export function withWires(data: Data): Data {
  const { main } = data['controllers'] as { main: { powered: Readonly<Record<string, string>> } };
  const loads = data['loads'] as Readonly<Record<string, Entry>>;
  const feeds = (entry: Entry): string[] => [
    ...new Set(['supply', 'logic-supply', 'coil-supply'].flatMap((key) => (key in entry ? [String(entry[key])] : []))),
  ];
  return {
    ...data,
    wires: [
      ...Object.entries(main.powered).map(([inlet, from]) => ({
        from,
        to: `main.${inlet}`,
        length: '1 to 2 m',
        gauge: 'AWG 26',
        'contact-resistance': '20 to 100 mΩ',
      })),
      ...Object.entries(loads).flatMap(([to, entry]) =>
        feeds(entry).map((from) => ({ from, to, length: '3 m', gauge: '0.14 mm² ±5 %' })),
      ),
    ],
  };
}

/** The same with signal lines on the pins that are left: what comes in from outside, contacts, and a bus across two supplies. */
export function withLines(data: Data): Data {
  const { main } = data['controllers'] as { main: Entry };
  const board = Object.values(BOARDS).find((b) => b.main['board'] === main['board'])!;
  const taken = JSON.stringify([data['loads'], data['expanders']]);
  const free = board.pins.filter((p) => p !== 'D13' && p !== 'GP25' && !taken.includes(`"${p}"`));
  const incoming: Readonly<Record<string, Entry>> = {
    echo: { voltage: '5 V ±5 %', resistance: '50 to 200 Ω', series: '1.8 kΩ ±5 %', 'pull-down': '3.3 kΩ ±5 %' },
    // Into a rail that gives way, what is pushed in would lift what hangs behind it.
    ...(board.own !== 'main.5v' && { push: { voltage: '5.5 V ±5 %', series: '4.7 kΩ ±5 %' } }),
    stop: { type: 'contact', 'closes-to': 'ground', 'pull-up': '10 kΩ ±5 %', series: '1 kΩ ±5 %' },
    limit: { type: 'contact', 'closes-to': 'supply', with: 'brick', series: '22 kΩ ±5 %', 'pull-down': '6.8 kΩ ±5 %' },
    swing: { voltage: '-5 to 5 V', series: '47 kΩ ±5 %' },
  };
  const [sda, ...others] = free;
  // Behind a regulator of the board's own another one would stand at its own end, which no corner does.
  const far = board.own !== 'main.5v' ? board.five[0] : board.supplies['adapter'] ? 'main.5v' : 'main.3v3';
  // Resistors of a bus to both rails would let one rail feed the other: such a pair answers to both, which no corner does.
  const module = (supply: unknown, pull?: string): Entry => ({
    ...{ type: 'module', active: '1 to 2 mA', supply, signals: { sda } },
    ...(pull !== undefined && { 'pull-up': pull }),
  });
  return {
    ...data,
    loads: {
      ...(data['loads'] as Entry),
      ...(sda !== undefined && { near: module(board.own, '4.7 kΩ ±5 %'), far: module(far) }),
    },
    incoming: Object.fromEntries(
      Object.entries(incoming).flatMap(([id, entry], k) =>
        others[k] === undefined ? [] : [[id, { ...entry, pin: others[k] }]],
      ),
    ),
  };
}

/** The same with pulses on every second load that a pin or a driver switches. */
export function withPulses(data: Data): Data {
  const pulses: readonly (Entry | undefined)[] = [
    { frequency: '500 Hz to 2 kHz', duty: '30 %' },
    { frequency: '1 kHz', duty: '50 to 80 %' },
    undefined,
  ];
  const onPin = new Map<unknown, Entry | undefined>();
  const loads = Object.entries(data['loads'] as Readonly<Record<string, Entry>>).map(
    ([id, entry], k): [string, Entry] => {
      const switched =
        (entry['pin'] ?? entry['pins'] ?? entry['driver']) !== undefined && entry['signals'] === undefined;
      if (!switched || entry['inputs'] !== undefined) return [id, entry];
      // A pin has one train of them.
      const pin = JSON.stringify(entry['pin'] ?? entry['driver'] ?? id);
      const pwm = onPin.has(pin) ? onPin.get(pin) : pulses[k % 3];
      onPin.set(pin, pwm);
      return [id, pwm === undefined ? entry : { ...entry, pwm }];
    },
  );
  return { ...data, loads: Object.fromEntries(loads) };
}
