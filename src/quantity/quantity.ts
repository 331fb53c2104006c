import type { Dimension } from './dimension.js';
import type { Interval } from './interval.js';

/** A figure as its source states it: bounds in SI, those that were left open absent. */
export interface Quantity {
  readonly dimension: Dimension;
  readonly min?: number;
  readonly typ?: number;
  readonly max?: number;
  /** Neither a tolerance nor a range was stated; then all three bounds are equal. */
  readonly exact: boolean;
  /** As written in the source. */
  readonly stated: string;
  /** `250 V AC`, `24 V DC`, where it was said. */
  readonly waveform?: 'AC' | 'DC';
}

/** How a law closes the side that a source left open, from the nearest bound that was stated. */
export interface Closing {
  readonly min?: (nearest: number) => number;
  readonly max?: (nearest: number) => number;
}

const same = (nearest: number): number => nearest;

/**
 * Closes open bounds: a missing end is made from the nearest stated one (equal to it, unless a law says otherwise), a
 * missing typical is the middle. `typ 20 mA` → 20, 20, 20; closed with `{ max: (x) => 1.5 * x }` → 20, 20, 30 mA.
 */
export function closed(quantity: Quantity, by: Closing = {}): Interval {
  const { min: low, typ: middle, max: high } = quantity;
  const lowest = low ?? middle ?? high;
  const highest = high ?? middle ?? low;
  if (lowest === undefined || highest === undefined) throw new RangeError(`no bound at all in '${quantity.stated}'`);
  const min = low ?? (by.min ?? same)(lowest);
  const max = high ?? (by.max ?? same)(highest);
  return { min, typ: middle ?? (min + max) / 2, max };
}
