/**
 * Peaks and capacitors: what a source still gives of a current that rises for a while, and how far the voltage dips.
 *
 * A source of some resistance with a capacitor across its terminals, of which a current is drawn more from one instant on:
 * the source takes it over with the time constant R·C (Kirchhoff's laws; the capacitor's own resistance is left out). Both
 * are held against a circuit simulator in tests/reference/dip.test.ts, and against published sums in
 * tests/published/dips.test.ts.
 */

/**
 * Share of a step of current that the source gives when it has lasted, 0 to 1; the rest comes from the capacitor.
 *
 * @param lasts seconds @param ohms of the source; one without any gives all of it @param farads across its terminals
 */
export const sourceShare = (lasts: number, ohms: number, farads: number): number =>
  ohms <= 0 || farads <= 0 ? 1 : -Math.expm1(-lasts / (ohms * farads));

/** Volts that a capacitor loses while it gives a current alone: ΔV = I·t/C. @param amps @param lasts seconds @param farads */
export const capacitorDip = (amps: number, lasts: number, farads: number): number => (amps * lasts) / farads;
