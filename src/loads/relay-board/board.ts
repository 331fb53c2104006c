/** A relay board as the file sets it up: what all of its channels share. */
import type { CoilFigures } from '../coil-figures.js';
import type { BoundPin, Hook, LoadInput, NetworkSketch } from '../lowering.js';
import type { AccountPlan, BoardWiring, Reading, Step } from '../plan.js';

export interface Board {
  readonly input: LoadInput;
  readonly active: 'high' | 'low';
  readonly coupling: 'opto' | 'transistor' | 'none';
  readonly indicator: string;
  /** Node that feeds the inputs; undefined when nothing does. */
  readonly logic: string | undefined;
  /** Node that feeds the coils; undefined when nothing does. */
  readonly supply: string | undefined;
  readonly coil: CoilFigures;
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
  readonly fitted: readonly Hook[];
}

/** What leads from the pin to the base of the output transistor. */
export interface Stage {
  readonly networks: readonly NetworkSketch[];
  readonly accounts: readonly AccountPlan[];
  /** Amperes that reach the base. */
  readonly baseCurrent: (s: Reading) => number;
  readonly baseSteps: (s: Reading) => readonly Step[];
  /** The same with a coupler at the end of its life. */
  readonly aged?: (s: Reading) => number;
  /** Amperes that the transistor would let through when the input is off, before the coil limits them. */
  readonly leak: (s: Reading) => number;
  readonly leakSteps: (s: Reading) => readonly Step[];
}
