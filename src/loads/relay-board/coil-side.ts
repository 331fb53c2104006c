/** The coil of a channel: behind the board's own transistor, straight on the pin, or inside a black box. */
import { copperFactor } from '../../circuit/copper.js';
import { exactly } from '../../quantity/interval.js';
import { branchSteps } from '../branch-working.js';
import type { Clamp } from '../clamp.js';
import { clampFrom, operationsOf } from '../clamp.js';
import type { CoilSetting } from '../coil-accounts.js';
import { coilAccounts, unsteadyAt } from '../coil-accounts.js';
import type { CoilFigures } from '../coil-figures.js';
import { windingOf as windingFigures } from '../coil-working.js';
import { bridgeStage } from '../drivers/bridge-stage.js';
import { bridgeClamps } from '../drivers/h-bridge.js';
import { behind, conduction } from '../drivers/row.js';
import type { Stage } from '../drivers/stage.js';
import type { Lowered, NetworkSketch } from '../lowering.js';
import type { AccountPlan, Reading, Step } from '../account-plan.js';
import type { BranchPlan, Member } from '../branch-plan.js';
import type { CircuitPlan } from '../circuit-plan.js';
import { GROUND } from '../branch-plan.js';
import type { Board, Channel } from './board.js';
import { indicatorBranch } from './indicator.js';
import { couplerInput } from './opto-input.js';
import { transistorInput } from './transistor-input.js';

/** One side of a channel, with what it adds to the channel's wiring. */
export type Side = Pick<Lowered, 'networks' | 'accounts'> & { readonly wiring?: Partial<CircuitPlan['wiring']> };

/** A wire from coil and indicator to the driver, ohms: nothing that counts, but a node needs a resistance to be solved. */
const WIRE = exactly(1e-3);

const windingOf = (coil: CoilFigures, circuit: string): Member => ({
  kind: 'resistance',
  part: `${circuit}.coil`,
  ohms: coil.ohms,
  copper: coil.reference,
  load: true,
  origin: coil.origin,
});

/** The coil behind the board's transistor, and the chain from the pin that drives it. */
export function drivenCoil(channel: Channel): Side | undefined {
  const { board, circuit, path, supply } = channel;
  const { input } = board;
  const [coil, output] = [board.coil!, board.output!];
  const front = (board.coupling === 'opto' ? couplerInput : transistorInput)(channel);
  if (front === undefined) return undefined;
  const part = `${circuit}.coil`;
  const lit = board.active;
  const levels = {
    on: conduction(output, front.drive.level('on'), lit),
    off: conduction(output, front.drive.level('off'), lit),
  };
  const row = behind(output, front.drive, (k, state) => levels[state][k]!, {
    input,
    circuit,
    supply,
    feed: supply,
    expected: coil.nominal / coil.ohms.typ,
  });
  if (row === undefined) return undefined;
  const stage = row.at(-1)!;
  const { type, figures } = output.at(-1)!;
  const bridge = type === bridgeStage;
  const clamp = clampOn(channel, coil);
  return {
    wiring: {
      ...(bridge && { bridged: true as const, ...(bridgeClamps(figures) && { clamp: 'not-needed' as const }) }),
      ...clamp?.wiring,
      ...(board.inverted && { inverted: { says: board.active === 'high' ? 'low' : 'high' } }),
    },
    networks: [
      ...front.networks,
      ...row.flatMap((s) => s.networks).map((n, k) => (k === 0 ? { ...n, inner: [...n.inner, ...front.inner] } : n)),
      coilNetwork(channel, coil, stage.members, type.gives(true, figures) === 'low'),
    ],
    accounts: [
      ...front.accounts,
      ...row.slice(0, -1).flatMap((s) => s.accounts),
      ...(clamp?.atSwitchingOff(stage.accounts) ?? stage.accounts),
      ...coilAccounts(coil, {
        circuit,
        part,
        path,
        ...unsteadyAt(input.bench, supply),
        ...(stage.shortfall && { shortfall: stage.shortfall }),
        ...(stage.lossSteps && { lossSteps: stage.lossSteps }),
        ...stillOn(stage, coil, supply),
      }),
      ...(clamp?.accounts ?? []),
    ],
  };
}

/** The clamp that the board has across a coil. */
function clampOn({ board, circuit, path, supply }: Channel, coil: CoilFigures): Clamp | undefined {
  const { figures, bench } = board.input;
  if (!figures.says('clamp')) return undefined;
  const fitted = bench.behind(figures.within('clamp'), 'clamp');
  const setting = {
    circuit,
    part: `${circuit}.coil`,
    supply,
    ...windingFigures(coil),
    ...operationsOf(figures.within('coil')),
  };
  return clampFrom(fitted, fitted.word('type') ?? 'diode', setting, path);
}

const loadNetwork = (circuit: string, inner: readonly string[], on: readonly BranchPlan[]): NetworkSketch => ({
  id: `${circuit}.coil`,
  circuits: [circuit],
  side: 'load',
  inner,
  hooks: [],
  on,
  off: [],
});

