/** What an account asks of the solver: how it is read, and in which corners of which moments. */
import type { AccountKind, Direction, LimitPlan, QuantityName, Step } from '../loads/account-plan.js';
import type { Path } from '../source/place.js';
import type { Shares } from './bookings.js';
import type { ModeSearch } from './moments.js';
import type { Solution } from './solution.js';
import type { Candidate } from './solver.js';
import type { Link } from '../project/tree-plan.js';

export interface Question {
  readonly id: string;
  readonly kind: AccountKind;
  readonly title: string;
  readonly quantity: QuantityName;
  readonly direction: Direction;
  readonly path: Path;
  readonly limits: readonly LimitPlan[];
  readonly missing?: { readonly figure: string; readonly asks: string };
  /** Questions of one twin key come to the same but for the circuit's name. */
  readonly twin?: string;
  readonly circuit?: string;
  /** SI; undefined when a figure for it is missing. */
  readonly read: (s: Solution) => number | undefined;
  /** Whose current it is, where the account is a sum of currents. */
  readonly shares?: (s: Solution) => Shares;
  readonly steps: (s: Solution) => readonly Step[];
  /** The corners to try in a mode; none when the mode does not concern it. */
  readonly candidates: (mode: ModeSearch) => readonly Candidate[];
  /** Those of them that tell which mode is the worst. */
  readonly probes: (mode: ModeSearch) => readonly Candidate[];
}

/** Which accounts are wanted. */
export type Asks = (of: Pick<Question, 'id' | 'quantity' | 'direction'>) => boolean;

/** A question of the supply tree without its corners. */
export type TreeQuestion = Omit<Question, 'candidates' | 'probes'> & {
  /** The node whose feed it is about. */
  readonly at: string;
  /** The regulator whose heat it is about instead. */
  readonly heated?: Link;
  /** Kelvins that so many amperes more through it warm it by, on average over a period of the pulses. */
  readonly warmedBy?: (s: Solution, amps: number) => number;
  /** A voltage is highest where little is drawn and lowest where much is. */
  readonly isVoltage?: true;
  /** It is at its worst where the voltage is lowest, though it is asked for at most so much. */
  readonly sinks?: true;
};
