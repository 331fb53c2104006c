/**
 * Relay boards. A channel is a chain of up to three small networks: the input (logic supply, resistor, indicator, coupler,
 * pin), the base of the output transistor behind the coupler, and the coil. The jumper makes the two supplies one net.
 */
import { copperFactor } from '../circuit/copper.js';
import { endOfLifeShare } from '../circuit/coupler.js';
import { interpolate } from '../quantity/points.js';
import { closed } from '../quantity/quantity.js';
import { branchSteps } from './branch-working.js';
import { clampAccounts } from './clamp.js';
import { coilAccounts } from './coil-accounts.js';
import type { CoilFigures } from './coil-figures.js';
import { coilFigures } from './coil-figures.js';
import type { Transistor, TransistorSetting } from './drivers/transistor.js';
import { mostGain, switchMember, transistorAccounts, transistorOf, voltsLost } from './drivers/transistor.js';
import type { Curve, Figures } from './figures.js';
import { isMapping } from './figures.js';
import { junctionSpread } from './laws.js';
import { rating } from './limits.js';
import type { BoundPin, Hook, LoadInput, LoadType, Lowered, NetworkSketch } from './lowering.js';
import { NOTHING } from './lowering.js';
import type { AccountPlan, BoardWiring, BranchPlan, CircuitPlan, Member, Reading, Step } from './plan.js';
import { GROUND } from './plan.js';

/** The board as the file sets it up. */
interface Board {
  readonly input: LoadInput;
  readonly active: 'high' | 'low';
  readonly coupling: 'opto' | 'transistor' | 'none';
  readonly indicator: string;
  readonly logic: string | undefined;
  readonly supply: string | undefined;
  readonly coil: CoilFigures;
  readonly wiring: BoardWiring;
}

function lower(input: LoadInput): Lowered {
  const { figures, entry, path, bench } = input;
  const coil = coilFigures(bench.behind(figures.within('coil'), 'load'));
  if (coil === undefined) return NOTHING;
  const inside = figures.within('input');
  const coupling = inside.word('coupling') ?? 'opto';
  const board: Board = {
    input,
    active: inside.word('active') === 'high' ? 'high' : 'low',
    coupling: coupling === 'transistor' || coupling === 'none' ? coupling : 'opto',
    indicator: inside.word('indicator') ?? 'none',
    coil,
    ...suppliesOf(input, coupling !== 'transistor' && coupling !== 'none'),
  };
  if (!isMapping(entry['inputs'])) {
    bench.problem({
      path,
      on: 'key',
      says: `no pins drive the inputs of \`${input.id}\``,
      expected: '`inputs: { 1: D4, 2: D5 }`',
    });
    return NOTHING;
  }
  const unsaid = neverAssumed(board, inside);
  const channels = figures.count('channels') ?? Object.keys(entry['inputs']).length;
  const parts = Object.entries(entry['inputs']).map(([key, raw]) => {
    const number = Number(key);
    if (!Number.isInteger(number) || number < 1 || number > channels) {
      bench.problem({
        path: [...path, 'inputs', key],
        on: 'key',
        says: `\`${input.id}\` has no input \`${key}\``,
        expected: `1 to ${channels}`,
      });
      return NOTHING;
    }
    return channel(board, number, raw, [...path, 'inputs', key]);
  });
  const [first] = parts.flatMap((p) => p.circuits);
  const own = boardCurrent(board);
  return {
    circuits: [...parts.flatMap((p) => p.circuits), ...own.circuits],
    networks: [...parts.flatMap((p) => p.networks), ...own.networks],
    accounts: [
      ...parts.flatMap((p) => p.accounts),
      ...(first ? unsaid.map((missing) => unproven(input.id, first.id, path, missing)) : []),
    ],
  };
}

