/** Laws of an optocoupler: its current transfer ratio and what ageing takes from it. */

/**
 * Share of the transfer ratio that is left at the end of life. Ageing halves it at the LED current at which it is stated,
 * takes 15 % at a tenth of that current or less, and in between goes with the logarithm of the current (rule 15).
 *
 * @param current LED current, amperes
 * @param stated LED current at which the ratio is stated, amperes
 */
export function endOfLifeShare(current: number, stated: number): number {
  if (current >= stated) return 0.5;
  if (current <= stated / 10) return 0.85;
  return 0.85 - 0.35 * (1 + Math.log10(current / stated));
}
