/**
 * What is put across an inductive load, or its contact, so that no arc has to take its current over.
 *
 * Source of the RC element: "Relay contact protection circuits", PCI-7256 User's Manual, ADLINK Technology, appendix A, p. 37,
 * as relay makers print it ("FAQ02804 of General Purpose Relays", Omron): 0.5 to 1 µF for each ampere of the contact, 0.5 to 1 Ω for
 * each volt. Of the varistor: "Selecting
 * the proper MOV voltage rating", NTE Electronics: the highest voltage for ever, with the mains a tenth above its nominal one.
 */

/** What a rule allows. */
interface Span {
  readonly min: number;
  readonly max: number;
}

/** Farads for a load's amperes. */
export const capacitorFor = (amps: number): Span => ({ min: 0.5e-6 * amps, max: 1e-6 * amps });

/** Ohms for a load's volts. */
export const resistorFor = (volts: number): Span => ({ min: 0.5 * volts, max: volts });

/** Alternating voltages for ever that varistors are made for, volts (NTE Electronics, list of its metal-oxide varistors). */
const VARISTORS = [
  10, 14, 17, 20, 25, 30, 35, 40, 50, 60, 75, 95, 115, 130, 150, 175, 230, 250, 275, 300, 385, 420, 480,
];
const HIGH_LINE = 1.1;

/** The lowest of those that bears the mains at its highest; undefined above them all. */
export const varistorFor = (volts: number): number | undefined => VARISTORS.find((each) => each >= HIGH_LINE * volts);
