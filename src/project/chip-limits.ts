/** The rows of limits that a chip's pins and their sums have: the project's own before those of its profile. */
import { citation } from '../catalogue/citation.js';
import { packagesOf } from '../catalogue/packages.js';
import { pinsIn } from '../catalogue/pin-range.js';
import { OWN_FIGURE, isMapping } from '../loads/figures.js';
import type { Grade, LimitPlan } from '../loads/account-plan.js';
import type { Origin } from '../loads/branch-plan.js';
import type { Dimension } from '../quantity/dimension.js';
import { parseQuantity } from '../quantity/parse.js';
import { closed } from '../quantity/quantity.js';
import type { Path } from '../source/place.js';
import { amperesOf, driveOf } from './chip-drive.js';
import type { ChipPin, ChipSetting, Raw } from './chip-setting.js';
import { list } from './chip-setting.js';

/** One limit of a row, in one direction. */
export interface Row {
  readonly scope: 'each' | 'sum' | 'total';
  readonly name: string;
  /** The pins of a sum, as its source lists them. */
  readonly listed?: string;
  /** Lower-case chip or header names; empty: all pins. */
  readonly pins: ReadonlySet<string>;
  readonly direction: 'source' | 'sink' | 'at-most' | 'injected' | 'power';
  readonly grade: Grade;
  readonly limit: LimitPlan;
  /** It holds for pins with this drive setting only, amperes. */
  readonly drive?: number;
  /** Of what is injected: false where no junction leads to the supply. */
  readonly clamp?: unknown;
  /** The direction is 'either': both ways add up. */
  readonly own: boolean;
}

export const covers = (setting: ChipSetting, row: Row, pin: ChipPin): boolean =>
  (row.pins.size === 0 || row.pins.has(pin.chipPin.toLowerCase()) || row.pins.has(pin.label.toLowerCase())) &&
  (row.drive === undefined || row.drive === amperesOf(driveOf(setting, pin)));

export function limitRows(setting: ChipSetting): Row[] {
  const { profile, ownLimits, path } = setting;
  knownPackage(setting);
  const own = list(ownLimits).flatMap((raw, k) => (isMapping(raw) ? rowsOf(setting, raw, [...path, 'limits', k]) : []));
  const published = list(profile['limits']).flatMap((raw) => (isMapping(raw) ? rowsOf(setting, raw, undefined) : []));
  const replaced = (row: Row): boolean =>
    own.some(
      (o) => o.direction === row.direction && o.grade === row.grade && o.scope === row.scope && sameScope(o, row),
    );
  return [...own, ...published.filter((row) => !replaced(row))];
}

/** A package that none of the chip's rows is for is a slip: with it those of every package would be left out. */
function knownPackage({ profile, figures, path, remarks }: ChipSetting): void {
  const chosen = figures.word('package');
  const known = packagesOf(profile);
  if (chosen === undefined || known.length === 0 || known.includes(chosen)) return;
  remarks.problem({
    path: [...path, 'package'],
    on: 'value',
    says: `the limits of ${profile.title} name no package \`${chosen}\``,
    expected: `one of ${known.join(', ')}, or none, so that those of all packages hold`,
  });
}

const sameScope = (a: Row, b: Row): boolean =>
  a.scope === 'total' ? a.name === b.name : a.pins.size === b.pins.size && [...a.pins].every((p) => b.pins.has(p));

