/** Switching regulators: the current they take so that power out over efficiency comes in. */

/**
 * Input current, amperes: Vout·Iout / (η·Vin) + Iq.
 *
 * @param output volts @param current output current, amperes @param efficiency 0 to 1 @param input volts above zero
 * @param quiescent own current, amperes
 */
export const switcherInput = (
  output: number,
  current: number,
  efficiency: number,
  input: number,
  quiescent: number,
): number => (output * current) / (efficiency * input) + quiescent;
