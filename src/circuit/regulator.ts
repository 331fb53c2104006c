/** Linear regulators: heat and junction temperature. */

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
