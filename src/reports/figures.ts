/** Figures of a report as people read them. */
import type { Dimension } from '../quantity/dimension.js';
import { parseQuantity } from '../quantity/parse.js';
import { formatInterval, formatValue } from '../quantity/print.js';
import { closed } from '../quantity/quantity.js';
import { trimmed } from '../wording/phrases.js';
import type { ReportAccount, ReportLimit } from './report.js';

const dimensions: { readonly [unit: string]: Dimension } = {
  A: 'current',
  V: 'voltage',
  W: 'power',
  Ω: 'resistance',
  '°C': 'temperature',
  K: 'temperature-difference',
  'K/W': 'thermal-resistance',
  s: 'time',
  Hz: 'frequency',
  F: 'capacitance',
  H: 'inductance',
  C: 'charge',
  J: 'energy',
  m: 'length',
};

/** A hyphen is not a minus sign. */
const minus = (text: string): string => text.replace(/-(?=[\d∞])/g, '−');

/** Degrees are read to a tenth, and hundreds of them as whole ones. */
const degrees = (value: number): string => `${Number(value.toFixed(Math.abs(value) < 100 ? 1 : 0))}`;

/** A result: `value` in `unit` (SI) to three digits with the right prefix; without a unit, to four digits. */
export function figure(value: number, unit: string): string {
  return unit === '°C' ? minus(`${degrees(value)} °C`) : toDigits(value, unit, 3);
}

/** A figure that was given, not worked out: 40 mA, not 40.0 mA. Degrees are given to a tenth. @param digits or one more */
export const given = (value: number, unit: string, digits = 3): string =>
  unit === '°C' ? minus(`${Number(value.toFixed(digits - 2))} °C`) : trimmed(toDigits(value, unit, digits));

/** A limit where nothing beside it says which way it holds: '40 mA', '4.16 V or more'. */
export const limitWord = (value: number, { unit, direction }: Pick<ReportAccount, 'unit' | 'direction'>): string =>
  `${given(value, unit)}${direction === 'at-least' ? ' or more' : ''}`;

/** The number that `given` prints, for whoever does a sum again. */
export function asGiven(value: number, unit: string, digits = 3): number {
  if (unit === '°C') return Number(value.toFixed(digits - 2));
  const dimension = dimensions[unit];
  if (!dimension) return Number(value.toPrecision(digits + 1));
  // Read back as it is printed: 4935 Ω is 4.93 kΩ there, and a half would be rounded up here.
  const read = parseQuantity(formatValue(value, dimension, digits), dimension);
  return 'quantity' in read ? closed(read.quantity).typ : Number(value.toPrecision(digits));
}

function toDigits(value: number, unit: string, digits: number): string {
  const dimension = dimensions[unit];
  if (dimension) return minus(formatValue(value, dimension, digits));
  return minus(`${Number(value.toPrecision(digits + 1))}${unit && ' ' + unit}`);
}

/** The two ends of a draw: '35.2 to 70.7 mA'. */
export function span(
  { min, max }: { readonly min: number; readonly max: number },
  unit: ReportAccount['unit'],
): string {
  if (unit !== '°C') return minus(formatInterval({ min, max }, dimensions[unit] ?? 'ratio'));
  return minus(degrees(min) === degrees(max) ? `${degrees(max)} °C` : `${degrees(min)} to ${degrees(max)} °C`);
}

/** A worst end beside its limit: '70.7 mA of 40 mA', or '3.9 V where 3.75 V is needed'. */
export function against(worst: string, limit: number, { unit, direction }: Pick<ReportAccount, 'unit' | 'direction'>) {
  return direction === 'at-least'
    ? `${worst} where ${given(limit, unit)} is needed`
    : `${worst} of ${given(limit, unit)}`;
}

/**
 * A margin in whole per cent, always rounded towards the worse: 19.8 % in hand where 20 % is asked must not read 20 %,
 * and a limit missed by a hair must not read 0 %.
 */
export function percent(margin: number): string {
  const whole = Math.floor(margin * 100 + 1e-9);
  return whole > 999 ? '> 999 %' : minus(`${whole} %`);
}

/** 'x % in hand', or 'x % over' (short of, for a figure that must at least be reached). */
export function inHand(margin: number, direction: ReportAccount['direction']): string {
  if (margin >= 0) return `${percent(margin)} in hand`;
  return `${percent(margin).slice(1)} ${direction === 'at-least' ? 'short' : 'over'}`;
}

/** Of several limits, the one that gives the verdict: the report puts it first. */
export const governing = (account: ReportAccount): ReportLimit | undefined => account.limits[0];

/** What is held against that limit: the end of the draw, at the corner that leaves the least of the limit. */
export function worstOf(account: ReportAccount): number | undefined {
  const { draw, direction } = account;
  if (draw === null) return undefined;
  // A temperature's margin counts from the ambient, so that its tightest corner need not be its hottest.
  if (account.quantity === 'temperature') return draw.max;
  return governing(account)?.draw ?? (direction === 'at-least' ? draw.min : draw.max);
}

/** What it carries, up to (or down to) what is held against the limit: '35.2 to 70.7 mA', 'not known'. */
export function carried(account: ReportAccount): string {
  const { draw, direction, unit } = account;
  const worst = worstOf(account);
  if (draw === null || worst === undefined) return 'not known';
  const [min, max] = direction === 'at-least' ? [worst, draw.max] : [draw.min, worst];
  return span({ min: Math.min(min, max), max: Math.max(min, max) }, unit);
}