/** What is never assumed of a board: the level that switches it on, and whether an indicator sits in series with the coupler. */
function neverAssumed(board: Board, inside: Figures): NonNullable<AccountPlan['missing']>[] {
  const { id } = board.input;
  return [
    ...(inside.word('active') === undefined
      ? [{ figure: 'input.active', asks: `does a low or a high input switch ${id} on (its \`input: { active: … }\`)?` }]
      : []),
    ...(board.coupling === 'opto' && inside.word('indicator') === undefined
      ? [
          {
            figure: 'input.indicator',
            asks: `does an indicator sit in series with the couplers of ${id} (its \`input: { indicator: none | in-series | parallel | across-coil }\`)?`,
          },
        ]
      : []),
  ];
}

const unproven = (
  id: string,
  circuit: string,
  path: readonly (string | number)[],
  missing: NonNullable<AccountPlan['missing']>,
): AccountPlan => ({
  id: `${id}.input`,
  kind: 'input',
  title: `inputs of ${id}, ${missing.figure}`,
  quantity: 'voltage',
  direction: missing.figure === 'input.active' ? 'at-least' : 'at-most',
  circuits: [circuit],
  path,
  recipes: ['draw-most'],
  read: () => undefined,
  limits: [],
  missing,
  steps: () => [],
});

/** Which node feeds the inputs and which the coils, as jumper and supplies say. */
function suppliesOf(input: LoadInput, opto: boolean): Pick<Board, 'logic' | 'supply' | 'wiring'> {
  const { entry, figures, bench, path } = input;
  const node = (key: string): string | undefined =>
    entry[key] === undefined ? undefined : bench.node(entry[key], [...path, key]);
  const both = node('supply');
  const [logicOwn, coilOwn] = [node('logic-supply'), node('coil-supply')];
  const hasJumper = figures.flag('jumper') || typeof figures.word('jumper') === 'string';
  const said = entry['jumper'];
  const jumper =
    said === 'fitted' || said === 'removed'
      ? said
      : both !== undefined && hasJumper
        ? ('fitted' as const)
        : ('removed' as const);
  if (said === undefined && hasJumper) figures.assume(`its supply jumper is ${jumper}, since the file does not say`);
  const grounds = entry['grounds'] === 'separate' ? 'separate' : 'joined';
  if (entry['grounds'] === undefined && opto) figures.assume('its grounds are joined, since the file does not say');
  const [logic, coil] = [logicOwn ?? both, coilOwn ?? both];
  const bridged = jumper === 'fitted';
  const terminals = figures.within('terminals');
  const label = (role: string, otherwise: string): string => terminals.word(role) ?? otherwise;
  return {
    logic: logic ?? (bridged ? coil : undefined),
    supply: coil ?? (bridged ? logic : undefined),
    wiring: {
      channels: figures.count('channels') ?? 1,
      ...(logic && { logic }),
      ...(coil && { coil }),
      jumper,
      hasJumper,
      grounds,
      isolation: entry['isolation'] === 'wanted' ? 'wanted' : 'not-needed',
      coupling: opto ? 'opto' : (figures.within('input').word('coupling') as 'transistor' | 'none'),
      terminals: {
        ground: label('ground', 'ground'),
        'logic-supply': label('logic-supply', 'logic supply'),
        'coil-supply': label('coil-supply', 'coil supply'),
        input: label('input', 'input {n}'),
        jumper: label('jumper', 'supply jumper'),
      },
    },
  };
}

