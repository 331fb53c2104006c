/** The voltage that an output leaves across itself, over the current through it, as the points of a data sheet give it. */
import type { Interval } from '../../quantity/interval.js';
import type { Curve } from '../figures.js';
import type { CurvePoint, Member } from '../branch-plan.js';

/**
 * Points from 0 A on; to the left of the first the line through the first two goes on, and never below nothing.
 *
 * @param curve saturation voltage in volts at a current in amperes; where only a highest figure is stated the lowest is a
 * closed switch (rule 12 of the format)
 * @param joined outputs that carry the current together
 */
export function saturationPoints(curve: Curve, joined = 1): CurvePoint[] {
  const points = curve.points.map(({ at, value, quantity }) => ({
    amps: at * joined,
    volts: { ...value, min: quantity.min ?? (quantity.typ === undefined ? 0 : value.typ) },
  }));
  const [first, second] = points;
  if (first === undefined) return [];
  if (first.amps <= 0) return points;
  if (second === undefined) return [{ ...first, amps: 0 }];
  const foot = (end: keyof Interval): number => {
    const slope = Math.max((second.volts[end] - first.volts[end]) / (second.amps - first.amps), 0);
    return Math.max(first.volts[end] - slope * first.amps, 0);
  };
  return [{ amps: 0, volts: { min: foot('min'), typ: foot('typ'), max: foot('max') } }, ...points];
}

/** The output in a branch; none when nobody states its saturation, which is a closed switch. */
export const saturationMembers = (curve: Curve | undefined, part: string, joined = 1): Member[] =>
  curve === undefined ? [] : [{ kind: 'curve', part, points: saturationPoints(curve, joined), origin: curve.origin }];
