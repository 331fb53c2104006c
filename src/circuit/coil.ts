/**
 * What heat does to the voltages of a coil. A coil pulls in at a certain current, whatever its temperature, so that its
 * voltages go with its resistance; and its own heat sets the most it bears for good.
 * Sources: "Temperature considerations for DC relays", TE Connectivity; worked examples in tests/published/suppression.test.ts.
 */
import { copperFactor } from './copper.js';

/**
 * Highest voltage that a coil bears for good: the one that brings its winding to the permitted temperature,
 * V² = (T − Ta)·R(T)/Rth. Nothing where the ambient is that hot by itself.
 *
 * @param ohms at the reference temperature
 * @param ambient °C
 * @param thermal thermal resistance of the coil to ambient, K/W
 * @param permitted temperature of the winding, °C
 */
export function highestCoilVoltage(
  ohms: number,
  ambient: number,
  thermal: number,
  permitted: number,
  reference = 20,
): number {
  return Math.sqrt((Math.max(permitted - ambient, 0) * ohms * copperFactor(permitted, reference)) / thermal);
}
