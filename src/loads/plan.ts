/**
 * The vocabulary that every type of load, driver and board speaks: circuits made of networks of branches, the accounts
 * they open and the facts of their wiring. Whatever lowers itself to this is solved, booked, judged and explained by the
 * same code, so that any load works behind any driver on any pin of any chip.
 */
import type { ContactLoadKind } from '../circuit/contact.js';
import type { Interval } from '../quantity/interval.js';
import type { Junction } from '../circuit/junction.js';
import type { Path } from '../source/place.js';

/** Where a figure comes from. */
export interface Origin {
  readonly document: string;
  readonly where?: string;
  readonly basis: 'document' | 'practice' | 'memory' | 'project';
}

/** A junction's forward law at the low, typical and high end of its part's spread. */
export interface JunctionSpread {
  readonly min: Junction;
  readonly typ: Junction;
  readonly max: Junction;
}

/** Common to everything in series on a branch. */
interface InSeries {
  /** Name of the part, unique in the project: 'horn.coil', 'heartbeat.series', 'main.D9'. */
  readonly part: string;
  /** Where the figures come from, for the working. */
  readonly origin?: Origin;
}

/** What stands in series on a branch. Figures are intervals in SI units. */
export type Member =
  | (InSeries & {
      readonly kind: 'resistance';
      readonly ohms: Interval;
      /** Reference temperature, °C, of a copper winding; absent: the resistance does not follow the temperature. */
      readonly copper?: number;
      /** The useful load itself, or what takes current away from it: not a loss on the way to it. */
      readonly load?: true;
      /**
       * A capacitor lies across it: at switching on it counts for nothing, by these shares when what it feeds has to act and over
       * the first second (root mean square), and whole from then on.
       */
      readonly bypass?: { readonly acting: number; readonly second: number };
    })
  | (InSeries & { readonly kind: 'junction'; readonly law: JunctionSpread; readonly load?: true })
  | (InSeries & { readonly kind: 'drop'; readonly volts: Interval; readonly load?: true })
  | (InSeries & { readonly kind: 'curve'; readonly points: readonly CurvePoint[] })
  | (InSeries & {
      readonly kind: 'current';
      readonly amps: Interval;
      /** Amperes in a stall, a start or a burst. */
      readonly peak?: number;
      /** Seconds that a peak lasts, and from one to the next where they come regularly. */
      readonly lasts?: number;
      readonly every?: number;
      /** Root mean square, amperes, over the second that has most of it. */
      readonly second?: number;
    })
  | (InSeries & { readonly kind: 'pin'; readonly ohms: Interval })
  | (InSeries & {
      /** A lamp's filament. */
      readonly kind: 'filament';
      /** Volts of its design point, and the amperes it takes there when it is hot. */
      readonly volts: number;
      readonly amps: Interval;
      /** How many times as much it takes cold, and over the second in which it is switched on (root mean square). */
      readonly cold?: { readonly peak: number; readonly second: number };
    })
  /** Watts taken from whatever reaches it. Only in networks without nodes of their own: its current falls as the voltage rises. */
  | (InSeries & { readonly kind: 'power'; readonly watts: Interval });

/** Whether a member draws more at times: in a stall, a start, a burst. */
export const hasPeaks = (m: Member): boolean =>
  (m.kind === 'current' && m.peak !== undefined) ||
  (m.kind === 'filament' && m.cold !== undefined) ||
  (m.kind === 'resistance' && m.bypass !== undefined);

/** Whether a branch draws more as its voltage falls. */
export const isFalling = ({ members }: BranchPlan): boolean => members.some((m) => m.kind === 'power');

/** Volts that something keeps for itself at a current: straight lines between points of rising current, which begin at 0 A. */
export interface CurvePoint {
  readonly amps: number;
  readonly volts: Interval;
}

/** What a pin does until firmware runs; `any`: its register wakes as it likes, and stays so until it is first set. */
export const BOOT_STATES = ['floating', 'pulled-up', 'pulled-down', 'high', 'low', 'pulses', 'any'] as const;
export type BootState = (typeof BOOT_STATES)[number];

/** The node everything returns to. */
export const GROUND = 'ground';

