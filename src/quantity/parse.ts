import { type Dimension, FACTS } from './dimension.js';
import { plain } from './plain.js';
import { formatValue } from './print.js';
import type { Quantity } from './quantity.js';
import { type Bound, type Figure, scan, type Tolerance, type Written } from './scan.js';
import { bareSlip, commaSlip, leftOverSlip, quoted, type Slip, slip, unitSlip } from './slips.js';
import { scaleOf } from './unit-symbol.js';

export type Parsed = { readonly quantity: Quantity } | Slip;

/** Options and advice audit the same figures over and over; but a hostile file shall not fill the memory. */
const REMEMBERED = 5000;
const memory = new Map<Dimension, Map<string, Parsed>>();

/**
 * Reads a figure as the project file writes it, where one dimension is wanted: `5 V ±5 %`, `4k7`, `typ 20 mA max 25 mA`.
 * Bounds are in SI. A number from YAML has no unit and is right for a ratio only. A slip is returned, never thrown.
 * `parseQuantity('12 V ±0.5 V', 'voltage')` → min 11.5, typ 12, max 12.5.
 */
export function parseQuantity(text: string | number, dimension: Dimension): Parsed {
  const stated = String(text);
  let known = memory.get(dimension);
  if (!known || known.size >= REMEMBERED) memory.set(dimension, (known = new Map()));
  let parsed = known.get(stated);
  if (!parsed) known.set(stated, (parsed = read(stated, dimension)));
  return parsed;
}

function read(stated: string, dimension: Dimension): Parsed {
  const text = plain(stated);
  if (text.includes(',')) return commaSlip(text, dimension);
  const written = scan(text, dimension);
  if (!written || written.end < text.length) return leftOverSlip(text, text.slice(written?.end ?? 0), dimension);

  const { bounds, tolerance } = withUnits(written);
  const [first] = bounds;
  const limits =
    first?.role === 'value' ? around(first.figure, tolerance, text, dimension) : between(bounds, text, dimension);
  if ('problem' in limits) return limits;

  const waveform = tolerance?.down.waveform ?? bounds.find(({ figure }) => figure.waveform)?.figure.waveform;
  if (waveform && dimension !== 'voltage' && dimension !== 'current') {
    return slip(dimension, `${quoted(text)}: ${waveform} goes with volts and amperes only`);
  }
  const exact = first?.role === 'value' && !tolerance && first.figure.code?.tolerance === undefined;
  const quantity: Quantity = { ...limits, dimension, exact, stated };
  return amiss(quantity, text) ?? { quantity: waveform ? { ...quantity, waveform } : quantity };
}

/** Lends each figure without a unit that of the next one which has one: `4.75 to 5.25 V`, `18 / 20 / 25 mA`. */
function withUnits({ bounds, tolerance }: Written): Pick<Written, 'bounds' | 'tolerance'> {
  const up = tolerance && withUnit(tolerance.up, tolerance.down.unit);
  const down = tolerance && withUnit(tolerance.down, tolerance.up.unit);
  // A per cent is the tolerance's own: `5 ±5 %` has no unit yet.
  let lent = down && down.unit !== '%' ? down.unit : '';
  const complete: Bound[] = [];
  for (const { role, figure } of bounds.toReversed()) {
    const whole = withUnit(figure, lent);
    complete.unshift({ role, figure: whole });
    lent = whole.unit;
  }
  return { bounds: complete, tolerance: up && down && { up, down } };
}

const withUnit = (figure: Figure, unit: string): Figure =>
  figure.unit === '' && unit !== '' && !figure.code ? { ...figure, unit } : figure;

type Limits = Pick<Quantity, 'min' | 'typ' | 'max'>;

/** One figure, alone or with its tolerance. */
function around(figure: Figure, tolerance: Tolerance | undefined, text: string, dimension: Dimension): Limits | Slip {
  const typ = valueOf(figure, text, dimension);
  if (typeof typ !== 'number') return typ;
  const letter = figure.code?.tolerance;
  if (letter !== undefined && tolerance) {
    return slip(dimension, `${quoted(figure.text)} has a tolerance letter already`);
  }
  if (letter !== undefined) return { min: tidy(typ * (1 - letter)), typ, max: tidy(typ * (1 + letter)) };
  if (!tolerance) return { min: typ, typ, max: typ };
  const down = reach(tolerance.down, figure, typ, dimension);
  const up = reach(tolerance.up, figure, typ, dimension);
  if (typeof down !== 'number') return down;
  if (typeof up !== 'number') return up;
  return { min: tidy(typ - down), typ, max: tidy(typ + up) };
}

