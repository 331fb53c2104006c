/** What a type of load is given to lower itself, and what it gives back. */
import type { PinResistance } from '../circuit/pin.js';
import type { Interval } from '../quantity/interval.js';
import type { Path, Problem } from '../source/place.js';
import type { Figures } from './figures.js';
import type { InputPin, LineEnd } from './lines/line.js';
import type { SignalEnd } from './lines/signal.js';
import type { AccountPlan } from './account-plan.js';
import type { BranchPlan, DeadWay, Member, Origin } from './branch-plan.js';
import type { BootState, CircuitPlan } from './circuit-plan.js';

/** A pin's resistance when no data sheet tells it, ohms; it is listed. */
export const USUAL_PIN: Interval = { min: 12.5, typ: 25, max: 50 };

/** What a pin does until firmware runs. */
export interface PinAtBoot {
  readonly state: BootState;
  /** The resistor inside the chip that pulls it, ohms. */
  readonly pull?: Interval;
  /** Where the file or the profile says so. */
  readonly origin?: Origin;
  /** A junction leads from the pin to its supply. */
  readonly clamped: boolean;
}

/** A pin bound by name. */
export interface BoundPin {
  /** 'main.D9'. */
  readonly account: string;
  /** As the builder says it: 'D9'. */
  readonly label: string;
  readonly owner: string;
  /** Node that feeds the chip's outputs. */
  readonly rail: string;
  readonly high: PinResistance | undefined;
  readonly low: PinResistance | undefined;
  readonly origin?: Origin;
  /** Absent: nothing is known of it until firmware runs. */
  readonly boot?: PinAtBoot;
  /** Pins joined with it for one load: they share what hangs on it. */
  readonly joined?: readonly BoundPin[];
  /** Lowest characterised current, amperes, with margin judged elsewhere. */
  readonly characterised?: { readonly source?: number; readonly sink?: number };
}

/** Something that hangs on a pin: members in series from the pin to a node. */
export interface Hook {
  readonly pin: BoundPin;
  /** Level of the pin when the circuit is on. */
  readonly active: 'high' | 'low';
  /** `out` when positive current leaves the pin (an LED to ground), `in` when it enters it (an LED from a supply). */
  readonly flows: 'out' | 'in';
  readonly to: string;
  /** From the pin outwards when `out`, from the node to the pin when `in`. */
  readonly members: readonly Member[];
  /** The same while the circuit is off, where that differs: an input that takes its current only when it is on. */
  readonly off?: readonly Member[];
  readonly circuit: string;
  /** At its other level the pin lets go: it is used open-drain. */
  readonly open?: true;
}

/** A network before its pins are put in. */
export interface NetworkSketch {
  readonly id: string;
  readonly circuits: readonly string[];
  readonly side: 'control' | 'load';
  readonly inner: readonly string[];
  readonly hooks: readonly Hook[];
  /** A pin that switches it, by account id, though it hangs on it only through what another network has there. */
  readonly along?: string;
  /** Branches without a pin, by state. */
  readonly on: readonly BranchPlan[];
  readonly off: readonly BranchPlan[];
  /** Its pins serve others at other times: nothing else that hangs on them is solved with it. */
  readonly alone?: true;
  /** What hangs on the contact of a relay. */
  readonly contact?: true;
  /** What conducts besides while supplies are dead. */
  readonly whenDead?: readonly DeadWay[];
}

/** Circuits of one load that take turns, kept to by its firmware or by what it is. */
export interface Turns {
  readonly most: number;
  readonly of: readonly string[];
  readonly by: 'firmware' | 'wiring';
  readonly path: Path;
  readonly turns: true;
}

export interface Lowered {
  readonly circuits: readonly CircuitPlan[];
  readonly networks: readonly NetworkSketch[];
  readonly accounts: readonly AccountPlan[];
  /** At most so many of its circuits are on together: they take turns. */
  readonly interlocks?: readonly Turns[];
  /** What the file leaves open and nobody may assume. */
  readonly open?: readonly OpenQuestion[];
  /** Inputs of drivers with a junction to their supply. */
  readonly ends?: readonly LineEnd[];
}

/** Something that is one or the other, which decides how a load is reckoned and which nothing tells. */
export interface OpenQuestion {
  /** The load. */
  readonly about: string;
  /** The figure that would tell, as the account's `missing` names it: 'input.indicator'. */
  readonly figure: string;
  /** What it may be; the load is lowered by the first until it is answered. */
  readonly answers: readonly OpenAnswer[];
}

export interface OpenAnswer {
  readonly value: string;
  /** What then is the case, in words that follow 'if'. */
  readonly says: string;
  /** The same after the question, in words that follow 'if': 'none does'. */
  readonly briefly: string;
}

