/**
 * Small glass fuses, 5 x 20 mm, fast: what they are sold for and what they lose. Ratings are those of both series below. The
 * resistance is that of the cold fuse in either, whichever is lower and higher, and half as much again at the higher end for one
 * that is warm from its load (common practice, no source).
 * Sources: 617 Series, Littelfuse, revised 06/18/15, 'Nominal cold resistance'; S500 Series, Cooper Bussmann, 'Typical DC cold
 * resistance'.
 */
export interface SmallFuse {
  /** Rated amperes. */
  readonly amps: number;
  /** Ohms, cold in one series to warm in the other. */
  readonly ohms: { readonly min: number; readonly max: number };
}

/** Rated amperes, cold ohms of the 617 and of the S500 series. */
const ROWS: readonly (readonly [number, number, number])[] = [
  [0.5, 0.2065, 0.27],
  [0.63, 0.19, 0.21],
  [0.8, 0.1203, 0.15],
  [1, 0.0964, 0.13],
  [1.25, 0.0701, 0.098],
  [1.6, 0.0528, 0.068],
  [2, 0.0416, 0.044],
  [2.5, 0.0334, 0.035],
  [3.15, 0.0224, 0.026],
  [4, 0.0165, 0.022],
  [5, 0.0137, 0.015],
  [6.3, 0.0095, 0.01],
];

const WARM = 1.5;
/** A fuse carries no more than three quarters of its rating for good, at 25 °C (Fuseology application guide, Littelfuse). */
const LOAD = 0.75;

export const SMALL_FUSES: readonly SmallFuse[] = ROWS.map(([amps, one, other]) => ({
  amps,
  ohms: { min: Math.min(one, other), max: WARM * Math.max(one, other) },
}));

/** The smallest fuse that carries a current for good; undefined beyond the series. @param amps of the load */
export const fuseFor = (amps: number): SmallFuse | undefined => SMALL_FUSES.find((f) => f.amps * LOAD >= amps);
