/** What rules have to know of a circuit: how it is switched and wired, what it is there for, what it does at boot. */
import type { ContactLoadKind } from '../circuit/contact.js';
import type { Interval } from '../quantity/interval.js';
import type { Path } from '../source/place.js';
import type { JunctionSpread } from './branch-plan.js';

/** What a pin does until firmware runs; `any`: its register wakes as it likes, and stays so until it is first set. */
export const BOOT_STATES = ['floating', 'pulled-up', 'pulled-down', 'high', 'low', 'pulses', 'any'] as const;
export type BootState = (typeof BOOT_STATES)[number];

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
  /** Its relay has no contact on the other side: form A or B. */
  readonly oneSided?: true;
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
