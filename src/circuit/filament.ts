/**
 * Filament lamps. A filament's resistance rises with its temperature, so that about its design point the current goes as the
 * 0.55th power of the voltage: I = I_design · (V / V_design)^0.55. Source: D. G. Fink and H. W. Beaty, "Standard Handbook
 * for Electrical Engineers", 11th edition, McGraw-Hill, 1978, p. 22-8, as cited by lamp makers' rerating tables.
 * Cold it has a tenth or less of its hot resistance, and when it is switched on it takes as many times its current.
 */
import type { Interval } from '../quantity/interval.js';

/** Exponent of the rerating law. */
export const RERATING = 0.55;

/** A filament at its design point. */
export interface Filament {
  /** Volts. */
  readonly volts: number;
  /** Amperes it takes there when it is hot. */
  readonly amps: number;
}

/** Volts across a filament that carries a current in amperes, whichever way. */
export const filamentVoltage = ({ volts, amps }: Filament, current: number): number =>
  Math.sign(current) * volts * (Math.abs(current) / amps) ** (1 / RERATING);

/** Ohms for small changes where a filament carries a current in amperes; leads and holder have a milliohm at least. */
export const filamentSlope = (filament: Filament, current: number): number =>
  current === 0 ? 1e-3 : Math.max(filamentVoltage(filament, current) / (RERATING * current), 1e-3);

/** Amperes at the design point from its volts and watts. */
export const designCurrent = (watts: Interval, volts: number): Interval => ({
  min: watts.min / volts,
  typ: watts.typ / volts,
  max: watts.max / volts,
});
