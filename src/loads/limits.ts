/** Limits from figures: ratings, assumed ranges, limits that move with the temperature. */
import { formatInterval } from '../quantity/print.js';
import type { Dimension } from '../quantity/dimension.js';
import { interpolate } from '../quantity/points.js';
import type { Figure, Figures } from './figures.js';
import type { Grade, LimitPlan, MarginClass } from './account-plan.js';

/**
 * A rating: the least figure stated for it. One written in the project counts as operating; one in a profile has the grade
 * its kind has in data sheets. Points over temperature make it move with the ambient.
 */
export function rating(
  figures: Figures,
  key: string,
  dimension: Dimension,
  { grade = 'absolute' as Grade, margin = 'current' as MarginClass, bound = 'max' as 'min' | 'max' } = {},
): LimitPlan | undefined {
  const curve = figures.curve(key, dimension, 'temperature');
  const first = curve?.points[0];
  if (curve === undefined || first === undefined) return undefined;
  const { points, origin } = curve;
  // A rating written as a range is worth its careful end.
  const careful = (v: { min: number; max: number }): number => (bound === 'max' ? v.min : v.max);
  return {
    value: points.length === 1 ? careful(first.value) : (s) => careful(interpolate(points, s.ambient).value),
    stated:
      points.length === 1
        ? first.quantity.stated
        : `${first.quantity.stated} to ${points.at(-1)!.quantity.stated} by temperature`,
    grade: origin.basis === 'project' ? 'operating' : origin.basis === 'practice' ? 'practice' : grade,
    margin,
    origin,
  };
}

/** A rating for ever, and where the figures state a `peak-current` beside it that one in peaks, amperes. */
export function orInPeaks(figures: Figures, steady: LimitPlan | undefined): LimitPlan | undefined {
  const peak = figures.interval('peak-current', 'current')?.min;
  if (steady === undefined || peak === undefined) return steady;
  const { value } = steady;
  return {
    ...steady,
    value: (s) => (s.peak ? peak : typeof value === 'number' ? value : value(s)),
    stated: `${steady.stated}, in peaks ${figures.text('peak-current')}`,
  };
}

/** An assumed limit with its range: beyond all of it is a breach, inside it a strain. */
export function assumed(
  figures: Figures,
  what: string,
  range: { readonly min: number; readonly typ: number; readonly max: number },
  dimension: Dimension,
  { margin = 'current' as MarginClass, sense = 'at-most' as 'at-most' | 'at-least', isFunction = false } = {},
): LimitPlan {
  const stated = formatInterval(range, dimension);
  figures.assume(`${what}: ${stated}, since nobody states it`);
  return {
    value: sense === 'at-most' ? range.min : (s) => (s.typical ? range.typ : range.max),
    stated: `${stated}, assumed`,
    grade: 'practice',
    margin,
    ...(isFunction ? { isFunction: true as const } : { range }),
    origin: { document: 'common practice, no source', basis: 'practice' },
  };
}

/** A stated figure that something has to reach, or stay below, to work at all. */
export const functionOf = (
  { quantity, origin }: Figure,
  value: LimitPlan['value'],
  margin: LimitPlan['margin'],
): LimitPlan => ({
  value,
  stated: quantity.stated,
  grade: 'operating',
  isFunction: true,
  margin,
  origin,
});