function channel(board: Board, number: number, raw: unknown, path: readonly (string | number)[]): Lowered {
  const { input, active, coil } = board;
  const { bench, figures } = input;
  const circuit = `${input.id}.${number}`;
  const named = bench.pinNames(isMapping(raw) ? raw['pin'] : raw, isMapping(raw) ? [...path, 'pin'] : path)[0];
  if (named === undefined) return NOTHING;
  const pin = bench.outputPin(named.name, named.path, circuit, active);
  if (pin === undefined) return NOTHING;
  const [logic, supply] = [board.logic, board.supply];
  const coilPart = `${circuit}.coil`;
  const winding: Member = {
    kind: 'resistance',
    part: coilPart,
    ohms: coil.ohms,
    copper: coil.reference,
    load: true,
    origin: coil.origin,
  };
  const plan = (wiring: Partial<CircuitPlan['wiring']>): CircuitPlan => ({
    id: circuit,
    owner: input.id,
    path,
    type: 'relay-board',
    always: false,
    wiring: {
      by: 'board',
      pin: pin.account,
      inductive: true,
      coil: coilPart,
      clamp: figures.says('clamp') ? 'fitted' : 'none',
      ...(supply && { supply }),
      board: board.wiring,
      figures: { coilVolts: coil.nominal },
      ...wiring,
    },
  });
  // Without a source nothing can be reckoned; that it has none is reported by a rule of its own.
  if (supply === undefined || (board.coupling === 'opto' && active === 'low' && logic === undefined))
    return { circuits: [plan({})], networks: [], accounts: [] };

  const pullUp = pullUpHook(board, circuit, pin, raw, path);
  if (board.coupling === 'none') {
    const hook: Hook = {
      pin,
      active,
      flows: active === 'high' ? 'out' : 'in',
      to: active === 'high' ? GROUND : supply,
      members: [winding],
      circuit,
    };
    return {
      circuits: [plan({ bare: true })],
      networks: [
        { id: circuit, circuits: [circuit], side: 'load', inner: [], hooks: [hook, ...pullUp], on: [], off: [] },
      ],
      accounts: coilAccounts(coil, { circuit, part: coilPart, path }),
    };
  }
  const transistor = transistorOf(bench.behind(figures.within('output'), 'driver'), `the drivers of ${input.id}`);
  const stage =
    board.coupling === 'opto'
      ? optoStage(board, circuit, pin, pullUp, transistor, supply, logic, path)
      : transistorStage(board, circuit, pin, pullUp, transistor);
  if (stage === undefined) return NOTHING;
  const setting: TransistorSetting = {
    circuit,
    id: `${circuit}.driver`,
    path,
    supply,
    load: coilPart,
    base: `${circuit}.base`,
    baseCurrent: stage.baseCurrent,
    baseSteps: stage.baseSteps,
    ...(stage.aged && { aged: stage.aged }),
  };
  const drop = switchMember(transistor, `${circuit}.driver`, coil.nominal / coil.ohms.typ);
  const branch: BranchPlan = { from: supply, to: GROUND, members: [winding, drop], circuit };
  const clamp = figures.says('clamp')
    ? clampAccounts(bench.behind(figures.within('clamp'), 'clamp'), circuit, coilPart, supply, path)
    : [];
  return {
    circuits: [plan({})],
    networks: [
      ...stage.networks,
      { id: `${circuit}.coil`, circuits: [circuit], side: 'load', inner: [], hooks: [], on: [branch], off: [] },
    ],
    accounts: [
      ...stage.accounts,
      ...transistorAccounts(transistor, setting),
      ...coilAccounts(coil, {
        circuit,
        part: coilPart,
        path,
        shortfall: (s) => Math.max(voltsLost(transistor, setting, s) - s.across(setting.id), 0),
        leak: (s) => Math.min(stage.leak(s), s.voltage(supply) / ohmsNow(coil, s)),
        leakSteps: stage.leakSteps,
      }),
      ...clamp,
    ],
  };
}

/** Resistance of a coil that is off, at the ambient: the lowest, which lets the most through. */
const ohmsNow = (coil: CoilFigures, s: Reading): number =>
  (s.typical ? coil.ohms.typ : coil.ohms.min) * copperFactor(s.ambient, coil.reference);

