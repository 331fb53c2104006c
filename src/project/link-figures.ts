/**
 * What stands between two nodes of the supply tree, read from its figures: a fuse, a diode, a limiter, a switch, a
 * regulator. A board's own parts and a project's derived supplies are told in the same words.
 */
import type { Figures } from '../loads/figures.js';
import { junctionSpread } from '../loads/laws.js';
import { assumed, orInPeaks, rating } from '../loads/limits.js';
import type { LimitPlan } from '../loads/account-plan.js';
import type { Interval } from '../quantity/interval.js';
import { exactly } from '../quantity/interval.js';
import type { Point } from '../quantity/points.js';
import { interpolate } from '../quantity/points.js';
import { closed } from '../quantity/quantity.js';
import type { Link, Reverse } from './tree-plan.js';

/** Where a link lies, and what it is called. */
export type LinkBase = Pick<Link, 'id' | 'title' | 'from' | 'to' | 'path'>;

/** A regulator's input when nobody says so, volts (rule 8 of the format). */
const USUAL_INPUT = { low: 5.5, high: 15 };
/** What a diode that nobody describes drops, volts: from a Schottky one at little current to a silicon one at much. */
const USUAL_DROP: Interval = { min: 0.2, typ: 0.5, max: 1 };
/** Thermal resistance to try where nobody states one, K/W (rule 8). */
const TRIED_THERMAL = 400;
/** What a regulator's junction bears where nobody says so, °C: most are made to work at 125, and shut down before 150 (common practice). */
const USUAL_JUNCTION: Interval = { min: 125, typ: 125, max: 150 };
/** Resistance of a fuse or switch that nobody describes, ohms. */
const USUAL_OHMS: Interval = { min: 0, typ: 0.1, max: 0.2 };

export function linkOf(figures: Figures, type: string, base: LinkBase): Link {
  const reverse = figures.word('reverse') as Reverse | undefined;
  const known = reverse ? { reverse } : {};
  switch (type) {
    case 'fuse':
      return { ...base, ...known, kind: 'fuse', ohms: ohmsOf(figures), ...fuseLimit(figures, base.id) };
    case 'limiter':
    case 'switch':
      // One that says what it drops, and not its resistance, drops that whatever the current.
      if (figures.nearest('resistance', 'drop') === 'drop') return diode(figures, base);
      return { ...base, ...known, kind: type, ohms: ohmsOf(figures), ...currentLimit(figures, base.id, 'operating') };
    case 'diode':
      return diode(figures, base);
    case 'linear-regulator':
    case 'switching-regulator':
      return { ...regulator(figures, base, type), ...known };
    default:
      return { ...base, kind: 'wire', limits: [] };
  }
}

function ohmsOf(figures: Figures): Interval {
  const stated = figures.interval('resistance', 'resistance');
  if (stated === undefined) figures.assume('resistance: 0 to 0.2 Ω, since nobody states it');
  return stated ?? USUAL_OHMS;
}

/** What a source may give: steadily, and in peaks where that is stated apart. */
export const mostGiven = (figures: Figures): LimitPlan | undefined =>
  orInPeaks(figures, rating(figures, 'current', 'current', { grade: 'operating' }));

/** What it may carry. A board's diode calls it `maximum-current`. */
function currentLimit(figures: Figures, id: string, grade: 'absolute' | 'operating'): Pick<Link, 'limits' | 'missing'> {
  const limit = orInPeaks(figures, rating(figures, 'maximum-current', 'current', { grade })) ?? mostGiven(figures);
  if (limit) return { limits: [limit] };
  return { limits: [], missing: { figure: 'current', asks: `what current may ${id} carry (its \`current\`)?` } };
}

/** A diode by its curve, or by one drop whatever the current. It lets nothing flow back. */
export function diode(figures: Figures, base: LinkBase): Link {
  const key = figures.nearest('forward-voltage', 'drop') ?? 'drop';
  const curve = figures.curve(key, 'voltage', 'current');
  const shape = { ...base, kind: 'diode' as const, ...currentLimit(figures, base.id, 'absolute') };
  if (curve === undefined) {
    figures.assume('drop of a diode: 0.2 to 1 V, since nobody states it');
    return { ...shape, drop: USUAL_DROP };
  }
  const [only] = curve.points;
  if (curve.points.length === 1 && only!.anywhere) return { ...shape, drop: only!.value, origin: curve.origin };
  return { ...shape, law: junctionSpread(curve, { ideality: 1.5 }), origin: curve.origin };
}

