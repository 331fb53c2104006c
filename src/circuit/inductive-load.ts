/**
 * What inductive loads on contacts store when nobody states their inductance.
 *
 * Sources: of direct current, the test load of category DC-13, IEC 60947-5-1 (from memory): the current of an electromagnet of P
 * watts comes to 95 % within 6·P milliseconds, and within 300 ms at the most; 95 % are three time constants. Of alternating
 * current, the reactive power of any textbook: E = V·I·sin φ / (2·π·f) at the current's peak.
 */

/** Joules in an electromagnet on direct current, from its watts. E = L·I²/2 with L/R a third of that time. */
export const directEnergy = (watts: number): number => (Math.min(0.006 * watts, 0.3) / 6) * watts;

/** Joules at the peak of the current. @param volts @param amps both root mean square @param factor power factor */
export const alternatingEnergy = (volts: number, amps: number, factor: number, hertz: number): number =>
  (volts * amps * Math.sqrt(1 - factor * factor)) / (2 * Math.PI * hertz);