/** A pull-up fitted at an input, to the pin's own rail or to a supply of its own. */
function pullUpHook(
  board: Board,
  circuit: string,
  pin: BoundPin,
  raw: unknown,
  path: readonly (string | number)[],
): Hook[] {
  if (!isMapping(raw) || raw['pull-up'] === undefined) return [];
  const { figures, bench } = board.input;
  const inputs = figures.within('inputs').within(String(path.at(-1)));
  const spelled = inputs.within('pull-up');
  const figure = spelled.says('resistance')
    ? spelled.figure('resistance', 'resistance')
    : inputs.figure('pull-up', 'resistance');
  const to = spelled.says('supply') ? bench.node(spelled.word('supply'), [...path, 'pull-up', 'supply']) : pin.rail;
  if (figure === undefined || to === undefined) return [];
  const member: Member = {
    kind: 'resistance',
    part: `${circuit}.pull-up`,
    ohms: closed(figure.quantity),
    origin: figure.origin,
  };
  return [{ pin, active: board.active, flows: 'in', to, members: [member], circuit }];
}

/** What leads from the pin to the base of the output transistor. */
interface Stage {
  readonly networks: readonly NetworkSketch[];
  readonly accounts: readonly AccountPlan[];
  readonly baseCurrent: (s: Reading) => number;
  readonly baseSteps: (s: Reading) => readonly Step[];
  readonly aged?: (s: Reading) => number;
  readonly leak: (s: Reading) => number;
  readonly leakSteps: (s: Reading) => readonly Step[];
}

function optoStage(
  board: Board,
  circuit: string,
  pin: BoundPin,
  pullUp: readonly Hook[],
  transistor: Transistor,
  supply: string,
  logic: string | undefined,
  path: readonly (string | number)[],
): Stage | undefined {
  const inside = board.input.figures.within('input');
  const output = board.input.figures.within('output');
  const led = `${circuit}.input`;
  const drop = inside.curve('led-drop', 'voltage', 'current');
  const ratio = inside.curve('transfer-ratio', 'ratio', 'current') ?? usualRatio(board, inside);
  const resistor = inside.figure('series', 'resistance');
  const indicator = board.indicator === 'in-series' ? inside.curve('indicator-drop', 'voltage', 'current') : undefined;
  if (drop === undefined || resistor === undefined) {
    inside.problem(
      drop === undefined ? 'led-drop' : 'series',
      `the coupler input of \`${board.input.id}\` needs \`series\` and \`led-drop\``,
      '`input: { series: 1 kΩ, led-drop: 1.2 V, … }`',
    );
    return undefined;
  }
  const chain: Member[] = [
    { kind: 'resistance', part: `${circuit}.series`, ohms: closed(resistor.quantity), origin: resistor.origin },
    ...(indicator
      ? [
          {
            kind: 'junction' as const,
            part: `${circuit}.indicator`,
            law: junctionSpread(indicator),
            origin: indicator.origin,
          },
        ]
      : []),
    { kind: 'junction', part: led, law: junctionSpread(drop), origin: drop.origin },
  ];
  const hook: Hook =
    board.active === 'low'
      ? { pin, active: 'low', flows: 'in', to: logic!, members: chain, circuit }
      : { pin, active: 'high', flows: 'out', to: GROUND, members: chain, circuit };
  const base = `${circuit}.base`;
  const baseResistor = output.figure('base-resistor', 'resistance');
  const coupled: BranchPlan = {
    from: supply,
    to: GROUND,
    circuit,
    members: [
      saturationDrop(inside, `${circuit}.coupler`),
      ...(baseResistor
        ? [
            {
              kind: 'resistance' as const,
              part: `${circuit}.base-resistor`,
              ohms: closed(baseResistor.quantity),
              origin: baseResistor.origin,
            },
          ]
        : []),
      {
        kind: 'junction',
        part: base,
        law: transistor.base,
        ...(transistor.baseOrigin && { origin: transistor.baseOrigin }),
      },
    ],
  };
  const network = (id: string, rest: Partial<NetworkSketch>): NetworkSketch => ({
    id,
    circuits: [circuit],
    side: 'control',
    inner: [],
    hooks: [],
    on: [],
    off: [],
    ...rest,
  });
  const given = ratio && transferLaw(ratio);
  const limit = rating(inside, 'led-maximum-current', 'current');
  const carries: AccountPlan = {
    id: led,
    kind: 'input',
    title: `coupler input of ${circuit}`,
    quantity: 'current',
    direction: 'at-most',
    circuits: [circuit],
    path,
    recipes: ['draw-most', 'draw-least'],
    read: (s) => s.current(led),
    limits: limit ? [limit] : [],
    books: [{ circuit, part: led }],
    ...(!limit && {
      missing: {
        figure: 'led-maximum-current',
        asks: `what current may the coupler LED of ${circuit} carry (its \`led-maximum-current\`)?`,
      },
    }),
    steps: (s) => branchSteps(s.branch(led), 'current through the coupler’s LED'),
  };
  // A coupler gives its ratio's worth of current, or what the base resistor lets through, whichever is less.
  const through = (s: Reading, share = 1): number =>
    Math.min(s.current(base), given ? share * given.ratio(s.current(led), s) * s.current(led) : 0);
  return {
    networks: [
      network(`${circuit}.input`, { hooks: [hook, ...pullUp] }),
      network(`${circuit}.base`, { on: [coupled] }),
    ],
    accounts: given ? [carries] : [carries, noRatio(circuit, path)],
    baseCurrent: (s) => through(s),
    baseSteps: (s) => [
      ...branchSteps(s.branch(led), 'current through the coupler’s LED'),
      ...(given
        ? [
            {
              name: 'I_coupler',
              says: 'what the coupler can pass on',
              formula: 'ratio * I',
              with: { ratio: [given.ratio(s.current(led), s), ''], I: [s.current(led), 'A'] },
              gives: [given.ratio(s.current(led), s) * s.current(led), 'A'],
              sources: [
                `${circuit}.input: ${ratio.origin.document}${ratio.origin.where ? `, ${ratio.origin.where}` : ''}`,
              ],
            } satisfies Step,
          ]
        : []),
      ...branchSteps(s.branch(base), 'what the base resistor lets through'),
    ],
    ...(given && { aged: (s: Reading) => through(s, s.typical ? 1 : endOfLifeShare(s.current(led), given.stated)) }),
    leak: (s) =>
      given && transistor.gain ? given.most(s.current(led), s) * s.current(led) * mostGain(transistor, s) : 0,
    leakSteps: (s) => [
      ...branchSteps(s.branch(led), 'current that the coupler’s LED keeps'),
      ...(given && transistor.gain
        ? [
            {
              name: 'I_off',
              says: 'what the coupler and the transistor make of it at most, before the coil limits it',
              formula: 'ratio * gain * I',
              with: {
                ratio: [given.most(s.current(led), s), ''],
                gain: [mostGain(transistor, s), ''],
                I: [s.current(led), 'A'],
              },
              gives: [given.most(s.current(led), s) * mostGain(transistor, s) * s.current(led), 'A'],
            } satisfies Step,
          ]
        : []),
    ],
  };
}

