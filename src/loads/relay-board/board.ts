/** A relay board as the file sets it up: what all of its channels share. */
import type { CoilFigures } from '../coil-figures.js';
import type { Drive } from '../drivers/drive.js';
import type { Part } from '../drivers/row.js';
import type { Figures } from '../figures.js';
import type { BoundPin, LoadInput, NetworkSketch } from '../lowering.js';
import type { AccountPlan } from '../account-plan.js';
import type { BoardWiring } from '../circuit-plan.js';
import type { Fitted } from './fitted.js';

/** What an input drives: a coupler's LED, a transistor's base, the coil itself, or nobody knows what. */
export type Coupling = 'opto' | 'transistor' | 'none' | 'black-box';
/** Where an indicator sits, if there is one. */
export type Indicator = 'none' | 'in-series' | 'parallel' | 'across-coil';

export interface Board {
  readonly input: LoadInput;
  /** Figures of its inputs. */
  readonly inside: Figures;
  /** Level of an input that switches it on, as its parts have it. */
  readonly active: 'high' | 'low';
  /** The file says the other one. */
  readonly inverted: boolean;
  readonly coupling: Coupling;
  readonly indicator: Indicator;
  /** Node that feeds the inputs; undefined when nothing does. */
  readonly logic: string | undefined;
  /** Node that feeds the coils; undefined when nothing does. */
  readonly supply: string | undefined;
  /** Undefined for a black box of which only the board's draw is known. */
  readonly coil: CoilFigures | undefined;
  /** What switches a coil, from the input outwards, most often one transistor; undefined where there is none, or nobody knows. */
  readonly output: readonly Part[] | undefined;
  readonly wiring: BoardWiring;
}

/** One channel of a board with its pin bound and its coil's supply known. */
export interface Channel {
  readonly board: Board;
  /** 'vents.2'. */
  readonly circuit: string;
  readonly path: readonly (string | number)[];
  readonly pin: BoundPin;
  /** Node that feeds its coil. */
  readonly supply: string;
  /** What the builder fitted at the input besides. */
  readonly fitted: Fitted;
}

/** The front of a channel: what leads from the pin to the transistor that switches the coil. */
export interface Front {
  /** What the transistor's base or gate hangs on. */
  readonly drive: Drive;
  /** Nodes that the drive's ties need in the network of the transistor's input. */
  readonly inner: readonly string[];
  readonly networks: readonly NetworkSketch[];
  readonly accounts: readonly AccountPlan[];
}
