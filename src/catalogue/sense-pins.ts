/** Chips and expanders: do limits, settings and rows name pins that exist, and do they agree with one another? */
import { parseQuantity } from '../quantity/parse.js';
import type { Path, Problem } from '../source/place.js';
import { pinsIn } from './pin-range.js';
import { field, type Fields, isFields, type Profile } from './profile.js';

const DIRECTIONS = ['source', 'sink', 'either'] as const;
const problem = (path: Path, says: string): Problem => ({ path, on: 'value', says });
const listOf = (value: unknown): readonly unknown[] => (Array.isArray(value) ? value : []);
const rowsOf = (value: unknown): readonly Fields[] => listOf(value).filter(isFields);

/** A bound in SI units, or undefined. */
const amount = (text: unknown, dimension: 'current' | 'voltage', bound: 'min' | 'typ' | 'max'): number | undefined => {
  if (typeof text !== 'string' && typeof text !== 'number') return undefined;
  const parsed = parseQuantity(text, dimension);
  return 'quantity' in parsed ? parsed.quantity[bound] : undefined;
};

/** What is wrong with the pins of a chip or expander. */
export function sensePins(profile: Profile): readonly Problem[] {
  const pins = new Set(listOf(profile['pins']).map(String));
  const missing = (names: readonly unknown[], path: Path): readonly Problem[] => {
    const found = pinsIn(names);
    const absent = found.filter((pin) => !pins.has(pin));
    if (found.length === 0) return [problem(path, `no pins: ${names.join(', ')}`)];
    return absent.length === 0 ? [] : [problem(path, `no such pin: ${absent.join(', ')}`)];
  };
  const keysOf = (name: string): readonly string[] => Object.keys(isFields(profile[name]) ? profile[name] : {});
  const boot = keysOf('at-boot').filter((key) => key !== 'otherwise' && key !== 'cite' && key !== 'note');

  return [
    ...(pins.size === listOf(profile['pins']).length ? [] : [problem(['pins'], 'a pin is listed twice')]),
    ...(profile['input-only'] === undefined ? [] : missing(listOf(profile['input-only']), ['input-only'])),
    ...['reserved', 'strapping'].flatMap((name) => keysOf(name).flatMap((pin) => missing([pin], [name, pin]))),
    ...boot.flatMap((pin) => missing([pin], ['at-boot', pin])),
    ...rowsOf(profile['limits']).flatMap((row, i) => senseScope(row, ['limits', i], missing)),
    ...senseGroups(profile),
    ...senseGrades(profile),
    ...senseDrive(profile),
    ...senseLevels(profile),
  ];
}

const SCOPES = new Set(['each-pin', 'all-pins', 'supply-pins', 'ground-pins', 'package']);

function senseScope(
  row: Fields,
  path: Path,
  missing: (names: readonly unknown[], path: Path) => readonly Problem[],
): readonly Problem[] {
  const scope = row['applies-to'];
  const figures = [...DIRECTIONS, 'injected'].filter((name) => row[name] !== undefined);
  const wrong = figures.filter((name) => !((amount(row[name], 'current', 'max') ?? 0) > 0));
  const named = Array.isArray(scope) ? scope : field(scope, 'each');
  return [
    ...(figures.length === 0 && row['power'] === undefined ? [problem(path, 'limits nothing')] : []),
    ...wrong.map((name) => problem([...path, name], `${String(row[name])} is no current`)),
    ...(Array.isArray(named) ? missing(named, [...path, 'applies-to']) : []),
    ...(typeof scope === 'string' && !SCOPES.has(scope)
      ? [problem([...path, 'applies-to'], `${scope} is no scope`)]
      : []),
    ...(Array.isArray(scope) && typeof row['name'] !== 'string' ? [problem(path, 'a sum of pins needs a name')] : []),
  ];
}

/** No pin is in two sums of one direction, and no two sums of one direction share a name. */
function senseGroups(profile: Profile): readonly Problem[] {
  return DIRECTIONS.flatMap((direction) => {
    const seen = new Map<string, number>();
    const names = new Set<string>();
    return rowsOf(profile['limits']).flatMap((row, i) => {
      if (!Array.isArray(row['applies-to']) || row[direction] === undefined) return [];
      const name = String(row['name']);
      const twice = pinsIn(row['applies-to']).filter((pin) => seen.has(pin));
      for (const pin of pinsIn(row['applies-to'])) seen.set(pin, i);
      const again = names.has(name) ? [problem(['limits', i, 'name'], `two ${direction} sums are called ${name}`)] : [];
      names.add(name);
      return [
        ...again,
        ...(twice.length === 0 ? [] : [problem(['limits', i], `in two ${direction} sums: ${twice.join(', ')}`)]),
      ];
    });
  });
}

/** A damage limit lies at or above every other limit of the same scope and direction. */
function senseGrades(profile: Profile): readonly Problem[] {
  const rows = rowsOf(profile['limits']);
  return rows.flatMap((row, i) =>
    DIRECTIONS.flatMap((direction) => {
      const value = amount(row[direction], 'current', 'max');
      const damage = rows
        .filter((other) => other['grade'] === 'absolute' && sameScope(other, row))
        .flatMap((other) => amount(other[direction], 'current', 'max') ?? []);
      const least = Math.min(...damage);
      return value === undefined || value <= least
        ? []
        : [problem(['limits', i, direction], `is above the damage limit of the same pins`)];
    }),
  );
}

const sameScope = (a: Fields, b: Fields): boolean =>
  JSON.stringify(a['applies-to']) === JSON.stringify(b['applies-to']);

/** The default is one of the settings, and every row names a setting. */
function senseDrive(profile: Profile): readonly Problem[] {
  const drive = profile['drive'];
  const rows = (['output-high', 'output-low'] as const).flatMap((name) =>
    rowsOf(profile[name]).map((row, i) => ({ setting: row['drive'], path: [name, i] })),
  );
  if (!isFields(drive)) {
    return rows.flatMap(({ setting, path }) => (setting === undefined ? [] : [problem(path, 'names a drive setting')]));
  }
  const settings = listOf(drive['settings']);
  return [
    ...(settings.includes(drive['default']) ? [] : [problem(['drive', 'default'], 'is none of the settings')]),
    ...rows.flatMap(({ setting, path }) =>
      settings.includes(setting) ? [] : [problem(path, 'names no drive setting')],
    ),
  ];
}

/** A high output lies in the upper half of its supply, a low one in the lower. */
function senseLevels(profile: Profile): readonly Problem[] {
  return (['output-high', 'output-low'] as const).flatMap((name) =>
    rowsOf(profile[name]).flatMap((row, i) => {
      const supply = amount(row['supply'], 'voltage', 'typ') ?? NaN;
      const volts = (['min', 'typ', 'max'] as const).flatMap((bound) => amount(row['value'], 'voltage', bound) ?? []);
      const right = volts.every((v) =>
        name === 'output-high' ? v > supply / 2 && v < supply : v > 0 && v < supply / 2,
      );
      const carries = (amount(row['at'], 'current', 'max') ?? 0) > 0;
      return right && volts.length > 0 && carries ? [] : [problem([name, i], 'is no output level under load')];
    }),
  );
}