const noRatio = (circuit: string, path: readonly (string | number)[]): AccountPlan => ({
  id: `${circuit}.input`,
  kind: 'input',
  title: `coupler of ${circuit}, transfer ratio`,
  quantity: 'current',
  direction: 'at-least',
  circuits: [circuit],
  path,
  recipes: ['drive-worst'],
  read: () => undefined,
  limits: [],
  missing: {
    figure: 'transfer-ratio',
    asks: `what is the current transfer ratio of the coupler of ${circuit} at the current it really gets (its \`transfer-ratio\`)?`,
  },
  steps: () => [],
});

/** Class C couplers, ratio at LED current (rule 9 of the format; the ratios at small currents are common practice, no source). */
const CLASS_C: Curve['points'] = [
  { at: 0.001, value: { min: 1.2, typ: 1.8, max: 2.4 } },
  { at: 0.002, value: { min: 1.6, typ: 2.4, max: 3.2 } },
  { at: 0.005, value: { min: 2, typ: 3, max: 4 } },
].map((p) => ({
  ...p,
  quantity: { dimension: 'ratio', ...p.value, exact: false, stated: `${p.value.min * 100} to ${p.value.max * 100} %` },
}));

/** At its rated logic voltage a board's couplers are taken to be of class C; at another nothing is known of them. */
function usualRatio(board: Board, inside: Figures): Curve | undefined {
  const rated = Math.min(board.coil.nominal, 5);
  const volts = board.logic === undefined ? 0 : board.input.bench.nominal(board.logic);
  if (inside.masked('transfer-ratio') || Math.abs(volts - rated) > 0.1 * rated) return undefined;
  inside.assume('its couplers are of class C (200 % at 5 mA), since nobody states their transfer ratio');
  return { points: CLASS_C, origin: { document: 'common practice, no source', basis: 'practice' } };
}

