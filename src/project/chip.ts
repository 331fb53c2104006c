/** A chip in the project, on a board or bare: its pins, their output resistance and the limits they and their sums have. */
import type { LevelRow, PinResistance } from '../circuit/pin.js';
import { pinResistance } from '../circuit/pin.js';
import { citation } from '../catalogue/citation.js';
import { pinsIn } from '../catalogue/pin-range.js';
import type { Profile } from '../catalogue/profile.js';
import type { Figures } from '../loads/figures.js';
import { OWN_FIGURE, isMapping } from '../loads/figures.js';
import type { InputPin } from '../loads/lines/line.js';
import type { BoundPin } from '../loads/lowering.js';
import type { Grade, LimitPlan, Origin } from '../loads/plan.js';
import { parseQuantity } from '../quantity/parse.js';
import { closed } from '../quantity/quantity.js';
import { formatValue } from '../quantity/print.js';
import type { Interval } from '../quantity/interval.js';
import type { Dimension } from '../quantity/dimension.js';
import type { Path } from '../source/place.js';
import { leakageOf, pullsOf, thresholdsOf } from './chip-inputs.js';
import type { PinAccountPlan } from './project.js';
import type { Gathered } from './remarks.js';

export interface ChipPin {
  /** 'main.D9'. */
  readonly account: string;
  readonly label: string;
  /** As sentences say it: with its owner unless there is one controller only. */
  readonly told: string;
  readonly chipPin: string;
  readonly reserved?: string;
  readonly inputOnly: boolean;
  /** A builder can put a wire on it: a board's header has it, or the chip is bare. */
  readonly reachable: boolean;
}

export interface Chip {
  readonly owner: string;
  readonly rail: string;
  readonly path: Path;
  /** By lower-case header and chip name. */
  readonly pins: ReadonlyMap<string, ChipPin>;
  bind(pin: ChipPin): BoundPin;
  /** Names of the sums that a pin's current counts in: pins with the same ones are as good as each other. */
  sumsOf(pin: ChipPin): readonly string[];
  /** A pin as one that reads; also a line that steers the chip, by its role. */
  input(pin: ChipPin | string): InputPin;
  /** Accounts of the pins in use, of the sums they belong to, and of the chip's totals. */
  accounts(
    used: ReadonlyMap<string, ReadonlySet<'source' | 'sink'>>,
    own: PinAccountPlan['own'],
  ): readonly PinAccountPlan[];
}

export interface ChipSetting {
  readonly owner: string;
  /** The project's only controller: its pins need no owner's name. */
  readonly alone: boolean;
  readonly rail: string;
  /** Volts of the rail as stated. */
  readonly window: Interval;
  readonly path: Path;
  readonly profile: Profile;
  /** The entry's figures with the chip's behind them. */
  readonly figures: Figures;
  /** Header name → chip pin; absent for a bare chip. */
  readonly headers?: Readonly<Record<string, unknown>>;
  readonly reserved: Readonly<Record<string, unknown>>;
  readonly inputOnly: readonly string[];
  /** Limit rows of the project's own, before the profile's. */
  readonly ownLimits: unknown;
  readonly ambientHottest: number;
  readonly remarks: Gathered;
}

type Raw = Readonly<Record<string, unknown>>;

