/**
 * Batteries: how long they last. Charge is counted (I·t), as makers state capacities; what a heavier drain takes of the
 * capacity is read off the maker's figures at drains, not from a law. Held against published sums in
 * tests/published/batteries.test.ts.
 */
import type { Interval } from '../quantity/interval.js';
import type { Point } from '../quantity/points.js';
import { interpolate } from '../quantity/points.js';

/** Mean of currents by their shares of the time, amperes. */
export const meanCurrent = (parts: readonly { readonly share: number; readonly amps: number }[]): number =>
  parts.reduce((sum, { share, amps }) => sum + share * amps, 0);

/**
 * Charge in coulombs that a battery gives at a drain in amperes. Beyond the stated drains it is that of the nearest one: no
 * cell gives more for being asked for less than its maker tried.
 */
export function capacityAt(points: readonly Point[], amps: number): Interval {
  const drains = points.map((p) => p.at);
  return interpolate(points, Math.min(Math.max(amps, Math.min(...drains)), Math.max(...drains))).value;
}

/**
 * Seconds that a charge in coulombs lasts at a current in amperes.
 *
 * @param lost share of the charge that is lost a second besides: the straight line through what a data sheet states, which
 * loses no less than the curve that it is taken from
 */
export const lastsFor = (charge: number, amps: number, lost = 0): number => charge / (amps + charge * lost);

/**
 * What lies inside an adapter that does not regulate: it stands at one voltage with nothing drawn, and at the one on its
 * label at its rated current, with a straight line between.
 *
 * @param open volts @param rated volts @param amps at which the rated voltage holds @returns ohms
 */
export function insideOhms(open: Interval, rated: Interval, amps: number): Interval {
  const [low, typ, high] = (['min', 'typ', 'max'] as const).map((end) => Math.max(open[end] - rated[end], 0) / amps);
  return { min: Math.min(low!, typ!, high!), typ: typ!, max: Math.max(low!, typ!, high!) };
}
