/**
 * What a contact may switch. A rating is stated for a resistive load; whatever draws more when it starts, or keeps its current
 * going when the contact opens, may be less. An arc of direct current does not go out by itself: from about 30 V on, the
 * current that a small contact still breaks falls steeply with the voltage.
 */

/** What hangs on a contact, as ratings tell loads apart. */
export type ContactLoadKind = 'resistive' | 'inductive' | 'motor' | 'lamp' | 'capacitive';

/** Shares of the resistive rating where nobody states one for the kind of load (rule 18; common practice, no source). */
export const SHARE_OF_RESISTIVE: { readonly [K in ContactLoadKind]: number } = {
  resistive: 1,
  inductive: 0.4,
  motor: 0.2,
  lamp: 0.1,
  capacitive: 0.05,
};

/** One published point of a breaking curve: amperes at volts. */
export interface BreakingPoint {
  readonly volts: number;
  readonly amps: number;
}

/**
 * Amperes between two published points of a breaking curve: a straight line on double logarithmic paper, on which makers
 * draw these curves. Between points that lie far apart the true curve sags below it.
 */
export function betweenPoints(low: BreakingPoint, high: BreakingPoint, volts: number): number {
  if (low.volts === high.volts) return Math.min(low.amps, high.amps);
  const way = Math.log(volts / low.volts) / Math.log(high.volts / low.volts);
  return low.amps * (high.amps / low.amps) ** way;
}

/** Amperes (root mean square) that a capacitor across an open contact lets through. */
export const throughCapacitor = (farads: number, volts: number, hertz: number): number =>
  2 * Math.PI * hertz * farads * volts;
