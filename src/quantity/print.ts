import { type Dimension, PREFIXES, type Unit, unitsOf } from './dimension.js';

/** A unit to print in, from which size on. */
interface Rung {
  readonly symbol: string;
  /** Its size in SI. */
  readonly size: number;
  readonly from: number;
}

const rung = (symbol: string, size: number, from = size): Rung => ({ symbol, size, from });

/** A unit with each prefix it may take, smallest first; `above` and below `below` others take over. */
function prefixed(unit: Unit | undefined, above = 0, below = Infinity): readonly Rung[] {
  if (!unit) return [];
  const [symbol = ''] = unit.symbols;
  const size = (power: number): number => unit.factor * Number(`1e${unit.power + power}`);
  const rungs = [...PREFIXES].filter(([prefix]) => unit.prefixes.includes(prefix));
  return [...rungs.map(([prefix, power]) => rung(prefix + symbol, size(power))), rung(symbol, size(0))]
    .sort((a, b) => a.size - b.size)
    .filter(({ from }) => from >= above && from < below);
}

const DAY = 86_400;
const YEAR = 365.25 * DAY;

/** Dimensions whose readers change the unit, not only the prefix. All others print in their first unit. */
const OWN: Partial<Record<Dimension, readonly Rung[]>> = {
  time: [
    ...prefixed(unitsOf('time')[0]),
    rung('min', 60, 1000),
    rung('h', 3600),
    rung('days', DAY, 2 * DAY),
    rung('years', YEAR, 2 * YEAR),
  ],
  // Gate charge is read in coulombs, a battery in ampere-hours.
  charge: [...prefixed(unitsOf('charge')[0]), ...prefixed(unitsOf('charge')[1], 3.6)],
  energy: [...prefixed(unitsOf('energy')[0], 0, 3600), ...prefixed(unitsOf('energy')[1], 3600)],
  // Four hundred per cent is a coupler, four hundred times is a transistor.
  ratio: [rung('%', 0.01), rung('', 1, 10)],
  'time-per-day': [rung('s/day', 1), rung('min/day', 60), rung('h/day', 3600)],
};

const ladders = new Map<Dimension, readonly Rung[]>();

function ladderOf(dimension: Dimension): readonly Rung[] {
  let ladder = ladders.get(dimension);
  if (!ladder) ladders.set(dimension, (ladder = OWN[dimension] ?? prefixed(unitsOf(dimension)[0])));
  return ladder;
}

const mainSymbol = (dimension: Dimension): string => unitsOf(dimension)[0]?.symbols[0] ?? '';

/** Significant digits, unless more are asked for. */
const DIGITS = 3;

/** The unit a value reads best in. Chosen after rounding, so that 999.6 mA is 1.00 A. */
function rungFor(value: number, dimension: Dimension, significant = DIGITS): Rung {
  const ladder = ladderOf(dimension);
  const size = Math.abs(Number(value.toPrecision(significant)));
  const chosen =
    size === 0 ? ladder.find((r) => r.symbol === mainSymbol(dimension)) : ladder.findLast((r) => size >= r.from);
  return chosen ?? ladder[0] ?? rung('', 1);
}

/** So many significant digits, without an exponent as long as that can be read. */
function digits(value: number, significant = DIGITS): string {
  if (value === 0) return '0';
  const text = value.toPrecision(significant);
  return Math.abs(value) >= 1 && text.includes('e') ? String(BigInt(Number(text))) : text;
}

const joined = (text: string, symbol: string): string =>
  symbol === 'AWG' ? `AWG ${text}` : symbol === '' ? text : `${text} ${symbol}`;

/**
 * A value in SI as people read it, to three significant digits with the prefix that fits: 0.0707 → '70.7 mA', 0 → '0 A',
 * 9000 s → '2.50 h'. Throws a RangeError for a value that is not a number, which only a fault of ours can make.
 *
 * @param significant digits, where three do not tell enough
 */
export function formatValue(value: number, dimension: Dimension, significant = DIGITS): string {
  return inRung(value, rungFor(checked(value), dimension, significant), significant);
}

/**
 * Both ends of an interval, in the unit of the larger: '35.2 to 70.7 mA'; one value when they print alike. Ends more than
 * a thousand times apart keep their own units: '1.00 µA to 70.7 mA'.
 */
export function formatInterval(interval: { readonly min: number; readonly max: number }, dimension: Dimension): string {
  const { min, max } = interval;
  const larger = Math.abs(checked(min)) > Math.abs(checked(max)) ? min : max;
  const smaller = larger === max ? min : max;
  const shared = rungFor(larger, dimension);
  const low = inRung(min, shared);
  const high = inRung(max, shared);
  if (low === high) return high;
  const apart = smaller !== 0 && Math.abs(smaller) * 1000 < Math.abs(larger);
  if (apart) return `${formatValue(min, dimension)} to ${formatValue(max, dimension)}`;
  return shared.symbol === 'AWG' ? `${low} to ${high}` : `${shown(min, shared)} to ${high}`;
}

function checked(value: number): number {
  if (Number.isNaN(value)) throw new RangeError('no number to print');
  return value;
}

/** Gauges are counted, all else is measured. */
const shown = (value: number, { symbol, size }: Rung, significant = DIGITS): string => {
  if (!Number.isFinite(value)) return value > 0 ? '∞' : '-∞';
  return symbol === 'AWG' ? String(value) : digits(value / size, significant);
};

const inRung = (value: number, r: Rung, significant = DIGITS): string => joined(shown(value, r, significant), r.symbol);