/** A resettable fuse holds less the warmer it is. */
function fuseLimit(figures: Figures, id: string): Pick<Link, 'limits' | 'missing'> {
  const hold = figures.curve('hold', 'current', 'temperature');
  if (hold === undefined) {
    if (!figures.says('current'))
      return { limits: [], missing: { figure: 'hold', asks: `what current does ${id} hold (its \`hold\`)?` } };
    return currentLimit(figures, id, 'operating');
  }
  const at23 = hold.points.find((p) => p.at >= 20) ?? hold.points[0]!;
  return {
    limits: [
      {
        value: (s) => Math.max(interpolate(hold.points, s.ambient).value.min, 0),
        stated: at23.anywhere ? at23.quantity.stated : `${at23.quantity.stated} at ${at23.at} °C`,
        grade: 'operating',
        isFunction: true,
        margin: 'current',
        origin: hold.origin,
        condition: 'hold current at the ambient',
      },
    ],
  };
}

function regulator(figures: Figures, base: LinkBase, kind: 'linear-regulator' | 'switching-regulator'): Link {
  const voltage = figures.figure('voltage', 'voltage');
  const volts = voltage ? closed(voltage.quantity) : exactly(0);
  const limit = mostGiven(figures);
  const quiescent = figures.figure('quiescent', 'current');
  if (quiescent === undefined && !figures.masked('quiescent'))
    figures.assume('its own current: none counted, since nobody states its `quiescent`');
  const dropout = figures.curve('dropout', 'voltage', 'current', { min: () => 0 });
  const shape = {
    ...base,
    kind,
    volts,
    quiescent: quiescent ? closed(quiescent.quantity, { min: () => 0, max: (x) => 1.5 * x }) : exactly(0),
    limits: limit ? [limit] : [],
    ...(!limit && { missing: { figure: 'current', asks: `what current may ${base.id} give (its \`current\`)?` } }),
    ...(voltage && { origin: voltage.origin }),
    ...(dropout && { dropout: dropout.points }),
  };
  if (kind === 'switching-regulator') {
    const efficiency = figures.curve('efficiency', 'ratio', 'current');
    if (efficiency === undefined) figures.assume('efficiency: 75 to 95 %, since nobody states it');
    const step = figures.word('step');
    return {
      ...shape,
      efficiency: efficiency?.points ?? [{ at: 0, value: { min: 0.75, typ: 0.85, max: 0.95 } }],
      ...((step === 'down' || step === 'up' || step === 'both') && { step }),
      ...inputLimits(figures, undefined),
    };
  }
  const usual = volts.typ >= 5 || (dropout && highest(dropout.points) >= 1) ? USUAL_INPUT.high : USUAL_INPUT.low;
  return {
    ...shape,
    ...inputLimits(figures, usual),
    heat: heatOf(figures, base.id),
  };
}

/** What a linear regulator's loss is held to. Without a thermal resistance it is tried at a bad one: it holds, or is unproven. */
function heatOf(figures: Figures, id: string): NonNullable<Link['heat']> {
  const thermal = figures.figure('thermal-resistance', 'thermal-resistance');
  const limit =
    rating(figures, 'maximum-junction', 'temperature', { margin: 'temperature' }) ??
    assumed(figures, 'highest junction temperature', USUAL_JUNCTION, 'temperature', { margin: 'temperature' });
  if (thermal) return { thermal: closed(thermal.quantity), limit, origin: thermal.origin };
  figures.assume(`thermal resistance: tried at ${TRIED_THERMAL} K/W, since nobody states it`);
  const asks = `what is the thermal resistance of ${id} as mounted (its \`thermal-resistance\`)?`;
  return { thermal: exactly(TRIED_THERMAL), limit: { ...limit, asks } };
}

/** Highest input voltage: the upper end of the window where one is stated; and the lowest, where that is stated too. */
function inputLimits(figures: Figures, usual: number | undefined): Pick<Link, 'input' | 'leastInput'> {
  const stated = figures.figure('input', 'voltage');
  if (stated) {
    const { max } = stated.quantity;
    // One value alone is the highest.
    const min = stated.quantity.min === max ? undefined : stated.quantity.min;
    const limit = (value: number): LimitPlan => ({
      value,
      stated: stated.quantity.stated,
      grade: 'operating',
      margin: 'none',
      origin: stated.origin,
    });
    return {
      ...(max !== undefined && { input: limit(max) }),
      ...(min !== undefined && { leastInput: { ...limit(min), isFunction: true } }),
    };
  }
  if (usual === undefined) return {};
  figures.assume(`highest input voltage: ${usual} V, since nobody states it`);
  const range = exactly(usual);
  return {
    input: {
      value: usual,
      stated: `${usual} V, assumed`,
      grade: 'practice',
      margin: 'none',
      range,
      origin: { document: 'common practice, no source', basis: 'practice' },
    },
  };
}

const highest = (points: readonly Point[]): number => Math.max(...points.map((p) => p.value.max));
