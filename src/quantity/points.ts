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
  const last = row.at(-1);
  if (!first || !last) throw new RangeError('no points to interpolate between');
  const extended = at < first.at || at > last.at;
  const beyond = row.findIndex((point) => point.at > at);
  const upper = beyond === -1 ? row.length - 1 : Math.max(beyond, 1);
  const a = row[upper - 1] ?? first;
  const b = row[upper] ?? last;
  // With a single point, or two at one condition, there is no slope to follow.
  const share = b.at === a.at ? 1 : (at - a.at) / (b.at - a.at);
  const along = (end: keyof Interval): number => a.value[end] + share * (b.value[end] - a.value[end]);
  const [min, typ, max] = [along('min'), along('typ'), along('max')];
  // Far outside, the three lines may cross; the outermost of them stay the bounds.
  return { value: { min: Math.min(min, typ, max), typ, max: Math.max(min, typ, max) }, extended };
}

function ascending(points: readonly Point[]): readonly Point[] {
  const ordered = points.every((point, i) => i === 0 || (points[i - 1]?.at ?? point.at) <= point.at);
  return ordered ? points : [...points].sort((a, b) => a.at - b.at);
}
