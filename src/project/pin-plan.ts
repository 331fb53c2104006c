/** The pins of a project: who uses them for what, their accounts and sums, and what they do at boot. */
import type { Direction, LimitPlan } from '../loads/account-plan.js';
import type { BootState } from '../loads/circuit-plan.js';
import type { Path } from '../source/place.js';

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
