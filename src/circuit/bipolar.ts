/** Laws of a bipolar transistor used as a switch, single or Darlington. */
import type { Junction } from './junction.js';
import { junctionVoltage } from './junction.js';

/** Gain is stated at this temperature, °C, and falls by this share per kelvin below it (rule 14 of the format). */
const GAIN_REFERENCE = 25;
const GAIN_PER_KELVIN = 0.005;

/** Minimum gain at a junction temperature: the stated one when warm, 0.5 % per kelvin less when cold. */
export const gainAt = (gain: number, celsius: number): number =>
  celsius >= GAIN_REFERENCE ? gain : gain * Math.max(1 - GAIN_PER_KELVIN * (GAIN_REFERENCE - celsius), 0.05);

/**
 * Collector-emitter voltage of a switched-on transistor, volts. Up to the forced gain the published saturation voltage
 * holds; from there it rises in a straight line over the gain asked for, to the voltage at which the minimum gain is stated.
 *
 * @param collector collector current, amperes
 * @param base base current, amperes
 * @param saturation published saturation voltage at that collector current, volts
 * @param forcedGain the collector to base ratio at which `saturation` was published
 * @param gain minimum gain at this temperature
 * @param gainVoltage collector-emitter voltage at which `gain` is stated, volts
 */
export function collectorVoltage(
  collector: number,
  base: number,
  saturation: number,
  forcedGain: number,
  gain: number,
  gainVoltage = 1,
): number {
  const asked = base > 0 ? collector / base : Infinity;
  if (collector <= 0 || asked <= forcedGain || gainVoltage <= saturation) return saturation;
  if (asked >= gain || gain <= forcedGain) return gainVoltage;
  return saturation + ((gainVoltage - saturation) * (asked - forcedGain)) / (gain - forcedGain);
}

/**
 * Base current that is left of a current that leaks into a base with a resistor beside its base-emitter path, amperes: the
 * resistor takes what the path's voltage drives through it.
 *
 * @param leak what leaks in, amperes
 * @param junction the base-emitter path at its temperature
 * @param ohms the resistor from base to emitter
 */
export function leftForBase(leak: number, junction: Junction, ohms: number): number {
  let [low, high] = [0, leak];
  for (let k = 0; k < 60 && high - low > 1e-15 * leak; k++) {
    const base = (low + high) / 2;
    if (base + junctionVoltage(junction, base) / ohms > leak) high = base;
    else low = base;
  }
  return low;
}
