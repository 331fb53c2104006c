/** The resolved project: every name bound, every figure read, every load lowered to circuits. Nothing here is text. */
import type { Interval } from '../quantity/interval.js';
import type { AccountPlan, Direction, LimitPlan } from '../loads/account-plan.js';
import type { JunctionSpread, NetworkPlan, Origin } from '../loads/branch-plan.js';
import type { BootState, CircuitPlan, LineFact } from '../loads/circuit-plan.js';
import type { Unsourced } from '../loads/figures.js';
import type { LineEnd } from '../loads/lines/line.js';
import type { OpenQuestion, PinAtBoot } from '../loads/lowering.js';
import type { Point } from '../quantity/points.js';
import type { OutputsOff } from './held-off.js';
import type { Path } from '../source/place.js';

/** A node of the supply tree: a supply, an inlet, a rail. */
export interface TreeNode {
  readonly id: string;
  readonly kind: 'supply' | 'inlet' | 'rail' | 'joint';
  readonly title: string;
  readonly path: Path;
  /** Set on a supply: its terminal voltage, volts. */
  readonly volts?: Interval;
  /** It does not keep one voltage: a battery, an adapter that does not regulate. */
  readonly unsteady?: true;
  readonly reverse?: Reverse;
  /** Somebody else's voltage: it takes from what our rails give, so that it leans against them in sums. */
  readonly outside?: true;
  /** Node of what makes somebody else's voltage, where the file says so: it dies with that. */
  readonly life?: string;
  /** What feeds the load of one contact, where the file describes no supply for it. */
  readonly elsewhere?: true;
  /** Limits on the current through it. */
  readonly limits: readonly LimitPlan[];
  /** What to ask when nobody says what it can give. */
  readonly missing?: { readonly figure: string; readonly asks: string };
  /** Of a source: that it may be in one state or another, as USB ports are. */
  readonly states?: true;
  /** Most watts that a supply gives. */
  readonly power?: LimitPlan;
  /** Most farads that a supply may be asked to charge. */
  readonly chargeable?: LimitPlan;
  /** What it says of itself as a battery. */
  readonly battery?: BatteryPlan;
  readonly origin?: Origin;
}

/** A battery, as far as it is more than a source with a resistance. */
export interface BatteryPlan {
  /** Coulombs over the drain in amperes. */
  readonly capacity?: readonly Point[];
  readonly origin?: Origin;
  /** Seconds that it is wanted to last. */
  readonly wanted?: LimitPlan;
  /** What settles how long it lasts, where nobody states its capacity. */
  readonly asks?: string;
  /** Volts at its terminals below which it counts as empty; where its resistance is known. */
  readonly empty?: LimitPlan;
  readonly chemistry?: string;
  /** Share of its charge that it loses by itself, and the seconds that it takes for that. */
  readonly loses?: { readonly share: Interval; readonly over: number };
}

/** A capacitor, or what comes to one, on a node of the supply tree. */
export interface Capacitance {
  /** Whose it is: a supply, a rail, a regulator, a load. */
  readonly about: string;
  readonly node: string;
  readonly farads: Interval;
  readonly stated: string;
  readonly origin: Origin;
  /** It keeps a rail up, rather than belonging to the input of something on it. */
  readonly reservoir: boolean;
  /** A profile of the catalogue states it. */
  readonly builtIn: boolean;
}

/** A window of voltages in which something on a node works. */
export interface SupplyWindow {
  /** Whose it is: a chip, a board's inlet, a load. */
  readonly about: string;
  readonly node: string;
  /** Volts; a bound that nobody states is absent. */
  readonly min?: number;
  readonly max?: number;
  /** What the node's own accounts are held to; a load's window is held against what reaches its own terminals instead. */
  readonly low: readonly LimitPlan[];
  readonly high: readonly LimitPlan[];
}

/** What a source does when current is pushed back into it. */
export type Reverse = 'not-allowed' | 'tolerated' | 'blocked';

