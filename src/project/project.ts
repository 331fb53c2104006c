/** The resolved project: every name bound, every figure read, every load lowered to circuits. Nothing here is text. */
import type { AccountPlan } from '../loads/account-plan.js';
import type { NetworkPlan } from '../loads/branch-plan.js';
import type { CircuitPlan, LineFact } from '../loads/circuit-plan.js';
import type { Unsourced } from '../loads/figures.js';
import type { LineEnd } from '../loads/lines/line.js';
import type { OpenQuestion, PinAtBoot } from '../loads/lowering.js';
import type { Interval } from '../quantity/interval.js';
import type { Path } from '../source/place.js';
import type { OutputsOff } from './held-off.js';
import type { PinAccountPlan, PinFact, PinUse } from './pin-plan.js';
import type { Capacitance, DipPlan, Link, SupplyWindow, TreeFact, TreeNode } from './tree-plan.js';

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
  /** What boards join to their rails once what feeds these is dead, in their order. */
  readonly spares: readonly Link[];
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
