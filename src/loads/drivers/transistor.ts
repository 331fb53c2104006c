/**
 * What an NPN transistor's figures say and the accounts it opens, wherever its base current comes from: a pin, or a coupler.
 */
import { collectorVoltage, gainAt } from '../../circuit/bipolar.js';
import type { Interval } from '../../quantity/interval.js';
import { interpolate } from '../../quantity/points.js';
import type { Point } from '../../quantity/points.js';
import type { Curve, Figures } from '../figures.js';
import { junctionSpread } from '../laws.js';
import { rating } from '../limits.js';
import type { AccountPlan, LimitPlan, Reading, Step } from '../account-plan.js';
import type { JunctionSpread, Member, Origin } from '../branch-plan.js';
import { heatBy } from './half-driven.js';
import type { Carries } from './ratings.js';
import { carriedCurrent, carriesOf, offVoltage } from './ratings.js';
import { heatAccount, heatOf } from './junction-heat.js';
import type { Heat } from './junction-heat.js';
import type { Switching } from './switching.js';

/** Without a figure (rule 14 of the format). */
const FORCED_GAIN = 10;
const TYPICAL_GAIN = 2;
/** Voltage at which the least gain is stated when nobody says so, volts. */
const GAIN_VOLTAGE = 1;
/** A base-emitter path nobody states, volts at 10 mA. */
const USUAL_BASE: Interval = { min: 0.6, typ: 0.75, max: 0.95 };
/** A silicon base-emitter path is close to an ideal junction. */
const BASE_IDEALITY = 1.2;

export interface Transistor {
  /** Least gain over collector current; undefined when nobody states it. */
  readonly gain?: readonly Point[];
  readonly gainOrigin?: Origin;
  readonly forcedGain: number;
  readonly base: JunctionSpread;
  readonly baseOrigin?: Origin;
  /** Saturation voltage over collector current; its lowest end is a closed switch where none is stated. */
  readonly saturation?: readonly Point[];
  readonly carries: Carries;
  readonly maximumVoltage?: LimitPlan;
  readonly heat: Heat;
}

export function transistorOf(figures: Figures, what: string): Transistor {
  const gain = figures.curve('gain', 'ratio', 'current', { max: (x) => 2 * TYPICAL_GAIN * x });
  const baseCurve = figures.curve('base-emitter', 'voltage', 'current');
  if (baseCurve === undefined)
    figures.assume(`base-emitter voltage of ${what}: 0.6 to 0.95 V at 10 mA, since nobody states it`);
  const forced = figures.interval('forced-gain', 'ratio')?.typ;
  if (forced === undefined) figures.assume(`forced gain of ${what}: ${FORCED_GAIN}, since nobody states it`);
  const saturation = figures.curve('saturation', 'voltage', 'current', { min: (x) => (x > 0 ? 0 : x) });
  const maximumVoltage = rating(figures, 'maximum-voltage', 'voltage', { margin: 'none' });
  return {
    ...(gain && { gain: gain.points.map(typicalGain), gainOrigin: gain.origin }),
    forcedGain: forced ?? FORCED_GAIN,
    base: junctionSpread(baseCurve ?? usualBase(), { ideality: BASE_IDEALITY }),
    ...(baseCurve && { baseOrigin: baseCurve.origin }),
    ...(saturation && { saturation: saturation.points.map((p) => lowest(p)) }),
    carries: carriesOf(figures),
    ...(maximumVoltage && { maximumVoltage }),
    heat: heatOf(figures, what),
  };
}

/** The typical gain is twice the least unless it is stated. */
const typicalGain = (p: Curve['points'][number]): Point => ({
  at: p.at,
  value: {
    ...p.value,
    typ: p.quantity.typ !== undefined && !p.quantity.exact ? p.value.typ : TYPICAL_GAIN * p.value.min,
  },
});

/** Lowest saturation: the lowest figure that is stated, and a closed switch where only a highest one is. */
const lowest = (p: Curve['points'][number]): Point => ({
  at: p.at,
  value: { ...p.value, min: p.quantity.min ?? (p.quantity.typ === undefined ? 0 : p.quantity.exact ? 0 : p.value.typ) },
});

function usualBase(): Curve {
  const quantity = { dimension: 'voltage' as const, ...USUAL_BASE, exact: false, stated: '0.6 to 0.95 V' };
  return {
    points: [{ at: 0.01, value: USUAL_BASE, quantity }],
    origin: { document: 'common practice, no source', basis: 'practice' },
  };
}

/** The gain a corner counts on: the least, less when cold; typically twice that. */
export const gainIn = (t: Transistor, collector: number, s: Reading): number => {
  const { value } = interpolate(t.gain!, collector);
  return s.typical ? value.typ : gainAt(Math.max(value.min, 1), s.ambient);
};

/** The most gain a transistor can have, for what still flows when it is off. */
export const mostGain = (t: Transistor, s: Reading): number => {
  const { value } = interpolate(t.gain!, 0);
  return s.typical ? value.typ : value.max;
};