/** A load that works on only while its supply dips by no more than so much. */
export interface DipPlan {
  readonly about: string;
  /** Node that feeds it. */
  readonly node: string;
  readonly limit: LimitPlan;
  readonly path: Path;
}

/** What leads from one node of the supply tree to the next. */
export interface Link {
  readonly id: string;
  /** A `wire` is an ideal joint, a `cable` a wire with a resistance. */
  readonly kind:
    'wire' | 'cable' | 'fuse' | 'limiter' | 'switch' | 'diode' | 'linear-regulator' | 'switching-regulator';
  /** A supply's own resistance, one of several diodes at a node: solved like a fuse or a diode, but no account. */
  readonly inner?: true;
  readonly title: string;
  readonly from: string;
  readonly to: string;
  /** The place it stands in, where that has an ambient of its own. */
  readonly place?: string;
  readonly path: Path;
  /** Ohms in the way (a fuse, limiter or switch; a cable's copper at 20 °C). */
  readonly ohms?: Interval;
  /** Ohms of a cable's plugs, whatever the temperature. */
  readonly contact?: Interval;
  /** Share of a cable's drop that lies in the ground side, 0 to 1. */
  readonly returns?: number;
  /** What a cable's copper was reckoned from: metres one way, how many wires, and their m², or what a metre of one has in ohms. */
  readonly copper?: { readonly length: Interval; readonly conductors: number } & (
    { readonly area: Interval } | { readonly perMetre: Interval; readonly origin: Origin }
  );
  /** It is the upper resistor of a divider with this lower one, ohms. */
  readonly divides?: Interval;
  /** Forward law of a diode, or the one voltage that it drops whatever the current. */
  readonly law?: JunctionSpread;
  readonly drop?: Interval;
  /** Output voltage (a regulator), volts. */
  readonly volts?: Interval;
  /** Least voltage that a linear or step-down regulator loses, volts over its output current. */
  readonly dropout?: readonly Point[];
  /** Which way a switching regulator goes; absent: as its voltages say. */
  readonly step?: 'down' | 'up' | 'both';
  /** A regulator's own current, amperes. */
  readonly quiescent?: Interval;
  /** A switching regulator's efficiency, 0 to 1, over its output current. */
  readonly efficiency?: readonly Point[];
  readonly origin?: Origin;
  /** Limits on the current out of it. */
  readonly limits: readonly LimitPlan[];
  readonly missing?: { readonly figure: string; readonly asks: string };
  /** Highest and lowest input voltage (a regulator). */
  readonly input?: LimitPlan;
  readonly leastInput?: LimitPlan;
  /** What it does when current is pushed back into it. */
  readonly reverse?: Reverse;
  /** Heat: thermal resistance as mounted, K/W, and the limit of the junction. */
  readonly heat?: {
    readonly thermal: Interval;
    readonly limit: LimitPlan;
    readonly origin?: Origin;
  };
}

/** A chip's pin that something hangs on, or one of its sums. */
export interface PinAccountPlan {
  readonly id: string;
  readonly kind: 'pin' | 'group' | 'total' | 'array';
  readonly title: string;
  readonly direction: Direction;
  /** Pins, as account ids, whose currents it sums. */
  readonly pins: readonly string[];
  /** Circuits that draw through it without a pin: the chip itself on its supply pins. */
  readonly own: readonly { readonly circuit: string; readonly part: string }[];
  readonly path: Path;
  readonly limits: readonly LimitPlan[];
  /** It is what they turn into heat, in watts, and what `own` takes of this rail. */
  readonly heat?: { readonly rail: string };
  /** Of one pin: the drive setting that the project chose, where it is not the highest. */
  readonly drive?: { readonly amps: number; readonly stated: string };
  readonly missing?: { readonly figure: string; readonly asks: string };
}

