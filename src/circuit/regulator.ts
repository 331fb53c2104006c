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
