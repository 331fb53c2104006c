/** Limits of chips: do they name what exists, and do those of one pin agree with one another? */
import { formatValue } from '../quantity/print.js';
import type { Quantity } from '../quantity/quantity.js';
import type { Path, Problem } from '../source/place.js';
import { pinsIn } from './pin-range.js';
import { field, type Fields, type Profile } from './profile.js';
import type { Missing } from './sense-pins.js';
import { fault, highest, listOf, lowest, quantityOf, rowsOf, textOf } from './stated.js';

const DIRECTIONS = ['source', 'sink', 'either'] as const;
const SCOPES = ['each-pin', 'all-pins', 'supply-pins', 'ground-pins', 'package'];
/** From the strongest figure to the weakest: each has to allow what the next one promises. */
const GRADES = ['absolute', 'operating', 'characterised'];

const amperes = (text: unknown): number | undefined => highest(quantityOf(text, 'current'));

/** What is wrong with the limits of a chip or expander. */
export function senseLimits(profile: Profile, missing: Missing): readonly Problem[] {
  const rows = rowsOf(profile['limits']);
  return [
    ...rows.flatMap((row, i) => senseScope(row, ['limits', i], missing)),
    ...senseGroups(rows),
    ...senseGrades(rows, listOf(profile['pins']).map(textOf)),
  ];
}

function senseScope(row: Fields, path: Path, missing: Missing): readonly Problem[] {
  const scope = row['applies-to'];
  const figures = [...DIRECTIONS, 'injected'].filter((name) => row[name] !== undefined);
  const wrong = figures.filter((name) => !((amperes(row[name]) ?? 0) > 0));
  const named = Array.isArray(scope) ? scope : field(scope, 'each');
  return [
    ...(figures.length === 0 && row['power'] === undefined ? [fault(path, 'the row limits nothing')] : []),
    ...wrong.map((name) => fault([...path, name], `${textOf(row[name])} is no current`)),
    ...(Array.isArray(named) ? missing(named, [...path, 'applies-to']) : []),
    ...(typeof scope === 'string' && !SCOPES.includes(scope)
      ? [fault([...path, 'applies-to'], `\`${scope}\` is no scope of a limit`, `one of ${SCOPES.join(', ')}`)]
      : []),
    ...(Array.isArray(scope) && typeof row['name'] !== 'string' ? [fault(path, 'a sum of pins needs a name')] : []),
  ];
}

/** The pins of a row that limits a sum, or undefined. */
const summed = (row: Fields): readonly string[] | undefined =>
  Array.isArray(row['applies-to']) ? pinsIn(row['applies-to']) : undefined;

/** One sum stated twice: the same name and pins, of another grade. */
const sameSum = (a: Fields, b: Fields): boolean =>
  a['name'] === b['name'] && JSON.stringify(summed(a)) === JSON.stringify(summed(b)) && a['grade'] !== b['grade'];

/** Of sums that can hold together, no two of one direction share a pin or a name: those of another package are others. */
function senseGroups(rows: readonly Fields[]): readonly Problem[] {
  return DIRECTIONS.flatMap((direction) =>
    rows.flatMap((row, i) => {
      const pins = summed(row);
      if (pins === undefined || row[direction] === undefined) return [];
      const others = rows
        .slice(0, i)
        .filter(
          (other) => other[direction] !== undefined && overlap(other['when'], row['when']) && !sameSum(other, row),
        );
      const twice = pins.filter((pin) => others.some((other) => summed(other)?.includes(pin)));
      const again = others.some((other) => summed(other) && textOf(other['name']) === textOf(row['name']));
      return [
        ...(again ? [fault(['limits', i, 'name'], `two ${direction} sums are called ${textOf(row['name'])}`)] : []),
        ...(twice.length === 0
          ? []
          : [fault(['limits', i], `these pins are in two ${direction} sums: ${twice.join(', ')}`)]),
      ];
    }),
  );
}

