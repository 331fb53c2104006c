/**
 * Output resistance of a pin from the VOL and VOH rows of a data sheet: a row "at most 0.9 V at 20 mA and 5 V" is a chord
 * of 45 Ω. Between rows the resistance is interpolated over the supply voltage; outside them the nearest row holds. Of
 * several rows at one supply the steepest chord counts, which loses most.
 */
import type { Interval } from '../quantity/interval.js';

/** One row of a data sheet, turned into the voltage lost in the pin. */
export interface LevelRow {
  /** Supply voltage of the row, volts. */
  readonly supply: number;
  /** Output current of the row, amperes. */
  readonly current: number;
  /** Volts lost between the rail and the pin; a bound that is not published is absent. */
  readonly lost: { readonly typ?: number; readonly max?: number };
}

/** A pin's output resistance, and in words what of it was assumed. */
export interface PinResistance {
  /** Ohms. */
  readonly ohms: Interval;
  readonly assumed?: string;
}

/** Resistance of one kind of bound over supply voltage, or undefined when no row has it. */
function along(rows: readonly LevelRow[], bound: 'typ' | 'max', supply: number): number | undefined {
  const steepest = new Map<number, number>();
  for (const row of rows) {
    const lost = row.lost[bound];
    if (lost !== undefined) steepest.set(row.supply, Math.max(lost / row.current, steepest.get(row.supply) ?? 0));
  }
  const points = [...steepest].map(([at, ohms]) => ({ at, ohms })).sort((a, b) => a.at - b.at);
  const above = points.find((p) => p.at >= supply);
  const below = points.findLast((p) => p.at <= supply);
  if (above === undefined || below === undefined) return (above ?? below)?.ohms;
  if (above.at === below.at) return above.ohms;
  return below.ohms + ((above.ohms - below.ohms) * (supply - below.at)) / (above.at - below.at);
}

/**
 * A pin's output resistance on a rail, ohms. Where only a bound of it is published, half the typical is the other one.
 *
 * @param rows the VOL or VOH rows of the chosen drive strength
 * @param typical a typical resistance published beside the rows, ohms
 * @param rail the rail's voltage, volts: the highest resistance is taken at its lowest end
 * @returns undefined when the data sheet tells nothing at all
 */
export function pinResistance(
  rows: readonly LevelRow[],
  typical: number | undefined,
  rail: { readonly min: number; readonly typ: number },
): PinResistance | undefined {
  const max = along(rows, 'max', rail.min);
  const typ = typical ?? along(rows, 'typ', rail.typ);
  if (typ !== undefined) {
    const upper = max ?? 2 * typ;
    const ohms = { min: Math.min(typ, upper) / 2, typ: Math.min(typ, upper), max: upper };
    return {
      ohms,
      assumed: max === undefined ? 'half and twice the typical figure' : 'half the typical figure as the lowest',
    };
  }
  if (max === undefined) return undefined;
  return {
    ohms: { min: max / 4, typ: max / 2, max },
    assumed: 'half the highest figure as typical, a quarter as the lowest',
  };
}
