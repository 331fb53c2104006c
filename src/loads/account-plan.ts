/** The accounts that loads, drivers and boards open: how each is read off a solution, its limits, the builds it needs, its working. */
import type { Interval } from '../quantity/interval.js';
import type { Path } from '../source/place.js';
import type { Member, Origin } from './branch-plan.js';

/** What a solved corner tells. */
export interface Reading {
  /** Ambient, °C. */
  readonly ambient: number;
  /** The same of anything with a name, °C: where it stands may have an ambient of its own. */
  ambientOf(name: string): number;
  /** Every parameter at its typical value. */
  readonly typical: boolean;
  /** Stall and start currents are counted. */
  readonly peak: boolean;
  /** Amperes through a part, in its branch's direction; 0 when it is switched off. */
  current(part: string): number;
  /** Volts across a part. */
  across(part: string): number;
  /** Ohms of a resistance or pin as taken in this corner. */
  ohms(part: string): number;
  /** What a chopper holds in this corner; undefined of other parts, and while its circuit is off. */
  held(part: string): Held | undefined;
  /** Volts of a node of the supply tree or an inner node. */
  voltage(node: string): number;
  /** The same at the end of the peaks that flow, with what capacitors give of them counted. */
  heldAt(node: string): number;
  /**
   * Volts by which the ground of what hangs on a node of the supply tree stands above the common ground: what its current
   * loses in the return sides of the wires on its way.
   */
  groundAt(node: string): number;
  /** Volts across the branch of a part if that took other amperes than its own, with all that shares its nodes answering. */
  voltsAt(part: string, amps: number): number;
  /** The branch a part sits in, as solved, for the working. */
  branch(part: string): SolvedBranch | undefined;
  /** What a period of the pulses is made of that flow in it, shares adding up to 1; itself alone where nothing pulses. */
  readonly phases: readonly Phase[];
  /** The least share of a period that a circuit's pulses take, for what they have to achieve; 1 of one that does not pulse. */
  duty(circuit: string): number;
}

/** The current a chopper holds, in one corner: amperes in each winding, ohms of a winding as warm as it is and of its switches. */
export interface Held {
  readonly windings: number;
  readonly amps: number;
  readonly ohms: number;
  readonly bridge: number;
  /** Watts that the shaft gives besides. */
  readonly shaft: number;
}

/** A part of a period in which nothing changes. */
export interface Phase {
  readonly share: number;
  readonly at: Reading;
}

export interface SolvedBranch {
  readonly from: { readonly node: string; readonly volts: number };
  readonly to: { readonly node: string; readonly volts: number };
  readonly amps: number;
  readonly members: readonly {
    readonly member: Member;
    readonly volts: number;
    readonly ohms?: number;
    readonly held?: Held;
  }[];
}

/**
 * Which extreme builds an account needs; each is tried at the coldest and the hottest ambient.
 * - `draw-most`, `draw-least`: the circuit's own current highest and lowest;
 * - `hottest`: the load heavy and the losses on its way highest, on the highest supplies;
 * - `lightest`: as little as can be drawn, on the highest supplies: the highest voltage that stands across its parts;
 * - `starved`, `flooded`: the lowest and highest voltage that reaches the load;
 * - `drive-worst`, `drive-best`: control side weakest with the load heaviest, and the other way round;
 * - `let-go-worst`, `let-go-best`: the circuit switched off, what still flows highest and lowest;
 * - of a signal line: `raised`, `lowered`: its voltage highest and lowest against what its receiver wants; `pressed`: as much
 *   as can be pushed through its clamps; `eased`: as little; `loaded`, `braked`: most current in it, with what drives it lowest
 *   and highest in resistance; `idle`: least;
 * - of what finds a way into a dead rail: `lifted`, `sunk`: most and least of it comes through.
 */
export type Recipe =
  | 'draw-most'
  | 'draw-least'
  | 'starved'
  | 'flooded'
  | 'drive-worst'
  | 'drive-best'
  | 'let-go-worst'
  | 'let-go-best'
  | 'hottest'
  | 'lightest'
  | LineRecipe;

export type LineRecipe = 'raised' | 'lowered' | 'pressed' | 'loaded' | 'braked' | 'eased' | 'idle' | 'lifted' | 'sunk';

export type AccountKind =
  | 'pin'
  | 'group'
  | 'total'
  | 'rail'
  | 'regulator'
  | 'fuse'
  | 'inlet'
  | 'supply'
  | 'driver'
  | 'coil'
  | 'clamp'
  | 'contact'
  | 'input'
  | 'series'
  | 'wire'
  | 'array'
  | 'level'
  | 'battery'
  | 'measured';