/** What a row is about: single pins, or one sum or total by its name; and how many pins it names. */
function about(row: Fields, all: readonly string[]): { readonly of: string; readonly pins: ReadonlySet<string> } {
  const scope = row['applies-to'];
  const each = field(scope, 'each');
  if (scope === 'each-pin') return { of: 'pin', pins: new Set(all) };
  if (Array.isArray(each)) return { of: 'pin', pins: new Set(pinsIn(each)) };
  const pins = summed(row);
  return pins ? { of: `sum ${[...pins].sort().join(' ')}`, pins: new Set() } : { of: textOf(scope), pins: new Set() };
}

/**
 * What is damage lies at or above what is allowed, and that at or above what is characterised: of one pin or sum, in one
 * direction, under conditions that can be met together. A row for a few pins may undercut one for all of them: it is the
 * narrower one, and wins.
 */
function senseGrades(rows: readonly Fields[], all: readonly string[]): readonly Problem[] {
  const scopes = rows.map((row) => about(row, all));
  const isOver = (weak: number, strong: number): boolean => {
    const [a, b] = [scopes[weak]!, scopes[strong]!];
    if (a.of !== b.of || !overlap(rows[weak]!['when'], rows[strong]!['when'])) return false;
    if (rows[weak]!['per'] !== rows[strong]!['per']) return false;
    if (a.of !== 'pin') return true;
    return (
      b.pins.size >= a.pins.size && [...a.pins].some((pin) => b.pins.has(pin) && !narrower(rows, scopes, strong, pin))
    );
  };
  return rows.flatMap((row, i) => {
    const rank = GRADES.indexOf(textOf(row['grade']));
    return (['source', 'sink'] as const).flatMap((direction): Problem[] => {
      const name = row[direction] === undefined ? 'either' : direction;
      const value = amperes(row[name]);
      if (rank < 0 || value === undefined || (name === 'either' && direction === 'sink')) return [];
      const least = rows.flatMap((other, k) => {
        const above = GRADES.indexOf(textOf(other['grade']));
        const limit = amperes(other[direction] ?? other['either']);
        return above >= 0 && above < rank && limit !== undefined && isOver(i, k)
          ? [{ limit, grade: GRADES[above]! }]
          : [];
      });
      const worst = least.toSorted((a, b) => a.limit - b.limit)[0];
      return worst === undefined || value <= worst.limit
        ? []
        : [
            fault(
              ['limits', i, name],
              `${formatValue(value, 'current')}, ${textOf(row['grade'])}, is above the ${worst.grade} limit of the same pins, ${formatValue(worst.limit, 'current')}`,
            ),
          ];
    });
  });
}

/** Whether another row of the same grade is about fewer pins, this one among them: then that one counts. */
function narrower(
  rows: readonly Fields[],
  scopes: readonly ReturnType<typeof about>[],
  k: number,
  pin: string,
): boolean {
  return rows.some(
    (other, j) =>
      j !== k &&
      other['grade'] === rows[k]!['grade'] &&
      scopes[j]!.of === 'pin' &&
      scopes[j]!.pins.size < scopes[k]!.pins.size &&
      scopes[j]!.pins.has(pin) &&
      DIRECTIONS.some((direction) => other[direction] !== undefined),
  );
}

/** Whether two conditions can hold at once. */
export function overlap(a: unknown, b: unknown): boolean {
  const apart = (['supply', 'temperature'] as const).some((key) => {
    const dimension = key === 'supply' ? 'voltage' : 'temperature';
    const [p, q] = [quantityOf(field(a, key), dimension), quantityOf(field(b, key), dimension)];
    return p !== undefined && q !== undefined && areApart(p, q);
  });
  const other = (['package', 'drive'] as const).some((key) => {
    const [p, q] = [field(a, key), field(b, key)];
    return p !== undefined && q !== undefined && p !== q;
  });
  return !apart && !other;
}

/** Ranges that only touch are meant to follow one another; a single value belongs to a range that it ends. */
function areApart(p: Quantity, q: Quantity): boolean {
  const [from, to] = [Math.max(lowest(p)!, lowest(q)!), Math.min(highest(p)!, highest(q)!)];
  const isRange = (each: Quantity): boolean => lowest(each) !== highest(each);
  return from > to || (from === to && isRange(p) && isRange(q));
}