function rowsOf(setting: ChipSetting, raw: Raw, path: Path | undefined): Row[] {
  const { profile, remarks } = setting;
  if (!holds(setting, raw['when'])) return [];
  const target = scopeOf(raw['applies-to'], typeof raw['name'] === 'string' ? raw['name'] : undefined);
  if (target === undefined) return [];
  const grade = (raw['grade'] as Grade | undefined) ?? 'operating';
  const origin: Origin = path === undefined ? (citation(raw['cite'], profile.documents) ?? OWN_FIGURE) : OWN_FIGURE;
  if (path === undefined && (origin.basis === 'practice' || origin.basis === 'memory'))
    remarks.unsourced?.({
      figure: `${profile.id} limits, ${target.name.replace('-', ' ')}`,
      basis: origin.basis,
      where: origin.where ?? '',
      told: origin,
    });
  const perPin = raw['per'] === 'pin' && isPerPin(setting, raw, path);
  return (['source', 'sink', 'either', 'injected', 'power'] as const).flatMap((direction): Row[] => {
    const text = raw[direction];
    if (text === undefined) return [];
    const parsed = parseQuantity(text as string, direction === 'power' ? 'power' : 'current');
    if (!('quantity' in parsed)) {
      if (path)
        remarks.problem({ path: [...path, direction], on: 'value', says: parsed.problem, expected: parsed.expected });
      return [];
    }
    const limit: LimitPlan = {
      value: closed(parsed.quantity).min,
      stated: parsed.quantity.stated,
      grade,
      margin: grade === 'absolute' || grade === 'operating' ? 'current' : 'none',
      origin,
      ...(conditionText(raw['when']) && { condition: conditionText(raw['when'])! }),
      ...(perPin && {
        condition: [`of one of its ${target.name.replace('-', ' ')}`, conditionText(raw['when'])]
          .filter(Boolean)
          .join(', '),
        asks: `how many ${target.name.replace('-', ' ')} does ${setting.owner} have, and how do they share what its pins carry?`,
      }),
    };
    const drive = isMapping(raw['when']) ? amperesOf(raw['when']['drive']) : undefined;
    const common = { ...target, grade, limit, own: path !== undefined, ...(drive !== undefined && { drive }) };
    // Limits of one pin that hold either way hold each way.
    if (direction === 'either' && target.scope === 'each')
      return (['source', 'sink'] as const).map((d) => ({ ...common, direction: d }));
    const row = common;
    if (direction !== 'injected') return [{ ...row, direction: direction === 'either' ? 'at-most' : direction }];
    if (target.scope === 'each') return [{ ...row, direction, clamp: raw['clamp'] }];
    if (path)
      remarks.problem({
        path: [...path, direction],
        on: 'key',
        says: 'what is pushed into several pins together is not computed yet',
        expected: '`applies-to: each-pin`, or `{ each: [ … ] }`',
      });
    return [];
  });
}

/** Whether `per: pin` stands where it means something: at what passes the supply or ground pins. */
function isPerPin({ remarks }: ChipSetting, raw: Raw, path: Path | undefined): boolean {
  if (raw['applies-to'] === 'supply-pins' || raw['applies-to'] === 'ground-pins') return true;
  if (path)
    remarks.problem({
      path: [...path, 'per'],
      on: 'key',
      says: '`per: pin` is of limits of the supply or ground pins',
      expected: '`applies-to: supply-pins` or `ground-pins`; for each of the other pins `applies-to: each-pin`',
    });
  return false;
}

function scopeOf(raw: unknown, name: string | undefined): Pick<Row, 'scope' | 'name' | 'pins' | 'listed'> | undefined {
  const set = (pins: readonly unknown[]): ReadonlySet<string> => new Set(pinsIn(pins).map((p) => p.toLowerCase()));
  if (raw === 'each-pin') return { scope: 'each', name: 'each-pin', pins: new Set() };
  if (isMapping(raw)) return { scope: 'each', name: 'each', pins: set(list(raw['each'])) };
  if (Array.isArray(raw)) return { scope: 'sum', name: name ?? raw.join(' '), listed: raw.join(', '), pins: set(raw) };
  if (raw === 'all-pins' || raw === 'supply-pins' || raw === 'ground-pins' || raw === 'package')
    return { scope: 'total', name: raw, pins: new Set() };
  return undefined;
}

/** Whether a row's condition is that of this project. */
function holds(setting: ChipSetting, raw: unknown): boolean {
  if (!isMapping(raw)) return true;
  const within = (text: unknown, dimension: Dimension, value: number): boolean => {
    const parsed = parseQuantity(text as string, dimension);
    if (!('quantity' in parsed)) return true;
    const { min = -Infinity, max = Infinity } = parsed.quantity;
    return value >= min && value <= max;
  };
  if (raw['supply'] !== undefined && !within(raw['supply'], 'voltage', setting.window.typ)) return false;
  if (raw['temperature'] !== undefined && !within(raw['temperature'], 'temperature', setting.ambientHottest))
    return false;
  if (raw['package'] !== undefined && setting.figures.word('package') !== undefined)
    return raw['package'] === setting.figures.word('package');
  return true;
}

const conditionText = (raw: unknown): string | undefined =>
  isMapping(raw)
    ? Object.entries(raw)
        .map(([k, v]) => `${k} ${String(v)}`)
        .join(', ')
    : undefined;

/** The account of a sum of pins: 'main.right-group'. */
export const sumId = (owner: string, name: string): string =>
  `${owner}.${name.toLowerCase().replace(/[^a-z0-9]+/g, '-')}`;
