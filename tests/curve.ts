/** A figure's curve read at a condition, in straight lines of its own: for tests that hold the ledger's against it. */
import type { Interval } from '../src/quantity/interval.js';
import type { Point } from '../src/quantity/points.js';

/** @param points of rising condition; the outermost lines go on, but never below nothing */
export function curveAt(points: readonly Point[] | undefined, at: number): Interval {
  const read = (end: keyof Interval): number => {
    if (points === undefined) return 0;
    const next = Math.max(
      1,
      Math.min(
        points.findIndex((p) => p.at > at),
        points.length - 1,
      ),
    );
    const [a, b] = points.length === 1 ? [points[0]!, points[0]!] : pair(points, next, at);
    const value =
      b.at === a.at ? a.value[end] : a.value[end] + ((at - a.at) / (b.at - a.at)) * (b.value[end] - a.value[end]);
    return Math.max(value, 0);
  };
  return { min: read('min'), typ: read('typ'), max: read('max') };
}

const pair = (points: readonly Point[], next: number, at: number): [Point, Point] =>
  at >= points.at(-1)!.at ? [points.at(-2)!, points.at(-1)!] : [points[next - 1]!, points[next]!];
