/**
 * Copper and coils. Resistance follows R(T) = R0·(234.5 + T) / (234.5 + T0), with 234.5 °C the inferred zero-resistance
 * temperature of annealed copper; valid from about −100 to 200 °C.
 * Sources: "Temperature considerations for DC relays", TE Connectivity; Application note 102, "Relays and temperature
 * variations", Leach; worked examples in tests/published/copper-and-coils.test.ts.
 */

/** Degrees below 0 °C at which the resistance of annealed copper, extended in a straight line, would vanish. */
export const COPPER_ZERO = 234.5;

/** Factor from the resistance at `reference` to that at `celsius`. */
export const copperFactor = (celsius: number, reference = 20): number =>
  (COPPER_ZERO + celsius) / (COPPER_ZERO + reference);

/**
 * Temperature of a coil in °C at rest on a constant voltage, its own heat counted:
 * with u = 234.5 + T, u² − (234.5 + Ta)·u − K·V²·(234.5 + T0)/R0 = 0.
 *
 * @param voltage across the coil, volts
 * @param resistance ohms at the reference temperature
 * @param ambient °C
 * @param thermal thermal resistance of the coil to ambient, K/W
 */
export function coilTemperature(
  voltage: number,
  resistance: number,
  ambient: number,
  thermal: number,
  reference = 20,
): number {
  const cold = COPPER_ZERO + ambient;
  const heat = (thermal * voltage * voltage * (COPPER_ZERO + reference)) / resistance;
  return (cold + Math.sqrt(cold * cold + 4 * heat)) / 2 - COPPER_ZERO;
}
