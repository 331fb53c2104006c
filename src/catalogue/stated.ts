/** Reading what a profile states, for the checks of its sense: figures as quantities, lists and mappings as what they are. */
import type { Dimension } from '../quantity/dimension.js';
import { parseQuantity } from '../quantity/parse.js';
import type { Quantity } from '../quantity/quantity.js';
import type { Path, Problem } from '../source/place.js';
import { type Fields, isFields, isFigure } from './profile.js';

/** Something wrong at the value of a path. */
export const fault = (path: Path, says: string, expected?: string): Problem => ({
  path,
  on: 'value',
  says,
  ...(expected !== undefined && { expected }),
});

/** Anything that a file states, as text: plain values as they are, the rest as data, cut short. Mappings have no text of their own. */
export function textOf(value: unknown): string {
  if (typeof value !== 'object' || value === null) return String(value);
  const text = JSON.stringify(value);
  return text.length > 40 ? `${text.slice(0, 39)}…` : text;
}

export const listOf = (value: unknown): readonly unknown[] => (Array.isArray(value) ? value : []);
export const rowsOf = (value: unknown): readonly Fields[] => listOf(value).filter(isFields);
export const fieldsOf = (value: unknown): Fields => (isFields(value) ? value : {});

/** A quantity as it is written; undefined when it is none. */
export function quantityOf(text: unknown, dimension: Dimension): Quantity | undefined {
  if (typeof text !== 'string' && typeof text !== 'number') return undefined;
  const parsed = parseQuantity(text, dimension);
  return 'quantity' in parsed ? parsed.quantity : undefined;
}

/** A figure of a mapping; undefined when it is not stated or holds at points. */
export function figureOf(of: Fields, name: string, dimension: Dimension): Quantity | undefined {
  const stated = of[name];
  return isFigure(stated) ? quantityOf(stated.value, dimension) : undefined;
}

/** The points of a figure that is stated as one or several, with their conditions. */
export function pointsOf(
  of: Fields,
  name: string,
  dimension: Dimension,
  condition: Dimension,
): readonly { readonly value: Quantity; readonly at?: Quantity; readonly path: Path }[] {
  const stated = of[name];
  return (Array.isArray(stated) ? stated : [stated]).flatMap((point: unknown, i) => {
    const value = isFigure(point) ? quantityOf(point.value, dimension) : undefined;
    const at = isFigure(point) ? quantityOf(point.at, condition) : undefined;
    const path = Array.isArray(stated) ? [name, i] : [name];
    return value ? [{ value, path, ...(at && { at }) }] : [];
  });
}

/** The typical value of a quantity, or the middle of its bounds, or the one bound it has. */
export const middle = (q: Quantity | undefined): number | undefined =>
  q && (q.typ ?? (q.min !== undefined && q.max !== undefined ? (q.min + q.max) / 2 : (q.max ?? q.min)));

/** The highest and the lowest that a quantity says. */
export const highest = (q: Quantity | undefined): number | undefined => q && (q.max ?? q.typ ?? q.min);
export const lowest = (q: Quantity | undefined): number | undefined => q && (q.min ?? q.typ ?? q.max);
