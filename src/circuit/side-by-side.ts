/**
 * Junctions side by side behind one resistor: they share a voltage and not a current. What each takes follows from its own
 * law at that voltage, so that a few hundredths of a volt between two parts are a factor between their currents.
 */
import type { Junction } from './junction.js';
import { junctionVoltage } from './junction.js';

/** Amperes of a junction at a voltage in volts, to the last bits of a double. */
export function junctionCurrent(junction: Junction, volts: number): number {
  if (volts <= 0) return 0;
  // Neither the bend alone nor the resistance alone lets more through.
  const { slope, logSaturation, series } = junction;
  let [low, high] = [Math.log(1e-30), logSaturation + Math.min(volts / slope, 700)];
  if (series > 0) high = Math.min(high, Math.log(volts / series));
  if (high <= low) return 0;
  for (let k = 0; k < 200 && high - low > 1e-15 * Math.abs(high); k++) {
    const middle = (low + high) / 2;
    if (junctionVoltage(junction, Math.exp(middle)) > volts) high = middle;
    else low = middle;
  }
  return Math.exp((low + high) / 2);
}

/**
 * One junction beside others of another law, behind a resistance on a voltage.
 *
 * @param volts what is left for the resistance and the junctions @param ohms the resistance before them
 * @param one the junction in question @param others the law of the rest @param count how many the rest are
 */
export function besideOthers(
  volts: number,
  ohms: number,
  one: Junction,
  others: Junction,
  count: number,
): { readonly amps: number; readonly volts: number; readonly total: number } {
  const total = (v: number): number => junctionCurrent(one, v) + count * junctionCurrent(others, v);
  let [low, high] = [0, Math.max(volts, 0)];
  for (let k = 0; k < 200 && high - low > 1e-15; k++) {
    const middle = (low + high) / 2;
    if (middle + ohms * total(middle) > volts) high = middle;
    else low = middle;
  }
  const at = (low + high) / 2;
  return { amps: junctionCurrent(one, at), volts: at, total: total(at) };
}
