/**
 * What is pushed into a pin beyond its supply, or drawn out of it below ground: it flows through the pin's clamps. A chip whose
 * supply is dead is taken at 0 V: what then stands at its pin feeds it through the pin.
 */
import { branchCurrent } from '../../circuit/branch.js';
import { junctionAt, junctionVoltage } from '../../circuit/junction.js';
import type { Interval } from '../../quantity/interval.js';
import type { AccountPlan, LimitPlan, LineEnds, Reading, Step } from '../account-plan.js';
import type { InputPin } from './line.js';
import { inflowSteps } from './node-working.js';
import { PIN_CLAMP } from './pin-clamp.js';

/** What no data sheet forbids, amperes: up to the least a note, up to the most a strain, more a breach (rule 18 of the format). */
export const UNPUBLISHED = { min: 1e-4, typ: 1e-3, max: 1e-3 };

/**
 * The same while the chip's own supply is dead and what drives the pin lives, amperes: no mode states it, and it may come
 * about whenever one is switched on before the other, so that it breaks nothing before what logic families' clamps are rated
 * for (20 mA, an absolute maximum; common practice, no source).
 */
export const UNPUBLISHED_DEAD = { min: 1e-4, typ: 1e-3, max: 20e-3 };

/** The limit of what no data sheet allows. @param most its upper end, in words */
export const unpublished = (range: Interval, most: string): LimitPlan => ({
  value: range.min,
  stated: `0.1 mA, up to ${most} at the most, since none is published`,
  grade: 'practice',
  margin: 'none',
  range,
  origin: { document: 'common practice, no source', basis: 'practice' },
});

/** A way to the pin: the parts in series on it, and the node at its far end. */
export interface Way {
  readonly parts: readonly string[];
  /** Absent: ground, or a supply that is dead with the chip. */
  readonly node?: string;
}

export interface Injection {
  readonly circuit: string;
  readonly path: readonly (string | number)[];
  readonly pin: InputPin;
  readonly ends: LineEnds;
  readonly off: boolean;
  /** Node of the line at the pin. */
  readonly node: string;
  /** Parts that are clamps, as far as they stand in the network. */
  readonly clamps: readonly string[];
  /** One part of each other branch at the node. */
  readonly parts: readonly string[];
}

const shape = ({ circuit, path, ends, off }: Injection) => ({
  kind: 'pin' as const,
  quantity: 'current' as const,
  direction: 'injected' as const,
  circuits: [circuit],
  path,
  recipes: ['pressed', 'lowered', 'eased'] as const,
  line: ends,
  ...(off && { off: true as const }),
});

/** The account of what a live pin has to lead away. */
export function injectionAccount(i: Injection): AccountPlan {
  const { pin, clamps } = i;
  const [only] = clamps;
  return {
    ...shape(i),
    id: pin.account,
    title: `pin ${pin.label}, pushed in`,
    read: (s) => Math.max(0, ...clamps.map((part) => s.current(part))),
    limits: pin.injected.length > 0 ? pin.injected : [unpublished(UNPUBLISHED, '1 mA')],
    ...(only !== undefined && clamps.length === 1 && { books: [{ circuit: i.circuit, part: only }] }),
    steps: (s) => liveSteps(i, s),
  };
}

/** The account of what flows through a pin into its chip's supply while that is dead and what drives the pin lives. */
export function deadAccount(i: Injection, ways: readonly Way[]): AccountPlan {
  const { pin } = i;
  const condition = `while ${pin.rail} is dead`;
  const limits = pin.injected.length > 0 ? pin.injected : [unpublished(UNPUBLISHED_DEAD, '20 mA')];
  return {
    ...shape(i),
    id: i.circuit,
    title: `pin ${pin.label}, pushed in ${condition}`,
    read: (s) => deadCurrent(ways, s).amps,
    limits: limits.map((l) => ({ ...l, condition })),
    steps: (s) => deadSteps(ways, s),
  };
}

/** The pin stands one clamp beyond its supply; what flows in from all sides leaves through the clamp. */
function liveSteps({ clamps, node, parts }: Injection, s: Reading): Step[] {
  const part = clamps.reduce((most, c) => (s.current(c) > s.current(most) ? c : most));
  const branch = s.branch(part);
  if (branch === undefined) return [];
  const drop = branch.from.volts - branch.to.volts;
  const above = branch.from.node === node;
  const amps = s.current(part);
  return [
    {
      name: 'V_pin',
      says: above ? 'the pin stands one clamp above its supply' : 'the pin stands one clamp below ground',
      formula: above ? 'V_supply + V_clamp' : '0 - V_clamp',
      with: { ...(above && { V_supply: [branch.to.volts, 'V'] as const }), V_clamp: [drop, 'V'] },
      gives: [s.voltage(node), 'V'],
    },
    ...inflowSteps(s, node, parts, above ? 1 : -1, amps, 'what flows in there, and leaves through the clamp'),
  ];
}

/** The ways to a pin as one source: its open voltage and its resistance. */
function together(ways: readonly Way[], s: Reading): { readonly volts: number; readonly ohms: number } {
  let [current, conductance] = [0, 0];
  for (const { parts, node } of ways) {
    const ohms = parts.reduce((sum, part) => sum + s.ohms(part), 0);
    conductance += 1 / ohms;
    current += (node === undefined ? 0 : s.voltage(node)) / ohms;
  }
  return { volts: current / conductance, ohms: 1 / conductance };
}

function deadCurrent(ways: readonly Way[], s: Reading): { readonly amps: number; readonly drop: number } {
  const { volts, ohms } = together(ways, s);
  const law = junctionAt(s.typical ? PIN_CLAMP.typ : PIN_CLAMP.min, s.ambient);
  const amps = branchCurrent({ resistance: ohms, drop: 0, junctions: [law] }, volts);
  return { amps, drop: junctionVoltage(law, amps) };
}

function deadSteps(ways: readonly Way[], s: Reading): Step[] {
  const { volts, ohms } = together(ways, s);
  const { amps, drop } = deadCurrent(ways, s);
  return [
    {
      name: 'I',
      says: 'what flows through the pin’s clamp into the dead supply: what stands at the pin’s end of the line with nothing drawn, less the clamp, over the resistance of the line',
      formula: '(V_open - V_clamp) / R_line',
      with: { V_open: [volts, 'V'], V_clamp: [drop, 'V'], R_line: [ohms, 'Ω'] },
      gives: [amps, 'A'],
    },
  ];
}