/** Members in series from one node to another; positive current flows from `from` to `to`. */
export interface BranchPlan {
  readonly from: string;
  readonly to: string;
  readonly members: readonly Member[];
  /** What the current is booked for: a circuit, or a part that draws for itself ('main.board'). */
  readonly circuit: string;
  /** Set on the branch that passes through a pin. */
  readonly pin?: PinPassage;
  /** On a pin's own branch, where several things hang on it: the branches (by number) whose sum it carries. */
  readonly carries?: readonly number[];
  /**
   * What it is to a signal line: `drive` what somebody outside pushes into it, `pull` a resistor that holds it, `clamp` the
   * junction that leads away what is pushed in beyond a supply. Leans of lines tell them apart.
   */
  readonly line?: 'drive' | 'pull' | 'clamp';
  /** It comes from a supply that stands below what else holds the line high: it pulls the line down. */
  readonly lowers?: true;
}

/** How a branch passes through a pin. */
export interface PinPassage {
  /** The pin's account: 'main.D9'. */
  readonly pin: string;
  readonly level: 'high' | 'low';
  /** +1 when positive branch current leaves the pin, −1 when it enters it. */
  readonly outward: 1 | -1;
  /** All pins that are joined with it, itself among them: they share what flows. */
  readonly joined?: readonly string[];
}

/** Whether anything can flow through a pin's branch: not when all it leads to stands where its pin stands. */
export function carriesAnything(branch: BranchPlan, plans: readonly BranchPlan[]): boolean {
  if (branch.carries === undefined) return branch.from !== branch.to;
  const high = branch.pin?.level === 'high';
  const [side, node] = high ? [branch.from, branch.to] : [branch.to, branch.from];
  return branch.carries.some((k) => (plans[k]!.from === node ? plans[k]!.to : plans[k]!.from) !== side);
}

/** Branches that share inner nodes and so are solved together, in the circuit's two states. */
export interface NetworkPlan {
  readonly id: string;
  /** Circuits that switch it; it is on when any of them is (a pin has one level for all that hangs on it). */
  readonly circuits: readonly string[];
  /** The control side carries a driver's input, the load side what the driver switches; a bare load is its own. */
  readonly side: 'control' | 'load';
  /** Where loads and drivers' inputs share a network: the circuits whose input it is. */
  readonly controls?: ReadonlySet<string>;
  /** Unknown nodes; every other node is ground or a node of the supply tree. */
  readonly inner: readonly string[];
  readonly on: readonly BranchPlan[];
  readonly off: readonly BranchPlan[];
  /** What hangs on the contact of a relay: its coil and driver are no part of it, nor it of theirs. */
  readonly contact?: true;
}

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

/** What the rules of wiring need to know of a circuit. */
export interface CircuitPlan {
  /** 'horn', 'vents.2'. */
  readonly id: string;
  /** The entry it belongs to: 'vents'. */
  readonly owner: string;
  readonly path: Path;
  /** Type of the load: 'coil', 'led', 'relay-board', … */
  readonly type: string;
  /** What its entry says but for where it hangs: entries of one sort have equal figures. Absent: its owner's is its own. */
  readonly sort?: string;
  /** Always on, whatever the modes say: it has neither pin nor driver. */
  readonly always: boolean;
  /** Its pin only tells it what to do: a servo, pixels. */
  readonly listens?: true;
  /** A signal line: on while it is driven. Both of its states belong to every mode, unless a mode names it. */
  readonly signal?: true;
  readonly wiring: Wiring;
  /** What its load is to do, where the file says so. */
  readonly purpose?: Purpose;
  /** The contact that it switches, where the file says what hangs on that. */
  readonly contact?: ContactPlan;
  /** It is switched on and off many times a second. */
  readonly pulses?: Pulses;
  /** Pulses set it, and it stays so: on, it is as it is during a pulse. */
  readonly latching?: LatchingPlan;
}

/** A relay that stays as its last pulse left it. */
export interface LatchingPlan {
  readonly coils: 'one-coil' | 'two-coil';
  /** Seconds that a pulse lasts. */
  readonly pulse: number;
  /** Pulses a day, where stated. */
  readonly perDay?: number;
}

/** How something is switched on and off over and over: its mean is what matters to heat. */
export interface Pulses {
  /** Hertz. */
  readonly frequency: Interval;
  /** Share of a period in which it is on. */
  readonly duty: Interval;
  readonly path: Path;
  /** Each pulse lasts so long that it heats by itself: there is no mean to reckon with. */
  readonly slow?: true;
}

/** A contact and its load, as far as rules and cautions need them. */
export interface ContactPlan extends ContactSide {
  /** The other side of a changeover, where a load hangs on that, too, and the state in which that one does no harm. */
  readonly other?: ContactSide & { readonly safeWhen?: Purpose['safeWhen'] };
}

