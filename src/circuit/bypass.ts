/**
 * A capacitor across a series resistor. At the moment of switching on it bridges the resistor; then it charges, and the
 * current falls to what the resistor lets through: i(t) = I_held + (I_full - I_held)·e^(-t/τ), with τ = C·R·r/(R + r), where r
 * is what else is in the way. What it comes to is told as the resistor that would let as much through.
 *
 * Formulas: charging of a capacitor through a divider, any textbook of electrical engineering.
 */

/** What is in the way. */
export interface Bypassed {
  /** The resistor that is bridged, ohms. */
  readonly series: number;
  /** All the rest of the branch, ohms; above zero. */
  readonly rest: number;
  /** Farads. */
  readonly capacitance: number;
}

/** Seconds in which the current falls by all but 37 %. */
export const bypassTime = ({ series, rest, capacitance }: Bypassed): number =>
  (capacitance * series * rest) / (series + rest);

/** Ohms of the resistor that would let through what flows so many seconds after switching on. */
export function ohmsAfter(bypassed: Bypassed, seconds: number): number {
  const { series, rest } = bypassed;
  const left = Math.exp(-seconds / bypassTime(bypassed));
  return (series * rest * (1 - left)) / (rest + series * left);
}

/** Ohms of the resistor that would let through the root mean square of the first second. */
export function ohmsOverSecond(bypassed: Bypassed): number {
  const { series, rest } = bypassed;
  const time = bypassTime(bypassed);
  // Of one volt; the branch is straight, so that the voltage does not matter.
  const [held, full] = [1 / (series + rest), 1 / rest];
  const more = full - held;
  const [once, twice] = [1, 2].map((k) => (time / k) * (1 - Math.exp(-k / time))) as [number, number];
  const squares = held * held + 2 * held * more * once + more * more * twice;
  return Math.max(1 / Math.sqrt(squares) - rest, 0);
}