/** Transfer ratio over LED current: below the lowest point it is extended, and never below nothing. */
function transferLaw(curve: Curve) {
  const at = (current: number) => interpolate(curve.points, current).value;
  return {
    stated: curve.points.at(-1)!.at,
    ratio: (current: number, s: Reading): number => Math.max(s.typical ? at(current).typ : at(current).min, 0),
    most: (current: number, s: Reading): number => Math.max(s.typical ? at(current).typ : at(current).max, 0),
  };
}

function saturationDrop(inside: Figures, part: string): Member {
  const curve = inside.curve('saturation', 'voltage', 'current', { min: () => 0 });
  const value = curve?.points[0]?.value ?? { min: 0, typ: 0.1, max: 0.2 };
  return { kind: 'drop', part, volts: value, ...(curve && { origin: curve.origin }) };
}

/** A board whose input goes to the base of its transistor through a resistor. */
function transistorStage(
  board: Board,
  circuit: string,
  pin: BoundPin,
  pullUp: readonly Hook[],
  transistor: Transistor,
): Stage | undefined {
  const inside = board.input.figures.within('input');
  const resistor = inside.figure('series', 'resistance');
  if (resistor === undefined) {
    inside.problem(
      'series',
      `the transistor input of \`${board.input.id}\` needs its base resistor`,
      '`input: { series: 1 kΩ, … }`',
    );
    return undefined;
  }
  if (board.active === 'low') {
    inside.problem('active', 'a transistor input that is active low is not computed yet', '`active: high`');
    return undefined;
  }
  const base = `${circuit}.base`;
  const members: Member[] = [
    { kind: 'resistance', part: `${circuit}.series`, ohms: closed(resistor.quantity), origin: resistor.origin },
    {
      kind: 'junction',
      part: base,
      law: transistor.base,
      ...(transistor.baseOrigin && { origin: transistor.baseOrigin }),
    },
  ];
  const hook: Hook = { pin, active: 'high', flows: 'out', to: GROUND, members, circuit };
  return {
    networks: [
      {
        id: `${circuit}.input`,
        circuits: [circuit],
        side: 'control',
        inner: [],
        hooks: [hook, ...pullUp],
        on: [],
        off: [],
      },
    ],
    accounts: [],
    baseCurrent: (s) => s.current(base),
    baseSteps: (s) => branchSteps(s.branch(base), 'current from the pin into the base'),
    leak: (s) => (transistor.gain ? s.current(base) * mostGain(transistor, s) : 0),
    leakSteps: (s) => branchSteps(s.branch(base), 'current that the base keeps'),
  };
}

/** What the board draws besides its channels. */
function boardCurrent(board: Board): Lowered {
  const { input, logic, supply } = board;
  const figure = input.figures.figure('board-current', 'current');
  const from = logic ?? supply;
  if (figure === undefined || from === undefined) return NOTHING;
  const id = `${input.id}.board`;
  const branch: BranchPlan = {
    from,
    to: GROUND,
    circuit: id,
    members: [{ kind: 'current', part: id, amps: closed(figure.quantity), origin: figure.origin }],
  };
  return {
    circuits: [],
    networks: [{ id, circuits: [], side: 'load', inner: [], hooks: [], on: [branch], off: [branch] }],
    accounts: [],
  };
}

export const relayBoard: LoadType = { type: 'relay-board', lower };