/** Saturation voltage at a collector current, volts; a closed switch where nobody states one. */
function saturatedAt(t: Transistor, collector: number): Interval {
  if (t.saturation === undefined) return { min: 0, typ: 0, max: 0 };
  const { min, typ, max } = interpolate(t.saturation, collector).value;
  return { min: Math.max(min, 0), typ: Math.max(typ, 0), max: Math.max(max, 0) };
}

/** The drop a transistor puts in series with its load. @param expected amperes that the load takes, about */
export const switchMember = (t: Transistor, part: string, expected: number): Member => ({
  kind: 'drop',
  part,
  volts: saturatedAt(t, expected),
});

/** What the accounts of a transistor need of its circuit. */
export interface TransistorSetting {
  readonly circuit: string;
  /** The driver's own name: 'mist-valve.driver'. */
  readonly id: string;
  readonly path: readonly (string | number)[];
  readonly supply: string;
  /** The part that carries its collector current. */
  readonly load: string;
  /** In sentences, where it is not the driver of its circuit. */
  readonly title?: string;
  /** It conducts while its circuit is off. */
  readonly off?: true;
  /** Networks behind it that load it. */
  readonly loads?: readonly string[];
  /** Amperes that really reach the base. */
  readonly baseCurrent: (s: Reading) => number;
  readonly baseSteps: (s: Reading) => readonly Step[];
  /** The base-emitter path, for its share of the heat. */
  readonly base: string;
  /** What it turns into heat on its way between its states, under pulses. */
  readonly switching?: Switching;
  /** A second, milder look at the same drive: after ageing. */
  readonly aged?: (s: Reading) => number;
}

/** Collector-emitter voltage as driven, volts. */
export function voltsLost(t: Transistor, setting: TransistorSetting, s: Reading): number {
  const collector = s.current(setting.load);
  const inBranch = s.across(setting.id);
  if (t.gain === undefined || collector <= 0) return inBranch;
  const saturation = saturatedAt(t, collector);
  const published = s.typical ? saturation.typ : saturation.max;
  return collectorVoltage(
    collector,
    setting.baseCurrent(s),
    published,
    t.forcedGain,
    gainIn(t, collector, s),
    GAIN_VOLTAGE,
  );
}

/**
 * Volts that it loses beyond its highest saturation, which its branch knows: what it keeps when it is not driven hard enough.
 * The lowest saturation is left to the branch, so that a load is not thought to get less than it may.
 *
 * @param expected collector current that the branch's drop was read off at, amperes
 */
export function shortfallOf(t: Transistor, setting: TransistorSetting, expected: number): (s: Reading) => number {
  const known = saturatedAt(t, expected);
  return (s) => Math.max(voltsLost(t, setting, s) - (s.typical ? known.typ : known.max), 0);
}

/** The sums behind that: how hard it is driven, and what it keeps of its supply then. @param expected as for `shortfallOf` */
export function lostSteps(t: Transistor, setting: TransistorSetting, expected: number, s: Reading): Step[] {
  const [collector, base] = [s.current(setting.load), setting.baseCurrent(s)];
  if (t.gain === undefined || collector <= 0 || base <= 0) return [];
  const stated = t.saturation ? interpolate(t.saturation, collector).value : { typ: 0, max: 0 };
  const published = Math.max(s.typical ? stated.typ : stated.max, 0);
  const [asked, gain] = [collector / base, gainIn(t, collector, s)];
  const kept = voltsLost(t, setting, s);
  const [known, across] = [saturatedAt(t, expected), s.across(setting.id)];
  const highest = s.typical ? known.typ : known.max;
  const whole = across + Math.max(kept - highest, 0);
  const alone = Math.abs(whole - kept) <= 1e-12;
  const gives = [kept, 'V'] as const;
  const name = alone ? 'V_driver' : 'V_kept';
  const saturated = asked <= t.forcedGain || GAIN_VOLTAGE <= published;
  const V_sat = [published, 'V'] as const;
  const V_gain = [GAIN_VOLTAGE, 'V'] as const;
  return [
    {
      name: 'asked',
      says: 'gain that is asked of the transistor',
      formula: 'I_load / I_base',
      with: { I_load: [collector, 'A'], I_base: [base, 'A'] },
      gives: [asked, ''],
    },
    saturated
      ? {
          name,
          says: `no more than the ${t.forcedGain} at which it is stated: its saturation voltage`,
          formula: 'V_sat',
          with: { V_sat },
          gives,
        }
      : asked >= gain
        ? {
            name,
            says: 'more than it surely has: it keeps at least the voltage at which its gain is stated',
            formula: 'V_gain',
            with: { V_gain },
            gives,
          }
        : {
            name,
            says: 'what it keeps rises from its saturation voltage to the one at which its least gain is stated',
            formula: 'V_sat + (V_gain - V_sat) * (asked - forced) / (gain - forced)',
            with: { V_sat, V_gain, asked: [asked, ''], forced: [t.forcedGain, ''], gain: [gain, ''] },
            gives,
          },
    ...(alone
      ? []
      : [
          {
            name: 'V_driver',
            says: 'its saturation voltage in this build, and what it keeps beyond the highest one',
            formula: 'V_lowest + max(V_kept - V_highest, 0)',
            with: { V_lowest: [across, 'V'], V_kept: gives, V_highest: [highest, 'V'] },
            gives: [whole, 'V'],
          } satisfies Step,
        ]),
  ];
}

