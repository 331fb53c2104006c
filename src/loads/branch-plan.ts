/**
 * What every type of load, driver and board is lowered to: members in series on branches, branches in networks. The same code
 * solves them all, so that any load works behind any driver on any pin of any chip.
 */
import type { Junction } from '../circuit/junction.js';
import type { Interval } from '../quantity/interval.js';

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
      /** Most amperes just before a peak, where one lasts so long that it is the most of the draw itself. */
      readonly before?: number;
      /** It peaks when it is switched on: a motor starts. */
      readonly starts?: true;
    })
  | (InSeries & { readonly kind: 'pin'; readonly ohms: Interval })
  | (InSeries & {
      /** A lamp's filament. */
      readonly kind: 'filament';
      /** Volts of its design point, and the amperes it takes there when it is hot. */
      readonly volts: number;
      readonly amps: Interval;
      /** How many times as much it takes cold, for so many seconds, and over the second in which it is switched on (root mean square). */
      readonly cold?: { readonly peak: number; readonly second: number; readonly lasts: number };
    })
  /** Watts taken from whatever reaches it. Only in networks without nodes of their own: its current falls as the voltage rises. */
  | (InSeries & {
      readonly kind: 'power';
      readonly watts: Interval;
      /** What these watts are made of, where a chopper holds a current in windings; they follow the temperature then. */
      readonly held?: HeldCurrent;
    });

/** The current that a chopper holds in each of several windings alike, whatever their resistance. */
export interface HeldCurrent {
  /** Windings that carry it at a time. */
  readonly windings: number;
  /** Amperes in each of them. */
  readonly amps: Interval;
  /** Ohms of a winding at its reference temperature, °C, and the kelvins by which its own heat lifts it above the ambient. */
  readonly ohms: Interval;
  readonly copper: number;
  readonly rise: Interval;
  /** Ohms of both switches in each winding's way. */
  readonly bridge: Interval;
  /** Watts that the shaft gives besides. */
  readonly shaft: Interval;
}

/** Whether a member draws more at times: in a stall, a start, a burst. */
export const hasPeaks = (m: Member): boolean =>
  (m.kind === 'current' && m.peak !== undefined) ||
  (m.kind === 'filament' && m.cold !== undefined) ||
  (m.kind === 'resistance' && m.bypass !== undefined);

/** Whether its peak comes when it is switched on. */
export const isStarting = (m: Member): boolean => hasPeaks(m) && (m.kind !== 'current' || m.starts === true);

/** Whether a branch draws more as its voltage falls. */
export const isFalling = ({ members }: BranchPlan): boolean => members.some((m) => m.kind === 'power');

/** Volts that something keeps for itself at a current: straight lines between points of rising current, which begin at 0 A. */
export interface CurvePoint {
  readonly amps: number;
  readonly volts: Interval;
}

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

/** A way that conducts only while a supply is dead: the clamp of an input, a junction that stands reversed while all live. */
export interface DeadWay {
  /** The part after which it branches off, seen from the pin; or the node that it leads from. */
  readonly from: { readonly after: string } | { readonly node: string };
  /** Node of the supply tree that it leads to: it conducts where that is dead, and what it leads from lives. */
  readonly to: string;
  readonly members: readonly Member[];
  readonly circuit: string;
  /** The one state of its circuit in which it is there. */
  readonly only?: 'on' | 'off';
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
  /** What conducts besides while supplies are dead. */
  readonly whenDead?: readonly DeadWay[];
}
