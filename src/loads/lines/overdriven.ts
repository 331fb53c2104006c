/** A line that stands above the supply of what reads it: whether that bears it, its maker has to say. */
import type { AccountPlan, LimitPlan, LineEnds, Reading, Step } from '../account-plan.js';

/** How far beyond its supply an input may be driven when nobody states it, volts (common practice, no source: what data sheets allow without a clamp current). */
const ALLOWED = 0.3;

/**
 * What a pin without a junction to its supply bears, volts from ground: such pins are made to stand 5 V while their chip lives on
 * 3.3 V, their data sheets state 5.5 V, and damage begins somewhat above. Common practice, no source.
 */
export const UNCLAMPED = { min: 5.5, typ: 6, max: 6.5 };

/** The limit of such a pin. */
export const UNCLAMPED_LIMIT: LimitPlan = {
  value: UNCLAMPED.min,
  stated: `${UNCLAMPED.min} V, at the most ${UNCLAMPED.max} V, which pins without a clamp to their supply bear`,
  grade: 'practice',
  margin: 'none',
  range: UNCLAMPED,
  origin: { document: 'common practice, no source', basis: 'practice' },
};

/** The account of a line at a pin that has no junction to its supply. */
export const unclampedAccount = (o: Overdriven): AccountPlan => overdrivenAccount({ ...o, bears: UNCLAMPED_LIMIT });

export interface Overdriven {
  readonly id: string;
  readonly title: string;
  readonly circuit: string;
  readonly path: readonly (string | number)[];
  readonly node: string;
  readonly rail: string;
  readonly ends: LineEnds;
  readonly off: boolean;
  /** What it bears whatever its supply, volts from ground; without it, its supply and a little more. */
  readonly bears?: LimitPlan;
}

export const overdrivenAccount = (o: Overdriven): AccountPlan => ({
  id: o.id,
  kind: 'level',
  title: `${o.title}, above its supply`,
  quantity: 'voltage',
  direction: 'injected',
  circuits: [o.circuit],
  path: o.path,
  recipes: ['raised', 'lowered'],
  line: o.ends,
  ...(o.off && { off: true as const }),
  read: (s) => s.voltage(o.node),
  limits: [o.bears ?? beyondSupply(o)],
  steps: (s) => [o.bears ? standing(o, s) : allowed(o, s)],
});

const beyondSupply = ({ rail, title }: Overdriven): LimitPlan => ({
  value: (s) => s.voltage(rail) + ALLOWED,
  stated: `its supply and ${ALLOWED} V, assumed`,
  grade: 'practice',
  margin: 'none',
  asks: `what voltage does ${title} bear beyond its supply?`,
  origin: { document: 'common practice, no source', basis: 'practice' },
});

const standing = ({ node }: Overdriven, s: Reading): Step => ({
  name: 'V',
  says: 'what stands at the pin, which leads nothing away to its supply',
  formula: 'V_pin',
  with: { V_pin: [s.voltage(node), 'V'] },
  gives: [s.voltage(node), 'V'],
});

const allowed = ({ rail }: Overdriven, s: Reading): Step => ({
  name: 'V_allowed',
  says: 'as far as an input may be driven without more being known of it',
  formula: 'V_supply + V_beyond',
  with: { V_supply: [s.voltage(rail), 'V'], V_beyond: [ALLOWED, 'V'] },
  gives: [s.voltage(rail) + ALLOWED, 'V'],
});