/** One thing that a pin is used for. */
export interface PinUse {
  readonly pin: string;
  /** As sentences say it: 'D9', 'bar.q0'. */
  readonly label: string;
  readonly by: string;
  /** `input`: something outside is connected to it; `driven`: it is pushed up and down from there. */
  readonly as: 'output' | 'signal' | 'control' | 'input' | 'driven';
  /** Role of a bus line: 'sda', 'clock'. */
  readonly role?: string;
  readonly active?: 'high' | 'low';
  /** All pins joined for the same load, itself among them. */
  readonly joined?: readonly string[];
  readonly path: Path;
  /** Why the pin should be left alone, or cannot do it. */
  readonly reserved?: string;
  readonly inputOnly?: true;
}

/** A pin whose level at a reset decides how the chip starts. */
export interface StrapPlan {
  /** The level that starts the program. */
  readonly level: 'high' | 'low';
  /** What the other one does, in words of its profile. */
  readonly says?: string;
  /** Node that feeds the chip. */
  readonly rail: string;
  /** Volts up to which it surely reads low, or from which it surely reads high, over its supply. */
  readonly reads: (supply: number) => number;
  /** A resistor or the chip itself pulls it to that level. */
  readonly held: boolean;
}

/** A pin of a chip that a builder can put a wire on, used or not. */
export interface PinFact {
  readonly id: string;
  /** As a file names it: 'D9', 'bar.q0'. */
  readonly label: string;
  readonly owner: string;
  readonly reserved: boolean;
  readonly inputOnly: boolean;
  /** Accounts of the sums that its current counts in. */
  readonly sums: readonly string[];
  /** Node that feeds its chip. */
  readonly rail: string;
  /** What it does until firmware runs. */
  readonly boot: BootState;
  /** The most ohms of the resistor fitted at it, where something uses it. */
  readonly fitted?: number;
  /** The level that it has to have at a reset. */
  readonly strap?: StrapPlan;
}

/** The project from a reset until firmware runs. */
export interface BootPlan {
  /** The networks as the pins stand then: see `loose-pins.ts`. */
  readonly networks: readonly NetworkPlan[];
  /** The same with strapping pins as inputs, leaking to the side that they must not be on; none where nothing hangs on one. */
  readonly strapped: readonly NetworkPlan[];
  /** What is asked then, and at no other time. */
  readonly accounts: readonly AccountPlan[];
  /** What each pin does that something hangs on, by account. */
  readonly pins: ReadonlyMap<string, PinAtBoot>;
}

export interface ModePlan {
  readonly name: string;
  readonly active: ReadonlySet<string>;
  /** Share of the time, 0 to 1. */
  readonly share?: number;
  /** It is what is so from a reset until firmware runs. */
  readonly during?: 'boot';
  /** Controllers and expanders that sleep. */
  readonly asleep: readonly string[];
  /** Supplies that are dead. */
  readonly without: readonly string[];
  readonly path: Path;
}

export interface InterlockPlan {
  readonly kind: 'at-most' | 'needs' | 'excludes';
  /** at-most: how many of `of`. */
  readonly most?: number;
  readonly of: readonly string[];
  /** needs: circuits of `of` must be on for any of these; excludes: none of `of` while any of these. */
  readonly when?: readonly string[];
  readonly by: 'wiring' | 'firmware';
  readonly path: Path;
  /** Circuits of one load that take turns: a mode that names them stands for each of their turns. */
  readonly turns?: true;
}

/** A place of the circuit that a meter is held to. */
export interface Spot {
  readonly sort: 'part' | 'pin' | 'node' | 'link' | 'account';
  readonly id: string;
}

/** A meter's reading, to be held against the books. */
export interface ReadingPlan {
  readonly of: Spot;
  readonly quantity: 'voltage' | 'current' | 'power' | 'temperature';
  /** SI. */
  readonly value: Interval;
  /** Written without a tolerance. */
  readonly exact: boolean;
  readonly stated: string;
  /** Absent: whichever mode it was. */
  readonly mode?: string;
  readonly path: Path;
}

