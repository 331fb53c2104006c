/** Looking into the project's data, as cures do: entries of loads and the figures written there. */
import { isMapping } from '../loads/figures.js';
import type { Dimension } from '../quantity/dimension.js';
import { parseQuantity } from '../quantity/parse.js';
import { formatValue } from '../quantity/print.js';
import { closed } from '../quantity/quantity.js';

export type Entry = Readonly<Record<string, unknown>>;

/** An entry of a section, or undefined when there is none of that name. */
export function entryOf(data: unknown, section: string, name: string): Entry | undefined {
  const entries = isMapping(data) ? data[section] : undefined;
  const entry = isMapping(entries) ? entries[name] : undefined;
  return isMapping(entry) ? entry : undefined;
}

/** What stands at a path, or undefined. */
export const valueAt = (data: unknown, path: readonly (string | number)[]): unknown =>
  path.reduce<unknown>(
    (at, key) => (Array.isArray(at) ? at[Number(key)] : isMapping(at) ? at[String(key)] : undefined),
    data,
  );

/** The middle of a figure as written, in SI units, or undefined. */
export function figureIn(raw: unknown, dimension: Dimension): number | undefined {
  if (typeof raw !== 'string' && typeof raw !== 'number') return undefined;
  const parsed = parseQuantity(raw, dimension);
  return 'quantity' in parsed ? closed(parsed.quantity).typ : undefined;
}

/** What stands behind a figure's number: ' ±5 %'. */
export const toleranceIn = (raw: unknown): string => /\s*(±|\+\/-).*$/.exec(String(raw))?.[0] ?? '';

/** A figure as parts are named: 330 Ω, 1 kΩ, 2 A. */
export const partText = (value: number, dimension: Dimension): string =>
  formatValue(value, dimension)
    .replace(/\.0+(?=\s)/, '')
    .replace(/(\.\d*?)0+(?=\s)/, '$1');
