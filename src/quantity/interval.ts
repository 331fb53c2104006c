/** A figure with its tolerance, in SI: a worst build at either end and the typical build between (`min <= typ <= max`). */
export interface Interval {
  readonly min: number;
  readonly typ: number;
  readonly max: number;
}

/** A figure of no width: `exactly(5)` is `{ min: 5, typ: 5, max: 5 }`. */
export const exactly = (x: number): Interval => ({ min: x, typ: x, max: x });
