/**
 * Copper wire: how thick a gauge is, and what a length of it comes to. Round, plain, annealed copper, direct current; a
 * stranded wire of the same gauge may have up to a tenth more.
 * Sources: ASTM B258 (diameters of the American gauge); IEC 60028 (annealed copper, 58 m/(Ω·mm²) at 20 °C). Both are held
 * against NBS Handbook 100 and others in tests/published/wires.test.ts.
 */

/** Resistivity of annealed copper at 20 °C, Ω·m: one over 58 m/(Ω·mm²). */
export const COPPER_RESISTIVITY = 1e-6 / 58;

/** Temperature at which the resistivity holds, °C. */
export const WIRE_REFERENCE = 20;

/** Diameter of an American wire gauge in metres: number 36 has 0.127 mm, and each of 39 steps down grows by the same ratio. */
export const awgDiameter = (gauge: number): number => 0.127e-3 * 92 ** ((36 - gauge) / 39);

/** Cross-section of an American wire gauge, m². */
export const awgArea = (gauge: number): number => (Math.PI / 4) * awgDiameter(gauge) ** 2;

/** Resistance at 20 °C in ohms of a conductor. @param length metres @param area cross-section, m² */
export const wireOhms = (length: number, area: number): number => (COPPER_RESISTIVITY * length) / area;
