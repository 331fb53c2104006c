/** The supply tree of a project: its nodes and links, what holds charge at them, and what their loads want of them. */
import type { LimitPlan } from '../loads/account-plan.js';
import type { JunctionSpread, Origin } from '../loads/branch-plan.js';
import type { Interval } from '../quantity/interval.js';
import type { Point } from '../quantity/points.js';
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
  readonly reverseOrigin?: Origin;
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
  /** How long it lasts is told: it is wanted to, or what it gives has a mean. */
  readonly isTold?: true;
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

/** Something about the wiring of the tree that a rule reports as it stands. */
export interface TreeFact {
  readonly kind: 'no-source' | 'back-fed' | 'joined-supplies' | 'board-grounds' | 'idle-wire';
  readonly about: string;
  readonly path: Path;
  readonly with: { readonly [name: string]: string };
}