export function chipOf(setting: ChipSetting): Chip {
  const { owner, profile, headers } = setting;
  const names = new Map<string, ChipPin>();
  const inputOnly = new Set([...pinsIn(list(profile['input-only'])), ...setting.inputOnly].map((n) => n.toLowerCase()));
  const reserved = new Map(
    [...Object.entries(mapping(profile['reserved'])), ...Object.entries(setting.reserved)].map(([k, v]) => [
      k.toLowerCase(),
      String(v),
    ]),
  );
  const add = (label: string, chipPin: string, reachable: boolean): void => {
    const why = reserved.get(label.toLowerCase()) ?? reserved.get(chipPin.toLowerCase());
    const pin: ChipPin = {
      account: `${owner}.${label}`,
      label,
      told: setting.alone ? label : `${owner}.${label}`,
      chipPin,
      inputOnly: inputOnly.has(label.toLowerCase()) || inputOnly.has(chipPin.toLowerCase()),
      reachable,
      ...(why !== undefined && { reserved: why }),
    };
    names.set(label.toLowerCase(), pin);
    if (!names.has(chipPin.toLowerCase())) names.set(chipPin.toLowerCase(), pin);
  };
  for (const [label, chipPin] of Object.entries(headers ?? {})) add(label, String(chipPin), true);
  // A pin that no header carries answers to its chip name.
  for (const chipPin of pinsIn(list(profile['pins'])))
    if (!names.has(chipPin.toLowerCase())) add(chipPin, chipPin, headers === undefined);

  const rows = limitRows(setting);
  const resistances = new Map<string, PinResistance | undefined>();
  const resistance = (level: 'high' | 'low', drive: string | undefined): PinResistance | undefined => {
    const key = `${level} ${drive ?? ''}`;
    if (!resistances.has(key)) resistances.set(key, resistanceOf(setting, level, drive));
    return resistances.get(key);
  };
  return {
    owner,
    rail: setting.rail,
    path: setting.path,
    pins: names,
    bind(pin) {
      const drive = driveOf(setting, pin);
      const limits = rows.filter((r) => r.scope === 'each' && covers(r, pin) && r.grade === 'characterised');
      const least = (d: 'source' | 'sink'): number | undefined =>
        limits.find((r) => r.direction === d)?.limit.value as number | undefined;
      const [source, sink] = [least('source'), least('sink')];
      return {
        account: pin.account,
        label: pin.label,
        owner,
        rail: setting.rail,
        high: resistance('high', drive),
        low: resistance('low', drive),
        characterised: { ...(source !== undefined && { source }), ...(sink !== undefined && { sink }) },
      };
    },
    sumsOf: (pin) => [...new Set(rows.filter((r) => r.scope === 'sum' && covers(r, pin)).map((r) => r.name))],
    input(asked) {
      const pin = typeof asked === 'string' ? steering(owner, asked) : asked;
      const pushed = rows.filter((r) => r.direction === 'injected' && r.scope === 'each' && covers(r, pin));
      const narrow = pushed.some((r) => r.pins.size > 0) ? pushed.filter((r) => r.pins.size > 0) : pushed;
      const thresholds = thresholdsOf(profile, pin, setting.window.typ);
      return {
        account: pin.account,
        label: pin.told,
        owner,
        rail: setting.rail,
        ...(thresholds && { thresholds }),
        injected: narrow.map((r) => r.limit),
        clamped: !narrow.some((r) => r.clamp === false),
        pulls: pullsOf(setting.figures, pin.account, pin),
        leakage: leakageOf(setting.figures),
      };
    },
    accounts: (used, own) => chipAccounts(setting, names, rows, used, own),
  };
}

/** A line that steers an expander, by its role. */
const steering = (owner: string, role: string): ChipPin => ({
  ...{
    account: `${owner}.${role}`,
    label: role,
    told: `${owner}.${role}`,
    chipPin: role,
    inputOnly: true,
    reachable: true,
  },
});

const list = (raw: unknown): readonly unknown[] => (Array.isArray(raw) ? raw : []);
const mapping = (raw: unknown): Raw => (isMapping(raw) ? raw : {});

/** One limit of a row, in one direction. */
interface Row {
  readonly scope: 'each' | 'sum' | 'total';
  readonly name: string;
  /** The pins of a sum, as its source lists them. */
  readonly listed?: string;
  /** Lower-case chip or header names; empty: all pins. */
  readonly pins: ReadonlySet<string>;
  readonly direction: 'source' | 'sink' | 'at-most' | 'injected';
  readonly grade: Grade;
  readonly limit: LimitPlan;
  /** Of what is injected: false where no junction leads to the supply. */
  readonly clamp?: unknown;
  /** The direction is 'either': both ways add up. */
  readonly own: boolean;
}