/** One load on a channel of an array. */
export interface ArrayChannel {
  readonly array: string;
  readonly channel: number;
  readonly circuit: string;
  /** Part that carries the load's current. */
  readonly part: string;
  /** Part name of the drop that the channel leaves; none where nobody states it. */
  readonly saturation?: string;
  /** The pin at its input, as an account id; none where the array is set over its control lines. */
  readonly pin?: string;
  /** Part names of what the input's current flows through. */
  readonly input: readonly string[];
  /** How many channels are joined for the load. */
  readonly joined: number;
  /** Node that feeds the load. */
  readonly supply: string;
  /** A winding: switched off, it drives its current on through the channel's clamp. */
  readonly inductive?: true;
}

/** What a load may ask of the project around it. Names that do not bind are reported there. */
export interface Bench {
  /** A pin that this circuit switches; of several names, pins joined for it. */
  outputPin(
    name: unknown,
    path: readonly (string | number)[],
    by: string,
    active: 'high' | 'low',
  ): BoundPin | undefined;
  /** A pin that somebody from outside reaches. @param by who @param driven it is pushed up and down, not only connected */
  inputPin(name: unknown, path: readonly (string | number)[], by: string, driven: boolean): InputPin | undefined;
  /** A node of somebody else's voltage, which no load can hang on; volts. @param life the node that keeps it alive, where known */
  outside(id: string, title: string, volts: Interval, path: readonly (string | number)[], life?: string): string;
  /** A node that only one thing hangs on, fed by a supply that the file does not describe; volts. */
  elsewhere(id: string, title: string, volts: Interval, path: readonly (string | number)[]): string;
  /** The supplies that keep a node alive. */
  sources(node: string): readonly string[];
  /** Lists what the file leaves open. */
  assume(about: string, says: string, path: readonly (string | number)[]): void;
  /** A pin that a bus line or sensor uses. */
  signalPin(name: unknown, path: readonly (string | number)[], by: string, role: string, end: SignalEnd): void;
  /** Pin names with ranges spelled out: `bar.q0..q7`. */
  pinNames(
    raw: unknown,
    path: readonly (string | number)[],
  ): readonly { readonly name: string; readonly path: readonly (string | number)[] }[];
  /** A supply or rail by name. */
  node(name: unknown, path: readonly (string | number)[]): string | undefined;
  /** Typical volts of a node, as stated: for choosing rows and defaults, never for sums. */
  nominal(node: string): number;
  /** Volts of a node as stated, drops left out. */
  window(node: string): Interval;
  /** Highest volts of a node whose supply does not keep one voltage (a battery, an unregulated adapter); else undefined. */
  unsteady(node: string): number | undefined;
  /** Holds an entry of a load that is spelled out in place against the keys of its kind: 'driver:stages'. */
  check(kind: string, raw: unknown, path: readonly (string | number)[]): void;
  /** Figures of a driver, clamp or array entry with its profile's behind them; its type, or undefined with a problem. */
  part(
    kind: 'driver' | 'clamp',
    raw: unknown,
    path: readonly (string | number)[],
    about: string,
  ): { readonly figures: Figures; readonly type: string } | undefined;
  /** What type a driver's entry is, by its own word or its profile's; nothing is checked. */
  driverType(raw: unknown): string | undefined;
  /** Figures of a part inside a load (a board's clamp or coil) with the profile it names, if any, behind them. */
  behind(figures: Figures, kind: 'driver' | 'clamp' | 'load'): Figures;
  /** One channel of an array. */
  channel(
    name: unknown,
    path: readonly (string | number)[],
  ):
    | { readonly figures: Figures; readonly array: string; readonly channel: number; readonly common?: string }
    | undefined;
  /** What is to be taken for something that the file leaves open: 'vents' and 'input.indicator'. */
  answer(about: string, figure: string): string | undefined;
  use(channel: ArrayChannel): void;
  /** Who uses a channel so far. */
  usersOf(array: string, channel: number): readonly ArrayChannel[];
  problem(problem: Problem): void;
}

/** A load to lower. */
export interface LoadInput {
  readonly id: string;
  readonly type: string;
  readonly path: readonly (string | number)[];
  readonly entry: Readonly<Record<string, unknown>>;
  readonly figures: Figures;
  readonly bench: Bench;
}

/** A type of load: its name and how it lowers itself. */
export interface LoadType {
  readonly type: string;
  readonly lower: (input: LoadInput) => Lowered;
}

export const NOTHING: Lowered = { circuits: [], networks: [], accounts: [] };
