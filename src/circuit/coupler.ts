/** Laws of an optocoupler: its current transfer ratio over temperature and what ageing takes from it. */

/** Temperature at which the transfer ratio is stated, °C. */
const STATED_AT = 25;
/** Share of the ratio lost per kelvin above and below that. */
const LOST_WARM = 0.006;
const LOST_COLD = 0.002;

/**
 * Share of the stated transfer ratio at a temperature: the LED gives less light when warm, the transistor has less gain
 * when cold. The usual curve of a coupler with a phototransistor passes 70 % at 75 °C and 90 % at −25 °C (from memory, the
 * curves of the PC817 family over the ambient; its sheet gives no figures).
 *
 * @param celsius ambient, °C
 */
export const warmShare = (celsius: number): number =>
  Math.max(1 - (celsius > STATED_AT ? LOST_WARM : -LOST_COLD) * (celsius - STATED_AT), 0);

/** How the ratio falls with the LED current: [share of the current at which it is stated, share of the ratio there]. */
const FALL = [
  [0.2, 0.6],
  [0.4, 0.8],
  [1, 1],
] as const;

/**
 * Share of the stated transfer ratio at a smaller LED current: 0.8 of it at two fifths of the current, 0.6 at a fifth, in
 * straight lines (from memory, the usual curve of the 817 family; one sample measured lost a fifth from 6.7 to 3.2 mA).
 *
 * @param current LED current, amperes
 * @param stated LED current at which the ratio is stated, amperes
 */
export function lowCurrentShare(current: number, stated: number): number {
  const x = Math.min(Math.max(current / stated, 0), 1);
  const [low, middle, top] = FALL;
  const [from, to] = x < middle[0] ? [low, middle] : [middle, top];
  return from[1] + ((x - from[0]) * (to[1] - from[1])) / (to[0] - from[0]);
}

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
