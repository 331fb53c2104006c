/** Laws of a MOSFET used as a switch. */

/** Its on-resistance is stated at this junction temperature, °C. */
export const STATED_AT = 25;

export interface Warm {
  /** Resistance at the junction's own temperature, ohms. */
  readonly ohms: number;
  /** Temperature of the junction, °C. */
  readonly junction: number;
}

/**
 * Resistance of a channel that its own loss heats: R(T) = R25·(1 + k·(T − 25)) with T = ambient + θ·I²·R(T), which is one
 * equation of the first degree in T. Where each kelvin brings more than a kelvin with it there is no rest: endless.
 * Below 25 °C the resistance is left as stated, which is the careful side.
 *
 * @param current drain current, amperes @param stated resistance at 25 °C, ohms
 * @param perKelvin share of the stated resistance that a kelvin adds, 1/K
 * @param thermal junction to ambient, K/W @param ambient °C
 */
export function warmChannel(
  current: number,
  stated: number,
  perKelvin: number,
  thermal: number,
  ambient: number,
): Warm {
  const rise = thermal * current * current * stated;
  const cold = ambient + rise;
  if (cold <= STATED_AT) return { ohms: stated, junction: cold };
  const fed = rise * perKelvin;
  if (fed >= 1) return { ohms: Infinity, junction: Infinity };
  const junction = (ambient + rise * (1 - perKelvin * STATED_AT)) / (1 - fed);
  return { ohms: stated * (1 + perKelvin * (junction - STATED_AT)), junction };
}