/** Watts from collector to emitter; of one that is not driven all the way the most that it can come to in between. */
function collectorHeat(t: Transistor, setting: TransistorSetting, s: Reading): number {
  const collector = s.current(setting.load);
  const driven = t.gain === undefined ? Infinity : setting.baseCurrent(s) * gainIn(t, collector, s);
  if (driven >= collector) return voltsLost(t, setting, s) * collector;
  return Math.max(GAIN_VOLTAGE * driven, heatBy(s, setting.load, setting.id, driven));
}

export function transistorAccounts(t: Transistor, setting: TransistorSetting): AccountPlan[] {
  const { circuit, id, path, load, supply, title = `driver of ${circuit}`, off, loads } = setting;
  const base = { id, kind: 'driver' as const, circuits: [circuit], path, ...(off && { off }), ...(loads && { loads }) };
  const needed = (s: Reading): number => s.current(load) / gainIn(t, s.current(load), s);
  const stated = t.gainOrigin?.where ? `least gain, ${t.gainOrigin.where}` : 'least gain';
  const drive: AccountPlan = {
    ...base,
    title: `${title}, base current`,
    quantity: 'current',
    direction: 'at-least',
    recipes: ['drive-worst', 'drive-best'],
    read: setting.baseCurrent,
    limits: t.gain
      ? [
          {
            value: needed,
            stated,
            grade: 'operating',
            isFunction: true,
            margin: 'drive',
            ...(t.gainOrigin && { origin: t.gainOrigin }),
            condition: 'collector current over the gain',
          },
          ...(setting.aged
            ? [
                {
                  value: (s: Reading) => needed(s) * (setting.baseCurrent(s) / Math.max(setting.aged!(s), 1e-15)),
                  stated: `${stated}, coupler at the end of its life`,
                  grade: 'operating' as const,
                  isFunction: true as const,
                  mild: true as const,
                  margin: 'none' as const,
                  condition: 'collector current over the gain, with an aged coupler',
                },
              ]
            : []),
        ]
      : [],
    ...(!t.gain && {
      missing: {
        figure: 'gain',
        asks: `what is the least gain of the transistor that is the ${title} (its \`gain\`)?`,
      },
    }),
    steps: (s) => [
      ...setting.baseSteps(s),
      ...(t.gain
        ? [
            {
              name: 'I_needed',
              says: 'base current that carries the load at the least gain',
              formula: 'I_load / gain',
              with: { I_load: [s.current(load), 'A'], gain: [gainIn(t, s.current(load), s), ''] },
              gives: [needed(s), 'A'],
              ...(t.gainOrigin && {
                sources: [`${id}: ${t.gainOrigin.document}${t.gainOrigin.where ? `, ${t.gainOrigin.where}` : ''}`],
              }),
            } satisfies Step,
            ...(setting.aged && !s.typical
              ? [
                  {
                    name: 'I_new',
                    says: 'what has to reach it while the coupler is new, so that as much still does at the end of its life',
                    formula: 'I_needed * I_base / I_aged',
                    with: {
                      I_needed: [needed(s), 'A'],
                      I_base: [setting.baseCurrent(s), 'A'],
                      I_aged: [Math.max(setting.aged(s), 1e-15), 'A'],
                    },
                    gives: [needed(s) * (setting.baseCurrent(s) / Math.max(setting.aged(s), 1e-15)), 'A'],
                  } satisfies Step,
                ]
              : []),
          ]
        : []),
    ],
  };
  const carries = carriedCurrent(base, circuit, load, t.carries, title);
  const bears = t.maximumVoltage ? [offVoltage(base, circuit, supply, t.maximumVoltage, title)] : [];
  const power = (s: Reading): number => collectorHeat(t, setting, s) + s.across(setting.base) * setting.baseCurrent(s);
  const warm = heatAccount(
    { ...base, title: `${title}, junction` },
    t.heat,
    power,
    ['hottest', 'draw-most', 'drive-worst', 'drive-best', 'draw-least'],
    setting.switching,
  );
  const loss = (s: Reading): Step => ({
    name: 'P',
    says: 'what it turns into heat from collector to emitter, at the most where it is not driven all the way, and at its base',
    formula: 'V_CE * I_load + V_BE * I_base',
    with: {
      V_CE: [s.current(load) > 0 ? collectorHeat(t, setting, s) / s.current(load) : 0, 'V'],
      I_load: [s.current(load), 'A'],
      V_BE: [s.across(setting.base), 'V'],
      I_base: [setting.baseCurrent(s), 'A'],
    },
    gives: [power(s), 'W'],
  });
  return [drive, carries, ...bears, { ...warm, steps: (s) => [loss(s), ...warm.steps(s)] }];
}
