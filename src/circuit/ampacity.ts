/**
 * What a copper wire may carry for ever, by its cross-section. There is no one figure: it depends on insulation, air and
 * what lies beside it. These are the two columns that electronics workshops use, so the grade is practice.
 * Sources: Handbook of Electronic Tables and Formulas, column 'chassis wiring' (one wire in free air); for wires in a
 * bundle the column after MIL-W-5088 as the ARRL handbook prints it (AWG 10 to 22) and the bundled column for thin
 * hook-up wire printed beside it (AWG 24 and 30). Rows between are interpolated by cross-section.
 */
import { awgArea } from './wire.js';

interface Row {
  readonly gauge: number;
  /** Amperes of one wire in free air, and of each wire in a bundle. */
  readonly single: number;
  readonly bundled?: number;
}

const ROWS: readonly Row[] = [
  { gauge: 30, single: 0.86, bundled: 0.7 },
  { gauge: 28, single: 1.4 },
  { gauge: 26, single: 2.2 },
  { gauge: 24, single: 3.5, bundled: 2 },
  { gauge: 22, single: 7, bundled: 5 },
  { gauge: 20, single: 11, bundled: 7.5 },
  { gauge: 18, single: 16, bundled: 10 },
  { gauge: 16, single: 22, bundled: 13 },
  { gauge: 14, single: 32, bundled: 17 },
  { gauge: 12, single: 41, bundled: 23 },
  { gauge: 10, single: 55, bundled: 33 },
];

/**
 * Most amperes of a copper wire. Between two rows it follows a straight line on logarithmic scales; thinner than the table
 * it falls with the cross-section, thicker it is no more than the last row: that is on the safe side.
 *
 * @param area cross-section, m² @param bundled among other wires that carry current
 */
export function ampacity(area: number, bundled: boolean): number {
  const points = ROWS.flatMap(({ gauge, single, bundled: among }) => {
    const amps = bundled ? among : single;
    return amps === undefined ? [] : [{ area: awgArea(gauge), amps }];
  });
  const [thinnest, thickest] = [points[0]!, points.at(-1)!];
  if (area <= thinnest.area) return (thinnest.amps * area) / thinnest.area;
  if (area >= thickest.area) return thickest.amps;
  const k = points.findIndex((p) => p.area >= area);
  const [low, high] = [points[k - 1]!, points[k]!];
  const share = Math.log(area / low.area) / Math.log(high.area / low.area);
  return low.amps * (high.amps / low.amps) ** share;
}
