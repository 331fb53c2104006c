/**
 * What a stage's input hangs on: a pin, or what the stage before it switches. Both stand high, low, or let go, and tie a
 * path to that level; whatever hangs on them is solved, so that no pair of stages needs a formula of its own.
 */
import type { BoundPin, NetworkSketch } from '../lowering.js';
import type { Reading, Step } from '../account-plan.js';
import type { BranchPlan, Member } from '../branch-plan.js';
import { GROUND } from '../branch-plan.js';

/** The two states of a circuit. */
export type State = 'on' | 'off';
/** Where an output stands; `open`: it has let go, and what is fitted at the input decides. */
export type Level = 'high' | 'low' | 'open';

/** A path from an output to a node of the network behind it. */
export interface Way {
  readonly circuit: string;
  readonly to: string;
  /** Which way its current is counted, and a junction in it points. */
  readonly flows: 'out' | 'in';
  /** From the output onwards. */
  readonly members: readonly Member[];
  /** State in which the output holds the node against what is fitted there: the more it loses, the less it does so. */
  readonly holds?: State;
}

export interface Drive {
  /** Account id of the pin that it all begins at. */
  readonly pin: string;
  readonly level: (state: State) => Level;
  /** Node it stands at when it is high; low is ground. */
  readonly rail: string;
  /** Nothing but its own resistance limits what it gives: a pin, by account id. */
  readonly bare?: string;
  /** Most ohms of its own, where it is a pin. */
  readonly ohms?: number;
  /** The path tied to the output in both states; none in a state in which nothing can flow. */
  readonly tie: (way: Way) => Pick<NetworkSketch, 'hooks' | 'on' | 'off'>;
  /** Amperes that it can pass on at most; absent: as much as the network lets through. @param aged at the end of its life */
  readonly most?: (s: Reading, aged?: boolean) => number;
  /** It has parts that age. */
  readonly ages?: true;
  /** The sums behind `most`. */
  readonly steps: (s: Reading) => readonly Step[];
  /** Amperes that it lets through though it has let go. */
  readonly leak: (s: Reading) => number;
  readonly leakSteps: (s: Reading) => readonly Step[];
}

/** A pin drives. @param active the pin's level while the circuit is on */
export function pinDrive(pin: BoundPin, active: 'high' | 'low'): Drive {
  return {
    pin: pin.account,
    level: (state) => ((state === 'on') === (active === 'high') ? 'high' : 'low'),
    rail: pin.rail,
    bare: pin.account,
    ohms: Math.max(pin.high?.ohms.max ?? 0, pin.low?.ohms.max ?? 0),
    tie: ({ circuit, to, flows, members }) => ({
      hooks: [{ pin, active, flows, to, members: flows === 'out' ? members : members.toReversed(), circuit }],
      on: [],
      off: [],
    }),
    steps: () => [],
    leak: () => 0,
    leakSteps: () => [],
  };
}

/** The output of a stage: at one of its sides, or open. */
export interface Output {
  readonly level: (state: State) => Level;
  /** What it puts in the way when it conducts. */
  readonly members: readonly Member[];
  /** Node that its high side stands at. */
  readonly rail: string;
}

/** Ohms of leads and bonds: they keep a switch finite that lies straight across a node and its side. */
const LEADS = 1e-3;

/** What a stage switches drives the next. @param id the stage's name */
export function stageDrive(
  id: string,
  { level, rail, members: own }: Output,
  rest: Pick<Drive, 'pin' | 'most' | 'ages' | 'steps' | 'leak' | 'leakSteps'>,
): Drive {
  const wholePath = ({ members }: Way, side: 'low' | 'high'): Member[] => {
    const all = side === 'low' ? [...members.toReversed(), ...own] : [...own, ...members];
    return all.some((m) => m.kind === 'resistance' && m.ohms.min > 0) ? all : [...all, leads(id)];
  };
  const branch = (state: State, way: Way): BranchPlan[] => {
    const side = level(state);
    if (side === 'open') return [];
    const path = wholePath(way, side);
    const members = state === way.holds ? path.map(asLoad) : path;
    const ends = side === 'low' ? { from: way.to, to: GROUND } : { from: rail, to: way.to };
    return [{ ...ends, members, circuit: way.circuit }];
  };
  /** Nothing ever flows on the way of an output that never conducts; it is there all the same, to be asked about. */
  const idle = (way: Way): BranchPlan => ({
    from: way.to,
    to: way.to,
    members: wholePath(way, 'low'),
    circuit: way.circuit,
  });
  return {
    ...rest,
    rail,
    level,
    tie: (way) => {
      const [on, off] = [branch('on', way), branch('off', way)];
      return { hooks: [], on: on.length + off.length > 0 ? on : [idle(way)], off };
    },
  };
}

const leads = (id: string): Member => ({
  kind: 'resistance',
  part: `${id}.leads`,
  ohms: { min: LEADS, typ: LEADS, max: LEADS },
});

const asLoad = (m: Member): Member => (m.kind === 'resistance' || m.kind === 'drop' ? { ...m, load: true } : m);