/** One side of a contact, with what hangs on it. */
export interface ContactSide {
  readonly wired: 'normally-open' | 'normally-closed';
  /** Electronics in place of a contact: a solid-state relay. */
  readonly solidState?: true;
  readonly kind: ContactLoadKind;
  /** Nominal volts of the load, and what sort of voltage. */
  readonly volts: number;
  readonly waveform: 'AC' | 'DC';
  /** Amperes of the load, where stated. */
  readonly amps?: Interval;
  /** Node that feeds the load; absent: a supply that the file does not describe. */
  readonly supply?: string;
  readonly suppression?: {
    readonly type: SuppressionType;
    readonly across: 'load' | 'contact';
    /** Farads of an RC element, where stated. */
    readonly farads?: number;
  };
  readonly path: Path;
}

export type SuppressionType = 'diode' | 'zener' | 'diode-zener' | 'tvs' | 'varistor' | 'rc';

/** What the load of a circuit, or behind its contact, is to do: what rules about boot, power loss and energy read. */
export interface Purpose {
  /** The state in which it does no harm. */
  readonly safeWhen?: 'load-stopped' | 'load-running';
  /** Seconds a day that it runs. */
  readonly daily?: Interval;
  /** With which state of the circuit it runs: behind a normally closed contact while the coil is off. */
  readonly runs: 'on' | 'off';
  /** It hangs on a contact; absent: it is the circuit's own load. */
  readonly contact?: true;
  /** Where the file says so. */
  readonly path: Path;
}

/** Something about a signal line's wiring that a rule reports as it stands. */
export interface LineFact {
  readonly kind: 'floats';
  readonly about: string;
  readonly path: Path;
  readonly with: { readonly [name: string]: string };
}

/** How a circuit is switched and protected. */
export interface Wiring {
  /** What switches it. */
  readonly by: 'pin' | 'driver' | 'array' | 'board' | 'nothing';
  /** The pin that controls it, as an account id. */
  readonly pin?: string;
  readonly inductive: boolean;
  /** Part name of the coil or motor that an inductive load is. */
  readonly coil?: string;
  readonly clamp: 'none' | 'fitted' | 'reversed' | 'not-needed';
  /** What a clamp that is fitted the wrong way round does. */
  readonly clampActs?: 'shorts' | 'clamps-nothing';
  /** Forward law of a clamp that would short the winding if it sat the wrong way round. */
  readonly clampForward?: JunctionSpread;
  /** An inductive load's windings hang on the bare pin. */
  readonly bare?: true;
  /** The file says that one level energises it, and what drives it conducts at the other. */
  readonly inverted?: { readonly says: 'high' | 'low' };
  /** Parts whose current nothing but a pin's own resistance limits. */
  readonly unlimited?: readonly { readonly part: string; readonly pin?: string }[];
  /** So many LEDs, or strings of them, side by side behind one resistor. */
  readonly sideBySide?: number;
  /** Node that feeds the load. */
  readonly supply?: string;
  /** Its current may flow either way: it lies in an H-bridge. */
  readonly bridged?: true;
  /** Channels of an array that switch it, as account ids. */
  readonly channels?: readonly string[];
  /** The common pin of an array's clamps is tied below the load's supply: by the typical build, or only by the worst. */
  readonly clampedBelow?: { readonly array: string; readonly common: string; readonly surely: boolean };
  /** The common pin of an array's clamps is tied to another node than feeds the load. */
  readonly clampedTo?: { readonly array: string; readonly common: string };
  readonly board?: BoardWiring;
  /** Figures a cure needs. */
  readonly figures?: { readonly coilVolts?: number };
}

/** A relay board's supplies and grounds. */
export interface BoardWiring {
  readonly channels: number;
  readonly logic?: string;
  readonly coil?: string;
  readonly jumper: 'fitted' | 'removed';
  readonly hasJumper: boolean;
  /** Inputs and coils are fed at one terminal: it cannot have two supplies. */
  readonly oneTerminal: boolean;
  readonly grounds: 'joined' | 'separate';
  readonly isolation: 'wanted' | 'not-needed';
  /** `unknown`: a black box of which nobody says whether it has couplers. */
  readonly coupling: 'opto' | 'transistor' | 'none' | 'unknown';
  /** Its inputs take their current from the logic supply: active low, through a coupler or nobody knows what. */
  readonly fedByLogic: boolean;
  readonly terminals: { readonly [role: string]: string };
}
