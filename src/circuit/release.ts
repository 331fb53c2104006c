/**
 * What an inductive load does when its switch opens. Its current goes on through the clamp, whose voltage and the winding's
 * resistance bring it down: L·di/dt = −R·i − V, so that i(t) = (I0 + V/R)·e^(−tR/L) − V/R. The inductance is taken as
 * constant; in truth it falls as the armature moves, so that the time is one to the longer side.
 * Sources: "The application of relay coil suppression with DC relays", TE Connectivity (13C3311); the law is that of any
 * textbook; worked examples in tests/published/suppression.test.ts.
 */

/** Energy in a winding, joules, at a current in amperes. @param inductance henries */
export const storedEnergy = (inductance: number, current: number): number => (inductance * current * current) / 2;

/**
 * Time until the current has fallen to a part of itself, seconds; 0 where it stands there already.
 *
 * @param inductance henries
 * @param ohms resistance of the winding and what is in series with it and the clamp
 * @param current amperes when the switch opens
 * @param release amperes at which it lets go; above zero where the clamp drops nothing
 * @param clamp volts across the clamp, taken as constant
 */
export function releaseTime(inductance: number, ohms: number, current: number, release: number, clamp: number): number {
  if (current <= release) return 0;
  const level = clamp / ohms;
  return (inductance / ohms) * Math.log((current + level) / (release + level));
}
