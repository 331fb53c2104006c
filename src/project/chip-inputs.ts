/** What a chip's pins are as inputs: the levels they read by, what holds them, what may be pushed into them, what they leak. */
import { citation } from '../catalogue/citation.js';
import { pinsIn } from '../catalogue/pin-range.js';
import type { Profile } from '../catalogue/profile.js';
import type { Figure, Figures } from '../loads/figures.js';
import { OWN_FIGURE, isMapping } from '../loads/figures.js';
import type { Pull, Threshold, Thresholds } from '../loads/lines/line.js';
import type { Origin } from '../loads/branch-plan.js';
import type { Interval } from '../quantity/interval.js';
import { parseQuantity } from '../quantity/parse.js';
import { interpolate } from '../quantity/points.js';
import type { Quantity } from '../quantity/quantity.js';
import { closed } from '../quantity/quantity.js';

/** A pin by its two names. */
interface Named {
  readonly label: string;
  readonly chipPin: string;
}

/** What an input leaks when nobody says so, amperes: so much decides whether it floats (rule 21 of the format). */
const USUAL_LEAKAGE: Interval = { min: 0, typ: 0, max: 1e-6 };

/** One row of the table of input levels: shares of the supply or volts, at a supply or over a range of it. */
interface Row {
  readonly supply: Interval;
  /** Holds over a range of supplies as a share of each. */
  readonly share: boolean;
  readonly low: number;
  readonly high: number;
  readonly stated: { readonly low: string; readonly high: string };
  readonly origin: Origin;
  readonly pins: readonly string[];
}

/** The levels that a pin reads by at its supply, or undefined when the chip's data sheet tells none. @param nominal volts of the supply */
export function thresholdsOf(profile: Profile, pin: Named, nominal: number): Thresholds | undefined {
  const rows = listOf(profile['thresholds']).flatMap((raw) => rowOf(raw, profile));
  const named = rows.filter((r) => r.pins.some((name) => isOf(name, pin)));
  const own = named.length > 0 ? named : rows.filter((r) => r.pins.length === 0);
  const ranged = own.find((r) => r.share && r.supply.min <= nominal && r.supply.max >= nominal);
  if (ranged) return { low: byShare(ranged, 'low'), high: byShare(ranged, 'high') };
  if (own.length === 0) return undefined;
  return { low: byPoints(own, 'low'), high: byPoints(own, 'high') };
}

const byShare = (row: Row, level: 'low' | 'high'): Threshold => ({
  volts: (supply) => row[level] * supply,
  stated: `${Math.round(row[level] * 1000) / 10} % of its supply`,
  origin: row.origin,
});

/** Between the supplies of a table its levels are interpolated; one level that holds at one supply is taken as a share of it. */
function byPoints(rows: readonly Row[], level: 'low' | 'high'): Threshold {
  const points = rows.map((r) => {
    const volts = r.share ? r[level] * r.supply.typ : r[level];
    return { at: r.supply.typ, value: { min: volts, typ: volts, max: volts } };
  });
  const nearest = rows.at(-1)!;
  const [only] = points;
  return {
    volts: (supply) =>
      points.length === 1 ? (only!.value.typ / only!.at) * supply : interpolate(points, supply).value.typ,
    stated: rows.map((r) => `${r.stated[level]} at ${r.supply.typ} V`).join(', '),
    origin: nearest.origin,
  };
}

function rowOf(raw: unknown, profile: Profile): Row[] {
  if (!isMapping(raw)) return [];
  const supply = read(raw['supply'], 'voltage');
  const level = (key: 'low' | 'high') => read(raw[key], 'ratio') ?? read(raw[key], 'voltage');
  const [low, high] = [level('low'), level('high')];
  if (supply === undefined || low === undefined || high === undefined) return [];
  return [
    {
      supply: closed(supply),
      share: low.dimension === 'ratio' && !supply.exact,
      low: low.max ?? closed(low).max,
      high: high.min ?? closed(high).min,
      stated: { low: bare(low.stated), high: bare(high.stated) },
      origin: citation(raw['cite'], profile.documents) ?? OWN_FIGURE,
      pins: pinsIn(listOf(raw['pins'])),
    },
  ].map((row) =>
    low.dimension === 'ratio' && supply.exact
      ? { ...row, low: row.low * row.supply.typ, high: row.high * row.supply.typ }
      : row,
  );
}

