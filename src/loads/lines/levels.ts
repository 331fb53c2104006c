/** Is a line understood? Its voltage, high and low, against what its receiver surely reads as such. */
import type { AccountPlan, LimitPlan, LineEnds, Reading, Step } from '../account-plan.js';
import type { Threshold, Thresholds } from './line.js';
import { nodeSteps } from './node-working.js';

/** What reads a line. */
export interface Receiver {
  /** The account's name: 'echo', 'bar.data'. */
  readonly id: string;
  /** 'echo at pin A1'. */
  readonly title: string;
  readonly circuit: string;
  readonly path: readonly (string | number)[];
  /** Node at which it reads. */
  readonly node: string;
  /** What feeds it. */
  readonly rail: string;
  /** Published levels; without them the usual shares of its supply are tried. */
  readonly thresholds?: Thresholds;
  /** A fixed voltage from which it reads high as a matter of practice, volts; it has no level of its own for low. */
  readonly highFrom?: number;
  /** One part of each branch at its node. */
  readonly parts: readonly string[];
}

/** Shares of its supply that a receiver reads by when nobody publishes its levels (rule 8 of the format). */
const USUAL = { low: 0.3, middle: 0.5, high: 0.7 };

/** Volts that are rounding are none. */
const settled = (volts: number): number => (Math.abs(volts) < 1e-9 ? 0 : volts);

/** In which state of its circuit the line is at a level, and what pushes or pulls it there. */
export interface LevelState {
  readonly off: boolean;
  readonly ends: LineEnds;
}

/** The account of a line's level, high or low. */
export function levelAccount(r: Receiver, level: 'high' | 'low', state: LevelState): AccountPlan {
  return {
    id: r.id,
    kind: 'level',
    title: `${r.title}, ${level}`,
    quantity: 'voltage',
    direction: level === 'high' ? 'at-least' : 'at-most',
    circuits: [r.circuit],
    path: r.path,
    recipes: level === 'high' ? ['lowered', 'raised'] : ['raised', 'lowered'],
    line: state.ends,
    ...(state.off && { off: true as const }),
    read: (s) => settled(s.voltage(r.node)),
    limits: limitsOf(r, level),
    steps: (s) => [
      ...nodeSteps(s, r.node, r.parts, `voltage of ${r.title} while it is ${level}`),
      ...thresholdSteps(r, level, s),
    ],
  };
}

function limitsOf(r: Receiver, level: 'high' | 'low'): LimitPlan[] {
  const { thresholds: t, rail } = r;
  if (t) {
    // A guaranteed bound is no typical value: an input turns somewhere between its two.
    const value = (s: Reading): number => {
      const volts = s.voltage(rail);
      return s.typical ? (t.low.volts(volts) + t.high.volts(volts)) / 2 : t[level].volts(volts);
    };
    const { stated, origin } = t[level];
    return [{ value, stated, grade: 'operating', isFunction: true, margin: 'function-voltage', origin }];
  }
  const practice = {
    grade: 'practice' as const,
    margin: 'none' as const,
    origin: { document: 'common practice, no source', basis: 'practice' as const },
  };
  if (r.highFrom !== undefined)
    return level === 'low' ? [] : [{ ...practice, value: r.highFrom, stated: `${r.highFrom} V` }];
  const share = (part: number) => (s: Reading) => part * s.voltage(rail);
  const stated = (part: number): string => `${part * 100} % of its supply, assumed`;
  return [
    { ...practice, value: share(USUAL.middle), stated: stated(USUAL.middle) },
    {
      ...practice,
      value: share(USUAL[level]),
      stated: stated(USUAL[level]),
      asks: `${level === 'high' ? 'from' : 'up to'} what voltage does ${r.title} surely read ${level}?`,
    },
  ];
}

/** Where the level that is wanted is a share of the supply, how it comes about. */
function thresholdSteps(r: Receiver, level: 'high' | 'low', s: Reading): Step[] {
  const t: Threshold | undefined = r.thresholds?.[level];
  const supply = s.voltage(r.rail);
  const volts = t === undefined ? (r.highFrom ?? USUAL[level] * supply) : t.volts(supply);
  const name = level === 'high' ? 'V_high' : 'V_low';
  const origin = t?.origin ?? { document: 'common practice, no source' };
  return [
    {
      name,
      says: level === 'high' ? 'from here it surely reads high' : 'up to here it surely reads low',
      formula: 'share * V_supply',
      with: { share: [volts / supply, ''], V_supply: [supply, 'V'] },
      gives: [volts, 'V'],
      sources: [
        `${t?.stated ?? 'usual shares'}: ${origin.document}${'where' in origin && origin.where ? `, ${origin.where}` : ''}`,
      ],
    },
  ];
}
