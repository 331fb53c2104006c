/** What a coupler passes on of its LED's current: its transfer ratio over that current, and what ageing leaves of it. */
import { endOfLifeShare } from '../../circuit/coupler.js';
import { interpolate } from '../../quantity/points.js';
import type { Curve } from '../figures.js';
import type { Reading } from '../plan.js';

export interface TransferLaw {
  /** The ratio counted on at an LED current in amperes: the least, typically the typical one. */
  readonly ratio: (current: number, s: Reading) => number;
  /** The most that it may be, for what still flows when it is off. */
  readonly most: (current: number, s: Reading) => number;
  /** Share of the ratio left at the end of its life; a typical build is new. */
  readonly left: (current: number, s: Reading) => number;
}

/** Transfer ratio over LED current: below the lowest point it is extended, and never below nothing. */
export function transferLaw(curve: Curve): TransferLaw {
  const at = (current: number) => interpolate(curve.points, current).value;
  const stated = curve.points.at(-1)!.at;
  return {
    ratio: (current, s) => Math.max(s.typical ? at(current).typ : at(current).min, 0),
    most: (current, s) => Math.max(s.typical ? at(current).typ : at(current).max, 0),
    left: (current, s) => (s.typical ? 1 : endOfLifeShare(current, stated)),
  };
}