/** Several figures, each in its role. */
function between(bounds: readonly Bound[], text: string, dimension: Dimension): Limits | Slip {
  const limits: { min?: number; typ?: number; max?: number } = {};
  for (const { role, figure } of bounds) {
    if (role === 'value') continue;
    const value = valueOf(figure, text, dimension);
    if (typeof value !== 'number') return value;
    if (limits[role] !== undefined) return slip(dimension, `${quoted(text)} has two figures for \`${role}\``);
    if (figure.code?.tolerance !== undefined) {
      return slip(dimension, `${quoted(text)} has a range and a tolerance letter as well`);
    }
    limits[role] = value;
  }
  return limits;
}

/** A figure in SI, or what is wrong with its unit. `text` is all that was written. */
function valueOf(figure: Figure, text: string, dimension: Dimension): number | Slip {
  const { digits, unit, code } = figure;
  if (code) return code.value;
  if (unit === '') return dimension === 'ratio' ? Number(digits) : bareSlip(text, dimension);
  const scale = scaleOf(unit, dimension);
  if (!scale) return unitSlip(figure, dimension);
  const value = shifted(digits, scale.power);
  return scale.unit.factor === 1 ? value : tidy(value * scale.unit.factor);
}

/** Moves the decimal point in the text, so that `330` by -3 is 0.33 to the last bit. */
function shifted(digits: string, power: number): number {
  if (power === 0) return Number(digits);
  const [mantissa, exponent = '0'] = digits.toLowerCase().split('e');
  return Number(`${mantissa}e${Number(exponent) + power}`);
}

/** How far a tolerance reaches to one side, in SI. */
function reach(tolerance: Figure, figure: Figure, value: number, dimension: Dimension): number | Slip {
  const size = { ...tolerance, digits: tolerance.digits.replace(/^[+-]/, '') };
  if (size.unit === '%') {
    if (dimension !== 'temperature') return Math.abs(value) * shifted(size.digits, -2);
    return slip(dimension, 'a per cent of a temperature means nothing', 'a tolerance in K, such as `25 °C ±3 K`');
  }
  if (size.unit === '' && figure.unit === '' && dimension === 'ratio') return Number(size.digits);

  const { name, usual } = FACTS[dimension];
  const units = dimension === 'ratio' ? '%' : `% or ${usual.join(' or ')}`;
  // Degrees apart from a temperature are kelvins, and written as either.
  const asKelvins = dimension === 'temperature' && size.unit === 'K' ? 'temperature-difference' : undefined;
  const asDegrees = dimension === 'temperature-difference' && size.unit !== 'K' ? 'temperature' : undefined;
  const as = asKelvins ?? asDegrees ?? dimension;
  if (!scaleOf(size.unit, as)) {
    return slip(dimension, `${quoted(tolerance.text)} is no tolerance for ${name}`, `a tolerance in ${units}`);
  }
  return valueOf(size, size.text, as);
}

/** Sums leave dust in the last bits (12 · 0.95 is 11.399999999999999), and exactly at a limit is inside it. */
const tidy = (value: number): number => Number(value.toPrecision(12));

/** What is wrong with bounds that could be read. */
function amiss(quantity: Quantity, text: string): Slip | undefined {
  const { dimension, min, typ, max } = quantity;
  const lowest = min ?? typ ?? max ?? NaN;
  const middle = typ ?? lowest;
  const highest = max ?? middle;
  if (lowest > middle || middle > highest) {
    return slip(dimension, `${quoted(text)} is not in order`, 'the smaller figure first: min, typ, max');
  }
  if (!Number.isFinite(highest - lowest)) return slip(dimension, `${quoted(text)} is beyond all measure`);
  const { name, least = 0, most = Infinity } = FACTS[dimension];
  const never = (where: string, limit: number): Slip =>
    slip(dimension, `${quoted(text)}: ${name} is never ${where} ${formatValue(limit, dimension)}`);
  if (lowest < least) return never('below', least);
  if (highest > most) return never('above', most);
  const whole = Number.isInteger(lowest) && Number.isInteger(highest);
  return dimension === 'gauge' && !whole ? slip(dimension, `${quoted(text)} is no whole number`) : undefined;
}
