import type { Interval } from './interval.js';

/** A figure that holds at a condition: `{ value: 1.65 V, at: 0.4 mA }`, both in SI. */
export interface Point {
  readonly at: number;
  readonly value: Interval;
}

/**
 * The figure at another condition: linear between the points, extended along the outermost pair beyond them, constant
 * when there is only one. `extended` says that no point lies on one side, so that the report can say so too.
 * 1.0 V at 10 mA and 2.0 V at 20 mA → 1.5 V at 15 mA. Throws a RangeError without any point.
 */
export function interpolate(points: readonly Point[], at: number): { value: Interval; extended: boolean } {
  const row = ascending(points);
  const first = row[0];
  const last = row[row.length - 1];
  if (!first || !last) throw new RangeError('no points to interpolate between');
  let upper = 1;
  while (upper < row.length - 1 && row[upper]!.at <= at) upper++;
  const a = row[upper - 1] ?? first;
  const b = row[upper] ?? last;
  // With a single point, or two at one condition, there is no slope to follow.
  const share = b.at === a.at ? 1 : (at - a.at) / (b.at - a.at);
  const min = a.value.min + share * (b.value.min - a.value.min);
  const typ = a.value.typ + share * (b.value.typ - a.value.typ);
  const max = a.value.max + share * (b.value.max - a.value.max);
  // Far outside, the three lines may cross; the outermost of them stay the bounds.
  const value = { min: Math.min(min, typ, max), typ, max: Math.max(min, typ, max) };
  return { value, extended: at < first.at || at > last.at };
}

function ascending(points: readonly Point[]): readonly Point[] {
  for (let i = 1; i < points.length; i++)
    if (points[i - 1]!.at > points[i]!.at) return [...points].sort((a, b) => a.at - b.at);
  return points;
}