/** The coil with its driver on the one side or the other; an indicator across it goes through the driver, too. */
function coilNetwork(
  { board, circuit, supply }: Channel,
  coil: CoilFigures,
  members: readonly Member[],
  low: boolean,
): NetworkSketch {
  const winding = windingOf(coil, circuit);
  if (board.indicator !== 'across-coil') {
    const whole = low ? [winding, ...members] : [...members, winding];
    return loadNetwork(circuit, [], [{ from: supply, to: GROUND, members: whole, circuit }]);
  }
  const node = `${circuit}:coil`;
  const wire: Member = { kind: 'resistance', part: `${circuit}.wire`, ohms: WIRE };
  const ends = low ? { from: supply, to: node } : { from: node, to: GROUND };
  const driver = low ? { from: node, to: GROUND } : { from: supply, to: node };
  return loadNetwork(
    circuit,
    [node],
    [
      { ...ends, members: [winding], circuit },
      { ...ends, members: indicatorBranch(board, circuit), circuit },
      { ...driver, members: [...members, wire], circuit },
    ],
  );
}

/** What still flows in the coil when the input is off: what the driver lets through, and no more than the coil takes. */
function stillOn(stage: Stage, coil: CoilFigures, supply: string): Pick<CoilSetting, 'leak' | 'leakSteps'> {
  const leak = (s: Reading): number => Math.min(stage.leak(s), s.voltage(supply) / ohmsNow(coil, s));
  const step = (s: Reading): Step => {
    const takes = { V_supply: [s.voltage(supply), 'V'], R_coil: [ohmsNow(coil, s), 'Ω'] } as const;
    const says = 'what flows in the coil: no more than its supply drives through it';
    const gives = [leak(s), 'A'] as const;
    const through = stage.leak(s);
    return Number.isFinite(through)
      ? {
          name: 'I_coil',
          says,
          formula: 'min(I_off, V_supply / R_coil)',
          with: { I_off: [through, 'A'], ...takes },
          gives,
        }
      : { name: 'I_coil', says, formula: 'V_supply / R_coil', with: takes, gives };
  };
  return { leak, leakSteps: (s) => [...stage.leakSteps(s), step(s)] };
}

/** Resistance of a coil that is off, at the ambient: the lowest, which lets the most through. */
const ohmsNow = (coil: CoilFigures, s: Reading): number =>
  (s.typical ? coil.ohms.typ : coil.ohms.min) * copperFactor(s.ambient, coil.reference);

/** A board without transistors of its own: its coil hangs on the pin, and an indicator across it, too. */
export function bareCoil(channel: Channel): Side {
  const { board, circuit, path, pin, supply, fitted } = channel;
  const { active, indicator } = board;
  const coil = board.coil!;
  const flows = active === 'high' ? ('out' as const) : ('in' as const);
  const hook = { pin, active, flows, to: active === 'high' ? GROUND : supply, circuit };
  const near = flows === 'out' ? fitted.between : fitted.between.toReversed();
  const inOrder = (members: readonly Member[]): readonly Member[] =>
    flows === 'out' ? [...near, ...members] : [...members, ...near];
  const lit = indicator === 'across-coil' || indicator === 'parallel';
  const part = `${circuit}.coil`;
  return {
    networks: [
      {
        id: circuit,
        circuits: [circuit],
        side: 'load',
        inner: [],
        hooks: [
          { ...hook, members: inOrder([windingOf(coil, circuit)]) },
          ...(lit ? [{ ...hook, members: indicatorBranch(board, circuit) }] : []),
          ...fitted.hooks,
        ],
        on: [],
        off: [],
      },
    ],
    accounts: coilAccounts(coil, {
      circuit,
      part,
      path,
      ...unsteadyAt(board.input.bench, supply),
      // A pin that is high below the coil's supply does not switch it off.
      leak: (s) => Math.abs(s.current(part)),
      leakSteps: (s) => branchSteps(s.branch(part), 'what still flows in the coil when the pin says off', 'I_coil'),
    }),
  };
}

/** What is known of the coil of a black box: its figures, or only what the board draws, or nothing at all. */
export function hiddenCoil(channel: Channel): Side {
  const { board, circuit, path, supply } = channel;
  const { coil } = board;
  if (coil !== undefined) {
    const branch: BranchPlan = { from: supply, to: GROUND, members: [windingOf(coil, circuit)], circuit };
    // Its driver is a closed switch or an open one: whether it is, is asked of its input.
    const accounts = coilAccounts(coil, {
      circuit,
      part: `${circuit}.coil`,
      path,
      ...unsteadyAt(board.input.bench, supply),
    });
    return {
      networks: [loadNetwork(circuit, [], [branch])],
      accounts: accounts.filter((a) => a.direction !== 'at-most' || a.quantity !== 'current'),
    };
  }
  return { networks: [], accounts: board.input.figures.says('board-current') ? [] : [drawsUnknown(board, channel)] };
}

const drawsUnknown = ({ input }: Board, { circuit, path }: Channel): AccountPlan => ({
  id: `${circuit}.coil`,
  kind: 'input',
  title: `${circuit}, what it draws`,
  quantity: 'current',
  direction: 'at-most',
  circuits: [circuit],
  path,
  recipes: ['draw-most'],
  read: () => undefined,
  limits: [],
  missing: {
    figure: 'draws',
    asks: `what does ${input.id} draw with its relays on (its \`coil\`, or its \`board-current\`)?`,
  },
  steps: () => [],
});