const bare = (stated: string): string => stated.replace(/^(min|max) /, '');

function read(raw: unknown, dimension: 'ratio' | 'voltage'): Quantity | undefined {
  if (typeof raw !== 'string' && typeof raw !== 'number') return undefined;
  const parsed = parseQuantity(raw, dimension);
  return 'quantity' in parsed ? parsed.quantity : undefined;
}

/** What holds a pin as the project sets it up: the chip's own resistor, and those fitted outside. */
export function pullsOf(figures: Figures, account: string, pin: Named): readonly Pull[] {
  const settings = figures.within('pins');
  const name = [pin.label, pin.chipPin].find((n) => settings.says(n));
  const fitted = onBoard(figures, account, pin);
  if (name === undefined) return fitted;
  const own = settings.within(name);
  const chosen = own.word('pull');
  const inside: Pull[] = [];
  if (chosen === 'up' || chosen === 'down') {
    const key = `pull-${chosen}` as const;
    const stated = own.says('pull-resistance')
      ? closedOf(own.figure('pull-resistance', 'resistance'))
      : ofChip(figures, key);
    if (stated === undefined)
      own.problem(
        'pull',
        `nobody states how strong the pull-${chosen} inside ${pin.label} is`,
        '`pull-resistance:` with its resistance, as in `20 to 50 kΩ`',
      );
    else inside.push({ part: `${account}.pull`, to: chosen === 'up' ? 'rail' : 'ground', ...stated, inside: true });
  }
  const outside = (['pull-up', 'pull-down'] as const).flatMap((key): Pull[] => {
    const figure = own.figure(key, 'resistance');
    if (own.masked(key))
      own.problem(
        key,
        `what is fitted at ${pin.label} decides how it stands, and it is called unknown`,
        'its resistance',
      );
    if (figure === undefined) return [];
    const { origin, quantity } = figure;
    return [
      {
        part: `${account}.${key}`,
        to: key === 'pull-up' ? 'rail' : 'ground',
        ohms: closed(quantity),
        origin,
        inside: false,
      },
    ];
  });
  return [...inside, ...outside, ...fitted];
}

/** What the board itself has at a pin. */
function onBoard(figures: Figures, account: string, { label, chipPin }: Named): Pull[] {
  const table = figures.within('fitted');
  return [label, chipPin].flatMap((name) =>
    (['pull-up', 'pull-down'] as const).flatMap((key): Pull[] => {
      const stated = closedOf(table.within(name).figure(key, 'resistance'));
      return stated === undefined
        ? []
        : [{ part: `${account}.board-${key}`, to: key === 'pull-up' ? 'rail' : 'ground', ...stated, inside: false }];
    }),
  );
}

const closedOf = (figure: Figure | undefined): Pick<Pull, 'ohms' | 'origin'> | undefined =>
  figure && { ohms: closed(figure.quantity), origin: figure.origin };

/** The chip's own pull: of one that is only typical, half and twice are its ends. */
function ofChip(figures: Figures, key: 'pull-up' | 'pull-down'): Pick<Pull, 'ohms' | 'origin'> | undefined {
  const figure = figures.figure(key, 'resistance');
  if (figure === undefined) return undefined;
  const { quantity, origin } = figure;
  if (quantity.min === undefined || quantity.max === undefined)
    figures.assume(`its own ${key} is half to twice the stated ${quantity.stated}, since no bounds are stated`);
  return { ohms: closed(quantity, { min: (x) => x / 2, max: (x) => 2 * x }), origin };
}

/** What an input may leak, amperes. */
export const leakageOf = (figures: Figures): Interval => {
  const figure = figures.figure('leakage', 'current');
  return figure === undefined ? USUAL_LEAKAGE : { min: 0, typ: 0, max: closed(figure.quantity).max };
};

const listOf = (raw: unknown): readonly unknown[] => (Array.isArray(raw) ? raw : []);

const isOf = (name: string, pin: Named): boolean =>
  [pin.label, pin.chipPin].some((own) => own.toLowerCase() === name.toLowerCase());
