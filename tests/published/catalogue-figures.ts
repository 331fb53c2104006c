/** Figures of the catalogue in SI units, for tests that restate them from the documents. */
import { builtIn } from '../../src/catalogue/built-in.js';
import { pinsIn } from '../../src/catalogue/pin-range.js';
import { type Fields, field } from '../../src/catalogue/profile.js';
import type { Dimension } from '../../src/quantity/dimension.js';
import { parseQuantity } from '../../src/quantity/parse.js';

/** What stands at a path of a profile. */
export function at(id: string, ...path: readonly (string | number)[]): unknown {
  const profile = builtIn.profile(id);
  if (!profile) throw new Error(`no profile ${id}`);
  return path.reduce<unknown>(
    (node, key) => (Array.isArray(node) ? node[Number(key)] : field(node, String(key))),
    profile,
  );
}

/** The bounds of a text, or of a figure's value, in SI units; open ones are absent. */
export function bounds(stated: unknown, dimension: Dimension): { min?: number; typ?: number; max?: number } {
  const text = field(stated, 'value') ?? stated;
  const parsed = parseQuantity(text as string, dimension);
  if (!('quantity' in parsed)) throw new Error(`${String(text)} is no ${dimension}`);
  const { min, typ, max } = parsed.quantity;
  return Object.fromEntries(Object.entries({ min, typ, max }).filter(([, value]) => value !== undefined));
}

/** The one value of a figure without tolerance. */
export function value(stated: unknown, dimension: Dimension): number | undefined {
  const { min, max } = bounds(stated, dimension);
  return min === max ? max : undefined;
}

/** Points of a figure as [condition, bounds] in SI units. */
export const points = (stated: unknown, dimension: Dimension, condition: Dimension) =>
  (stated as readonly Fields[]).map((point) => [value(point['at'], condition), bounds(point, dimension)] as const);

/** The limits of a chip for one scope, direction and grade, with the condition each holds at: [amperes, when]. */
export function limits(id: string, scope: unknown, direction: string, grade: string) {
  return (at(id, 'limits') as readonly Fields[])
    .filter((row) => JSON.stringify(row['applies-to']) === JSON.stringify(scope) && row['grade'] === grade)
    .filter((row) => row[direction] !== undefined)
    .map((row) => [value(row[direction], 'current'), row['when'] ?? {}] as const);
}

/** The rows of VOH or VOL as [supply, drive, current, bounds] in SI units. @param pins those that the rows name; none: rows for all */
export const levels = (id: string, name: 'output-high' | 'output-low', pins?: readonly string[]) =>
  (at(id, name) as readonly Fields[])
    .filter((row) => JSON.stringify(row['pins']) === JSON.stringify(pins))
    .map(
      (row) =>
        [
          value(row['supply'], 'voltage'),
          row['drive'] === undefined ? undefined : value(row['drive'], 'current'),
          value(row['at'], 'current'),
          bounds(row, 'voltage'),
        ] as const,
    );

/** Every sum of pins that is limited in a direction as [pins in order, amperes]. @param held the condition of the rows wanted; none: those without */
export const sums = (id: string, direction: string, held: unknown = undefined) =>
  (at(id, 'limits') as readonly Fields[])
    .filter((row) => Array.isArray(row['applies-to']) && row[direction] !== undefined)
    .filter((row) => JSON.stringify(row['when']) === JSON.stringify(held))
    .map((row) => [pinsInOrder(row['applies-to'] as string[]), value(row[direction], 'current')] as const);

/** The pins of a list with ranges, in order, as one text. */
export const pinsInOrder = (list: readonly string[]): string => [...pinsIn(list)].sort().join(' ');

/** The limits of a scope, direction and grade that hold at a supply voltage, amperes. */
export const heldAt = (id: string, scope: unknown, direction: string, grade: string, volts: number) =>
  limits(id, scope, direction, grade).flatMap(([amps, when]) => {
    const { min = 0, max = Infinity } = bounds((when as Fields)['supply'] ?? '0 to 1000 V', 'voltage');
    return min <= volts && volts <= max ? [amps] : [];
  });
