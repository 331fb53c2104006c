/** Signal lines: what stands at a pin that reads, what holds it, and what becomes of it when more is pushed in than it takes. */
import type { Interval } from '../../quantity/interval.js';
import type { LimitPlan } from '../account-plan.js';
import type { Origin } from '../branch-plan.js';
import type { LineFact } from '../circuit-plan.js';
import type { Path } from '../../source/place.js';
import type { Lowered } from '../lowering.js';

/** A guaranteed input level. */
export interface Threshold {
  /** Volts at a supply voltage, volts. */
  readonly volts: (supply: number) => number;
  /** As its source states it. */
  readonly stated: string;
  readonly origin: Origin;
}

/** Up to `low` an input surely reads low, from `high` on it surely reads high. */
export interface Thresholds {
  readonly low: Threshold;
  readonly high: Threshold;
}

/** A resistor that holds a pin: built into the chip, or fitted at the pin. */
export interface Pull {
  /** 'main.D8.pull', 'main.D8.pull-up'. */
  readonly part: string;
  readonly to: 'rail' | 'ground';
  readonly ohms: Interval;
  readonly origin: Origin;
  /** Built into the chip: it acts only while the pin is an input. */
  readonly inside: boolean;
}

/** A pin that reads. */
export interface InputPin {
  /** 'main.A1'. */
  readonly account: string;
  /** As sentences say it: with its owner where there are several controllers. */
  readonly label: string;
  readonly owner: string;
  /** Node that feeds the chip. */
  readonly rail: string;
  readonly thresholds?: Thresholds;
  /** Published limits of what may be pushed into it beyond its supply or below ground. */
  readonly injected: readonly LimitPlan[];
  /** A junction leads from the pin to its supply. */
  readonly clamped: boolean;
  readonly pulls: readonly Pull[];
  /** Leakage of the input, amperes. */
  readonly leakage: Interval;
}

/** Whether what comes from a node pulls a line down that others hold higher. @param nodes all that hold or drive the line high */
export const pullsDown = (volts: (node: string) => number, node: string, nodes: readonly string[]): boolean =>
  volts(node) < 0.95 * Math.max(...nodes.map(volts));

/** What reads a line, as far as a junction leads from it to its supply: the way into a chip or module that is dead. */
export interface LineEnd {
  /** The line's node at it. */
  readonly node: string;
  /** Node that feeds it. */
  readonly rail: string;
  /** The line's circuit. */
  readonly about: string;
  /** As sentences say it: 'pin D0', 'din of strip'. */
  readonly told: string;
  /** The chip or load that reads it. */
  readonly owner: string;
  readonly path: Path;
  /** The pin of ours that drives the line, as an account id. */
  readonly source?: string;
  /** What its maker allows to be pushed in, where no account of the line asks for that already. */
  readonly injected: readonly LimitPlan[];
  /** Nobody publishes that it has such a junction: most inputs have. */
  readonly assumed?: true;
}

/** The part that is the clamp of a line's end while what reads it is dead. */
export const clampOf = ({ told }: Pick<LineEnd, 'told'>): string => `${told}, its clamp`;

/** A lowered line, who reads it, and what of its wiring a rule reports as it stands. */
export interface LoweredLine extends Lowered {
  readonly ends: readonly LineEnd[];
  readonly facts: readonly LineFact[];
}

export const NO_LINE: LoweredLine = { circuits: [], networks: [], accounts: [], ends: [], facts: [] };