export type QuantityName = 'current' | 'voltage' | 'power' | 'temperature' | 'charge' | 'energy' | 'time';
export type Direction = 'source' | 'sink' | 'at-most' | 'at-least' | 'injected';
export type Grade = 'absolute' | 'operating' | 'characterised' | 'practice';

/** What of the policy a limit keeps in hand. */
export type MarginClass = 'current' | 'function-voltage' | 'window' | 'temperature' | 'drive' | 'none';

/** How much it matters that a limit is failed. */
export type Failing = 'breach' | 'strain' | 'note';

/** A figure an account is held to. */
export interface LimitPlan {
  /** SI; a function of the corner where the limit moves with it. */
  readonly value: number | ((s: Reading) => number);
  /** As its source wrote it. */
  readonly stated: string;
  readonly grade: Grade;
  /** A function (the coil pulls in) rather than a rating: failing is a strain, a breach only when the typical build fails. */
  readonly isFunction?: true;
  readonly margin: MarginClass;
  /** Failing it is no worse than thin: a coupler that fails only at the end of its life. */
  readonly mild?: true;
  /** What failing it comes to in a corner, where that hangs on more than its grade; `s.typical` marks the typical build. */
  readonly failing?: (s: Reading) => Failing;
  /** Beyond it nothing is proved either way, and this question settles it. */
  readonly asks?: string;
  /** An assumed limit has a range; beyond all of it is a breach, inside it a strain. SI. */
  readonly range?: Interval;
  readonly origin?: Origin;
  /** Whether it holds in a mode, by name; absent: in all of them. */
  readonly holdsIn?: (mode: string) => boolean;
  /** The condition the limit holds at, in words. */
  readonly condition?: string;
  /** The rule whose finding says the same in other words: who sets that aside sets this aside. */
  readonly sameAs?: string;
}

/** One line of working; evaluating `formula` with `with` gives `gives`. */
export interface Step {
  readonly name: string;
  readonly says?: string;
  readonly formula: string;
  readonly with: { readonly [symbol: string]: readonly [number, string] };
  readonly gives: readonly [number, string];
  readonly sources?: readonly string[];
}

/** The two ends of a signal line, as nodes of the supply tree. */
export interface LineEnds {
  /** What drives or pulls it from elsewhere. */
  readonly from: readonly string[];
  /** What feeds the receiver. */
  readonly at: string;
  /** What drives it may lie below ground. */
  readonly below?: true;
}

/** An account that a load, driver or clamp opens beside the pins and rails it is booked on. */
export interface AccountPlan {
  readonly id: string;
  readonly kind: AccountKind;
  readonly title: string;
  readonly quantity: QuantityName;
  readonly direction: Direction;
  /** The circuits whose extremes it needs: one, or all channels of an array. */
  readonly circuits: readonly string[];
  readonly path: Path;
  readonly recipes: readonly Recipe[];
  /** Sees peaks (stall, inrush), not only what is sustained; or what they come to over one second. */
  readonly peaks?: true | 'rms';
  /** It is asked with its circuits switched off, whatever the recipe: a stage that conducts then to hold the next one off. */
  readonly off?: true;
  /** It carries only while its circuit is off, whatever else is on: a normally closed contact. */
  readonly whileOff?: true;
  /** It is asked of a pin that no firmware drives yet, and of no other: what the load takes from one that is pulled or let go. */
  readonly atBoot?: true;
  /** Networks on the control side that are load to this account: the inputs of the stages behind the one it is about. */
  readonly loads?: readonly string[];
  /** Of a signal line: what pushes into it and what feeds its receiver. */
  readonly line?: LineEnds;
  /** A resistance that the draw is not monotone in: its first recipe has it at its least, its second at its most. Ohms. */
  readonly turns?: { readonly part: string; readonly ohms: Interval };
  /** The draw in SI units; undefined when a figure for it is missing. */
  readonly read: (s: Reading) => number | undefined;
  readonly limits: readonly LimitPlan[];
  /** The parts whose current it books, for the entries; absent: the account is no sum of currents. */
  readonly books?: readonly Booked[];
  /** What is missing to judge it, and the question that settles it. */
  readonly missing?: { readonly figure: string; readonly asks: string };
  readonly steps: (s: Reading) => readonly Step[];
}

/** A part's current on an account. */
export interface Booked {
  readonly circuit: string;
  readonly part: string;
  /** Share of it that this account carries, where several carry it together. */
  readonly share?: (s: Reading) => number;
}
