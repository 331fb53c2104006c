/**
 * A transistor that cannot carry what its load would draw passes on what it can and keeps the rest of the voltage. Its heat
 * is greatest in between: with a resistive load, where it keeps half of the voltage.
 *
 * The load is taken as a straight line from its current at the transistor's lowest voltage to nothing at all of the voltage.
 * That is exact for a resistance; whatever has junctions or drops in it carries less at every voltage in between, so that it
 * is a bound there.
 */

/** What is asked of a transistor, fully driven. */
export interface Asked {
  /** Volts across transistor and load together. */
  readonly whole: number;
  /** Volts that the transistor keeps at the least. */
  readonly kept: number;
  /** Amperes that the load then draws. */
  readonly amps: number;
}

/** Volts across the transistor when it can carry only so many amperes. */
export function keptAt({ whole, kept, amps }: Asked, able: number): number {
  return able >= amps || amps <= 0 ? kept : whole - ((whole - kept) * Math.max(able, 0)) / amps;
}

/** Most watts in the transistor while it keeps anything up to so many volts. */
export function mostHeat({ whole, kept, amps }: Asked, upTo: number): number {
  if (amps <= 0 || whole <= kept) return Math.max(kept, 0) * Math.max(amps, 0);
  const volts = Math.min(Math.max(whole / 2, kept), Math.max(upTo, kept));
  return (volts * amps * (whole - volts)) / (whole - kept);
}
