/**
 * What a saturated output keeps for itself, as data sheets give it: a few voltages at currents, and straight lines between
 * them. In a branch each line is a constant drop and a resistance that hold as far as the line goes.
 */
import type { Branch } from './branch.js';

/** Volts at a current in amperes. */
export interface LinePoint {
  readonly amps: number;
  readonly volts: number;
}

/** Ohms below which a line counts as level: a voltage that falls with the current would have two currents at one voltage. */
const LEVEL = 1e-6;

/** Drop and resistance of the line that begins at a point; the last one goes on as the one before it. */
function lineFrom(points: readonly LinePoint[], k: number): { readonly drop: number; readonly ohms: number } {
  const [a, b] = [points[k]!, points[k + 1]];
  if (b === undefined) return k === 0 ? { drop: a.volts, ohms: 0 } : lineFrom(points, k - 1);
  const ohms = Math.max((b.volts - a.volts) / (b.amps - a.amps), LEVEL);
  return { drop: a.volts - ohms * a.amps, ohms };
}

/** Volts at a current: between two points on their line, beyond the last on the line through the last two. */
export function lineVoltage(points: readonly LinePoint[], amps: number): number {
  let k = 0;
  while (k < points.length - 2 && points[k + 1]!.amps <= amps) k++;
  const { drop, ohms } = lineFrom(points, k);
  return drop + ohms * amps;
}

/** A branch with lines in series. @param lines points of rising current, the first at 0 A */
export function withLines(branch: Branch, lines: readonly (readonly LinePoint[])[]): Branch {
  if (lines.length === 0) return branch;
  const ends = [...new Set(lines.flatMap((points) => points.slice(1, -1).map((p) => p.amps)))].sort((a, b) => a - b);
  const piece = (from: number): Branch => {
    let { resistance, drop } = branch;
    for (const points of lines) {
      let k = 0;
      while (k < points.length - 2 && points[k + 1]!.amps <= from) k++;
      const line = lineFrom(points, k);
      resistance += line.ohms;
      drop += line.drop;
    }
    const upTo = ends.find((amps) => amps > from);
    return { ...branch, resistance, drop, beyond: upTo === undefined ? undefined : { upTo, next: piece(upTo) } };
  };
  return piece(0);
}
