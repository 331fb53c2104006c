/** Signals between a pin of ours and a load or an expander: which way they go, and what stands at the other end. */
import { closed } from '../../quantity/quantity.js';
import type { Figures } from '../figures.js';
import { rating } from '../limits.js';
import type { BoundPin, LoadInput } from '../lowering.js';
import type { LimitPlan } from '../account-plan.js';
import type { Origin } from '../branch-plan.js';
import type { Interval } from '../../quantity/interval.js';
import type { InputPin, Threshold, Thresholds } from './line.js';

/** What stands at the other end of a signal. */
export interface SignalEnd {
  /** What feeds it. */
  readonly supply?: string;
  /** A resistor that it has on its bus lines, to its own supply. */
  readonly pullUp?: { readonly ohms: Interval; readonly origin: Origin };
  /** A resistor in the line, between the pin and the load, ohms. */
  readonly series?: Interval;
  /** The pin of a chip that reads it. */
  readonly reader?: InputPin;
  /** It hangs on the pin as a load does: several of them may, as long as they are driven alike. */
  readonly isOutput?: true;
  /** It reads high from this voltage, whatever its supply, volts. */
  readonly highFrom?: number;
  /** Supplies that it works on, where the file does not say what feeds it, volts. */
  readonly works?: Interval;
  /** The levels that its maker publishes of its inputs. */
  readonly thresholds?: Thresholds;
  /** The most that its inputs bear, whatever its supply, volts from ground. */
  readonly bears?: LimitPlan;
}

/** One signal of the project, its pin bound. */
export interface Signal extends SignalEnd {
  /** The pin as an output and as an input. */
  readonly output: BoundPin;
  readonly input: InputPin;
  readonly by: string;
  readonly role: string;
  readonly path: readonly (string | number)[];
}

const BUS = new Set(['sda', 'scl', 'i2c-data', 'i2c-clock']);
const OURS = new Set([
  ...[
    'data',
    'clock',
    'latch',
    'din',
    'data-in',
    'mosi',
    'sck',
    'sclk',
    'clk',
    'cs',
    'ss',
    'select',
    'chip-select',
    'dc',
  ],
  ...[
    'reset',
    'rst',
    'enable',
    'en',
    'oe',
    'trig',
    'trigger',
    'pwm',
    'signal',
    'step',
    'dir',
    'direction',
    'control',
    'in',
  ],
]);
const THEIRS = new Set([
  ...['miso', 'echo', 'dout', 'do', 'data-out', 'out', 'output', 'int', 'irq', 'interrupt', 'busy', 'ready', 'tx'],
]);

/** Which way a signal goes by its role: a line of a bus, ours to drive, theirs; undefined where the role does not tell. */
export function wayOfSignal(role: string): 'bus' | 'ours' | 'theirs' | undefined {
  const name = role.toLowerCase();
  return BUS.has(name) ? 'bus' : OURS.has(name) ? 'ours' : THEIRS.has(name) ? 'theirs' : undefined;
}

/** Servos read high from here, whatever their supply, volts (rule 8 of the format: practice). */
const SERVO_HIGH = 3;

/** What stands at the far end of a load's signals: its supply, and the resistors it has on its bus lines. */
export function signalEnd({ entry, bench, figures, path, type }: LoadInput): SignalEnd {
  const supply = entry['supply'] === undefined ? undefined : bench.node(entry['supply'], [...path, 'supply']);
  const pullUp = figures.figure('pull-up', 'resistance');
  return {
    ...(supply !== undefined && { supply }),
    ...(pullUp && { pullUp: { ohms: closed(pullUp.quantity), origin: pullUp.origin } }),
    ...(type === 'servo' && { highFrom: SERVO_HIGH }),
    ...published(figures),
  };
}

/** The control lines of an array: its logic, by what its maker says of that. @param supply node that feeds it */
export function controlEnd(figures: Figures, supply: string | undefined): SignalEnd {
  const works = figures.interval('supply-voltage', 'voltage');
  const levels = published(figures);
  return supply !== undefined ? { supply, ...levels } : works ? { works, ...levels } : {};
}

/** What a load's maker says of its inputs: up to one voltage they surely read low, from another on high, and what they bear. */
function published(figures: Figures): Pick<SignalEnd, 'thresholds' | 'bears'> {
  const bears = rating(figures, 'input-maximum', 'voltage', { margin: 'none' });
  const asShare = /%/.test(figures.text('input-threshold') ?? '');
  const figure = figures.figure('input-threshold', asShare ? 'ratio' : 'voltage');
  if (figure === undefined) return bears ? { bears } : {};
  const { quantity, origin } = figure;
  const { min, max } = closed(quantity);
  const level = (stated: number): Threshold => ({
    volts: (supply) => (asShare ? stated * supply : stated),
    stated: quantity.stated,
    origin,
  });
  return { thresholds: { low: level(min), high: level(max) }, ...(bears && { bears }) };
}
