import type { Dimension } from '../quantity/dimension.js';

/** What a named figure of a profile measures, and what it may hold at. */
export interface Measure {
  readonly of: readonly Dimension[];
  readonly at?: Dimension;
  /** Which way the figure goes when its condition rises; absent: either. */
  readonly trend?: 'up' | 'down';
}

const of = (...dimensions: Dimension[]): Measure => ({ of: dimensions });
const at = (dimension: Dimension, condition: Dimension, trend?: 'up' | 'down'): Measure => ({
  of: [dimension],
  at: condition,
  ...(trend ? { trend } : {}),
});
/** Volts, or a share of the rated voltage. */
const share = of('voltage', 'ratio');
const shareByHeat: Measure = { of: ['voltage', 'ratio'], at: 'temperature' };
const rating = at('current', 'temperature', 'down');

/** Words that carry a source as figures do; the schema knows which there are. */
export const WORDS: ReadonlySet<string> = new Set(['reverse']);

/** Every figure that a profile may state. A name that is not here is a figure nobody would read. */
export const MEASURES: Readonly<Record<string, Measure>> = {
  // chips
  operating: of('voltage'),
  absolute: of('voltage'),
  'output-high': at('voltage', 'current'),
  'output-low': at('voltage', 'current'),
  source: of('resistance'),
  sink: of('resistance'),
  'pull-up': of('resistance'),
  'pull-down': of('resistance'),
  leakage: of('current'),
  'brown-out': of('voltage'),
  active: of('current'),
  idle: of('current'),
  asleep: of('current'),
  peak: of('current'),
  'peak-time': of('time'),
  'peak-every': of('time'),
  pulse: of('time'),
  // supplies and what stands in a supply tree
  voltage: of('voltage'),
  current: rating,
  'peak-current': rating,
  'peak-width': of('time'),
  'peak-duty': of('ratio'),
  'unconfigured-current': of('current'),
  'suspended-current': of('current'),
  'maximum-capacitance': of('capacitance'),
  capacitance: of('capacitance'),
  capacity: at('charge', 'current', 'down'),
  'end-voltage': of('voltage'),
  'self-discharge': at('ratio', 'time', 'up'),
  'open-voltage': of('voltage'),
  resistance: of('resistance'),
  hold: rating,
  trip: rating,
  'current-limit': of('current'),
  dropout: at('voltage', 'current', 'up'),
  quiescent: of('current'),
  efficiency: at('ratio', 'current'),
  input: of('voltage'),
  'thermal-resistance': of('thermal-resistance'),
  'maximum-junction': of('temperature'),
  // diodes, LEDs, couplers
  'forward-voltage': at('voltage', 'current', 'up'),
  'clamp-forward-voltage': at('voltage', 'current', 'up'),
  'clamp-current': of('current'),
  'indicator-drop': at('voltage', 'current', 'up'),
  'indicator-series': of('resistance'),
  'led-drop': at('voltage', 'current', 'up'),
  'led-maximum-current': of('current'),
  'reverse-voltage': of('voltage'),
  'zener-voltage': of('voltage'),
  'recovery-time': of('time'),
  'working-voltage': of('voltage'),
  'clamping-voltage': at('voltage', 'current', 'up'),
  energy: of('energy'),
  'contact-withstand': of('voltage'),
  'transfer-ratio': at('ratio', 'current'),
  'ratio-end-of-life': at('ratio', 'current'),
  series: of('resistance'),
  // transistors and arrays
  gain: at('ratio', 'current'),
  'forced-gain': of('ratio'),
  'gate-charge': of('charge'),
  saturation: at('voltage', 'current', 'up'),
  'base-emitter': at('voltage', 'current', 'up'),
  'base-resistor': of('resistance'),
  threshold: of('voltage'),
  'on-resistance': at('resistance', 'voltage', 'down'),
  'hot-ratio': at('ratio', 'temperature', 'up'),
  'gate-maximum': of('voltage'),
  'maximum-current': rating,
  'maximum-voltage': of('voltage'),
  'channel-current': of('current'),
  'package-current': of('current'),
  'simultaneous-current': at('current', 'ratio', 'down'),
  'input-threshold': of('voltage', 'ratio'),
  avalanche: of('current'),
  'input-resistance': of('resistance'),
  'input-drop': of('voltage'),
  'input-current': at('current', 'voltage', 'up'),
  'input-voltage': at('voltage', 'current', 'up'),
  'input-maximum': of('voltage'),
  'injected-current': of('current'),
  'input-pull-down': of('resistance'),
  // coils, relay boards, modules
  power: of('power'),
  'pull-in': { ...shareByHeat, trend: 'up' },
  'drop-out': share,
  holding: share,
  maximum: { ...shareByHeat, trend: 'down' },
  'maximum-temperature': of('temperature'),
  inductance: of('inductance'),
  'reference-temperature': of('temperature'),
  'board-current': of('current'),
  'on-above': of('voltage'),
  'off-below': of('voltage'),
  'supply-voltage': of('voltage'),
  'maximum-dip': of('voltage'),
  // wires and connectors
  gauge: of('gauge', 'area'),
  'resistance-per-metre': of('resistance'),
  'contact-resistance': of('resistance'),
  rating,
  // solid-state relays
  'on-current': of('current'),
  'off-current': of('current'),
  drop: at('voltage', 'current', 'up'),
  // motors, lamps, pixels
  'minimum-voltage': of('voltage'),
  run: of('current'),
  stall: of('current'),
  'stall-time': of('time'),
  'inrush-ratio': of('ratio'),
  'inrush-time': of('time'),
  'winding-resistance': of('resistance'),
  'both-on': of('ratio'),
  'current-accuracy': of('ratio'),
  'logic-current': of('current'),
  'logic-voltage': of('voltage'),
  'idle-each': of('current'),
  'full-each': of('current'),
  // policies
  'function-voltage': of('ratio'),
  window: of('voltage'),
  temperature: of('ratio'),
  drive: of('ratio'),
};

/** Figures of a policy are shares, whatever their names measure elsewhere, but for those that are told in degrees. */
export const policyMeasure = (name: string): Measure =>
  name === 'temperature-below'
    ? of('temperature-difference')
    : of(name === 'temperature-at-most' ? 'temperature' : 'ratio');
