/** Linear regulators: heat, junction temperature, and what they need between input and output. */

/**
 * Volts between input and output that the thirstiest usual linear regulator needs: 2 to 2.5 V, where nobody states its
 * dropout (78xx family; common practice, no source).
 */
export const USUAL_DROPOUT = 2.5;

/**
 * Power lost in a linear regulator, watts: (Vin − Vout)·I + Vin·Iq.
 *
 * @param input volts @param output volts @param current output current, amperes @param quiescent own current, amperes
 */
export const linearLoss = (input: number, output: number, current: number, quiescent: number): number =>
  (input - output) * current + input * quiescent;

/** Junction temperature, °C, of a part that turns `power` watts into heat over `thermal` K/W at an ambient in °C. */
export const junctionTemperature = (ambient: number, thermal: number, power: number): number =>
  ambient + thermal * power;

/** Amperes at which heat is no limit any more. */
export const HEAT_NO_LIMIT = 1e3;

/**
 * Current that a linear regulator may give for its heat, amperes: ((Tj − Ta) / Rth − Pq) / (Vin − Vout), at least a
 * microampere, so that a margin can be reckoned from it.
 *
 * @param ambient °C @param hottest highest junction temperature, °C @param thermal K/W @param drop input less output, volts
 * @param own what its own current turns into heat, watts
 */
export function allowedByHeat(ambient: number, hottest: number, thermal: number, drop: number, own: number): number {
  const watts = (hottest - ambient) / thermal - own;
  return drop <= 0 ? HEAT_NO_LIMIT : Math.min(Math.max(watts / drop, 1e-6), HEAT_NO_LIMIT);
}