const covers = (row: Row, pin: ChipPin): boolean =>
  row.pins.size === 0 || row.pins.has(pin.chipPin.toLowerCase()) || row.pins.has(pin.label.toLowerCase());

function limitRows(setting: ChipSetting): Row[] {
  const { profile, ownLimits, path } = setting;
  const own = list(ownLimits).flatMap((raw, k) => (isMapping(raw) ? rowsOf(setting, raw, [...path, 'limits', k]) : []));
  const published = list(profile['limits']).flatMap((raw) => (isMapping(raw) ? rowsOf(setting, raw, undefined) : []));
  const replaced = (row: Row): boolean =>
    own.some(
      (o) => o.direction === row.direction && o.grade === row.grade && o.scope === row.scope && sameScope(o, row),
    );
  return [...own, ...published.filter((row) => !replaced(row))];
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
  return (['source', 'sink', 'either', 'injected'] as const).flatMap((direction): Row[] => {
    const text = raw[direction];
    if (text === undefined) return [];
    const parsed = parseQuantity(text as string, 'current');
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
    };
    // Limits of one pin that hold either way hold each way.
    if (direction === 'either' && target.scope === 'each')
      return (['source', 'sink'] as const).map((d) => ({
        ...target,
        direction: d,
        grade,
        limit,
        own: path !== undefined,
      }));
    const row = { ...target, grade, limit, own: path !== undefined };
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

/** The drive strength of a pin: the project's choice, or the chip's default. */
const driveOf = (setting: ChipSetting, pin: ChipPin): string | undefined =>
  chosenDrive(setting, pin) ?? setting.figures.within('drive').word('default');

/** The drive strength that the project chose for a pin. */
function chosenDrive(setting: ChipSetting, pin: ChipPin): string | undefined {
  const pins = setting.figures.within('pins');
  for (const name of [pin.label, pin.chipPin]) {
    const chosen = pins.within(name).word('drive');
    if (chosen !== undefined) return chosen;
  }
  return undefined;
}

/** A setting below the highest, amperes: beyond it nothing is characterised, and nothing breaks (rule 13 of the format). */
function lowerDrive(setting: ChipSetting, pin: ChipPin): Pick<PinAccountPlan, 'drive'> {
  const stated = chosenDrive(setting, pin);
  const settings = list(mapping(setting.profile['drive'])['settings']).map(String);
  const amps = (text: string | undefined): number => {
    const parsed = text === undefined ? undefined : parseQuantity(text, 'current');
    return parsed && 'quantity' in parsed ? closed(parsed.quantity).typ : NaN;
  };
  const own = amps(stated);
  return stated !== undefined && own < amps(settings.at(-1)) ? { drive: { amps: own, stated } } : {};
}

function resistanceOf(
  setting: ChipSetting,
  level: 'high' | 'low',
  drive: string | undefined,
): PinResistance | undefined {
  const { figures, profile, window, remarks, owner } = setting;
  const own = figures.within('pin-resistance');
  const direction = level === 'high' ? 'source' : 'sink';
  const stated = own.figure(direction, 'resistance');
  if (stated?.path) {
    const ohms = closed(stated.quantity, { min: (x) => x / 2 });
    return { ohms };
  }
  const rows = list(profile[level === 'high' ? 'output-high' : 'output-low']).flatMap((raw) =>
    levelRow(raw, level, drive),
  );
  const found = pinResistance(rows, stated && closed(stated.quantity).typ, window);
  if (found?.assumed !== undefined)
    remarks.assume(
      owner,
      `output resistance of a pin that is ${level}: ${formatValue(found.ohms.min, 'resistance')} / ${formatValue(found.ohms.typ, 'resistance')} / ${formatValue(found.ohms.max, 'resistance')}, ${found.assumed}`,
    );
  return found;
}

function levelRow(raw: unknown, level: 'high' | 'low', drive: string | undefined): LevelRow[] {
  if (!isMapping(raw)) return [];
  const read = (value: unknown, dimension: Dimension) => {
    const parsed = parseQuantity(value as string, dimension);
    return 'quantity' in parsed ? parsed.quantity : undefined;
  };
  if (drive !== undefined && raw['drive'] !== undefined) {
    const [a, b] = [read(raw['drive'], 'current'), read(drive, 'current')];
    if (a?.typ !== b?.typ) return [];
  }
  const [volts, at, supply] = [
    read(raw['value'], 'voltage'),
    read(raw['at'], 'current'),
    read(raw['supply'], 'voltage'),
  ];
  if (volts === undefined || at === undefined || supply === undefined) return [];
  const rail = closed(supply).typ;
  const lost = (v: number | undefined): number | undefined =>
    v === undefined ? undefined : level === 'high' ? rail - v : v;
  const typ = volts.exact ? undefined : lost(volts.typ);
  const max = lost(level === 'high' ? volts.min : volts.max);
  return [
    {
      supply: rail,
      current: closed(at).typ,
      lost: { ...(typ !== undefined && { typ }), ...(max !== undefined && { max }) },
    },
  ];
}

function chipAccounts(
  setting: ChipSetting,
  names: ReadonlyMap<string, ChipPin>,
  rows: readonly Row[],
  used: ReadonlyMap<string, ReadonlySet<'source' | 'sink'>>,
  own: PinAccountPlan['own'],
): PinAccountPlan[] {
  const { owner, path } = setting;
  const pins = [...new Set(names.values())].filter((p) => used.has(p.account));
  const single = pins.flatMap((pin) =>
    [...used.get(pin.account)!].map((direction): PinAccountPlan => {
      const each = rows.filter((r) => r.scope === 'each' && r.direction === direction && covers(r, pin));
      // A row that names its pins is narrower than one for all.
      const narrow = (grade: Grade): readonly Row[] => {
        const named = each.filter((r) => r.grade === grade && r.pins.size > 0);
        return named.length > 0 ? named : each.filter((r) => r.grade === grade);
      };
      const limits = (['absolute', 'operating', 'characterised', 'practice'] as const)
        .flatMap(narrow)
        .map((r) => r.limit);
      return {
        id: pin.account,
        kind: 'pin',
        title: `pin ${pin.label}${setting.alone ? '' : ` of ${owner}`}, ${direction}`,
        direction,
        pins: [pin.account],
        own: [],
        path,
        limits,
        ...lowerDrive(setting, pin),
        ...(limits.length === 0 && {
          missing: { figure: 'limits', asks: `what current may one pin of ${owner} ${direction}?` },
        }),
      };
    }),
  );
  const sums = new Map<string, PinAccountPlan>();
  for (const row of rows) {
    if (row.scope === 'each') continue;
    const members = pins.filter((p) => covers(row, p));
    if (members.length === 0) continue;
    const direction = row.name === 'supply-pins' ? 'source' : row.name === 'ground-pins' ? 'sink' : row.direction;
    const id = `${owner}.${row.name.toLowerCase().replace(/[^a-z0-9]+/g, '-')}`;
    const key = `${id} ${direction}`;
    const known = sums.get(key);
    sums.set(key, {
      id,
      kind: row.scope === 'sum' ? 'group' : 'total',
      title:
        row.scope === 'sum'
          ? `${row.name}${row.listed && row.listed !== row.name ? ` (${row.listed})` : ''}${setting.alone ? '' : ` of ${owner}`}, ${direction}`
          : `${row.name.replace('-', ' ')} of ${owner}, ${direction}`,
      direction,
      pins: members.map((p) => p.account),
      own: row.name === 'supply-pins' || row.name === 'ground-pins' ? own : [],
      path,
      limits: [...(known?.limits ?? []), row.limit],
    });
  }
  return [...single, ...sums.values()];
}
