/** Pulses: what a current that rises for a while comes to over time. */

/** What heats slowly (fuses, wires, connectors, resistors) answers to the root mean square over so many seconds (rule 17). */
const WINDOW = 1;

/**
 * Root mean square, amperes, over the second that has most of it, of a current that stands at `steady` and rises to `peak`.
 *
 * @param steady amperes between the peaks @param peak amperes in a peak
 * @param lasts seconds that a peak lasts @param every seconds from one peak to the next; endless where they come singly
 */
export function rmsOverSecond(steady: number, peak: number, lasts: number, every = Infinity): number {
  // Peaks that come oftener than once a second all count; one that comes seldom counts whole in its own second.
  const share = Math.min(every < WINDOW ? lasts / every : lasts / WINDOW, 1);
  return Math.sqrt(peak * peak * share + steady * steady * (1 - share));
}