/** Shares of each limit to keep in hand, 0 to 1. */
export interface Policy {
  readonly name: string;
  readonly current: number;
  readonly functionVoltage: number;
  readonly window: number;
  readonly temperature: number;
  readonly drive: number;
  /** What some kinds of account keep of their ratings, where that is not as for all. */
  readonly kinds: ReadonlyMap<string, KindMargins>;
}

/** Shares of the ratings of a kind of account to keep in hand, 0 to 1, and how warm it may become. */
export interface KindMargins {
  readonly current?: number;
  readonly voltage?: number;
  readonly power?: number;
  readonly temperature?: number;
  /** Kelvin below its highest temperature. */
  readonly temperatureBelow?: number;
  /** °C, whatever it bears. */
  readonly temperatureAtMost?: number;
}

export interface Assumption {
  readonly about: string;
  readonly says: string;
  readonly path?: Path;
}

/** Something about the wiring of the tree that a rule reports as it stands. */
export interface TreeFact {
  readonly kind: 'no-source' | 'back-fed' | 'joined-supplies' | 'board-grounds' | 'idle-wire';
  readonly about: string;
  readonly path: Path;
  readonly with: { readonly [name: string]: string };
}

export interface Project {
  readonly title: string;
  readonly file: string;
  readonly ambient: Interval;
  /** Places with an ambient of their own, °C. */
  readonly places: ReadonlyMap<string, Interval>;
  /** Entries and wires by name that stand in one of them: see `placeOf`. */
  readonly located: ReadonlyMap<string, string | undefined>;
  readonly policy: Policy;
  readonly nodes: readonly TreeNode[];
  /** Upstream first. */
  readonly links: readonly Link[];
  readonly capacitances: readonly Capacitance[];
  readonly windows: readonly SupplyWindow[];
  readonly dips: readonly DipPlan[];
  readonly circuits: readonly CircuitPlan[];
  readonly networks: readonly NetworkPlan[];
  readonly boot: BootPlan;
  readonly accounts: readonly AccountPlan[];
  /** What is one or the other, and nothing tells. */
  readonly open: readonly OpenQuestion[];
  readonly pinAccounts: readonly PinAccountPlan[];
  readonly uses: readonly PinUse[];
  readonly pins: readonly PinFact[];
  /** Names of the expanders. */
  readonly expanders: ReadonlySet<string>;
  /** Arrays that are set over control lines, and whether one of these holds their channels off until they are first set. */
  readonly serial: ReadonlyMap<string, boolean>;
  /** The control line of an expander or array that holds its outputs off, where it has one. */
  readonly outputsOff: ReadonlyMap<string, OutputsOff>;
  /** How many channels each array has. */
  readonly channels: ReadonlyMap<string, number>;
  readonly facts: readonly TreeFact[];
  readonly lines: readonly LineFact[];
  /** What reads signal lines, as far as a junction leads from it to its supply. */
  readonly ends: readonly LineEnd[];
  readonly modes: readonly ModePlan[];
  readonly interlocks: readonly InterlockPlan[];
  readonly measured: readonly ReadingPlan[];
  readonly waivers: readonly WaiverPlan[];
  readonly assumptions: readonly Assumption[];
  /** Figures of profiles that were read and that no document backs, used or not. */
  readonly unsourced: readonly Unsourced[];
  readonly notes: readonly { readonly about: string; readonly text: string }[];
  readonly cautions: readonly string[];
}

/** A finding that the file sets aside. */
export interface WaiverPlan {
  readonly rule: string;
  /** What the finding is about: a circuit, an account, `vents.*`. */
  readonly about: string;
  readonly reason: string;
  /** The last day that it holds: '2027-03-01'; absent: it does not run out. */
  readonly until?: string;
  /** The word without which nothing that does damage is waived. */
  readonly accepts?: 'damage';
  readonly path: Path;
}
