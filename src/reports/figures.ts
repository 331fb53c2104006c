/** Figures of a report as people read them. */
import type { Dimension } from '../quantity/dimension.js';
import { formatInterval, formatValue } from '../quantity/print.js';
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

/** Degrees are read to a tenth, whatever their size. */
const degrees = (value: number): string => `${Number(value.toFixed(1))}`;

/** A result: `value` in `unit` (SI) to three digits with the right prefix; without a unit, to four digits. */
export function figure(value: number, unit: string): string {
  if (unit === '°C') return minus(`${degrees(value)} °C`);
  const dimension = dimensions[unit];
  if (dimension) return minus(formatValue(value, dimension));
  return minus(`${Number(value.toPrecision(4))}${unit && ' ' + unit}`);
}

/** A figure that was given, not worked out: 40 mA, not 40.0 mA. */
export const given = (value: number, unit: string): string =>
  figure(value, unit).replace(/(\.\d*?)0+(?!\d)/, (_, kept: string) => (kept === '.' ? '' : kept));

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

/** The end of the draw that is held against the limit. */
export const worstOf = (account: ReportAccount): number | undefined =>
  account.draw === null ? undefined : account.direction === 'at-least' ? account.draw.min : account.draw.max;

/**
 * Of several limits, the one that the account's margin speaks of: a report gives the margin but not which limit it
 * belongs to, so it is the one whose own margin comes nearest. `ambient` is the hottest, for temperatures.
 */
export function governing(account: ReportAccount, ambient: number): ReportLimit | undefined {
  const worst = worstOf(account);
  const off = (limit: ReportLimit): number => {
    if (worst === undefined || account.margin === null) return 0;
    const room = account.unit === '°C' ? limit.value - ambient : limit.value;
    const left = account.direction === 'at-least' ? worst - limit.value : limit.value - worst;
    return Math.abs(left / room - account.margin);
  };
  return [...account.limits].sort((a, b) => off(a) - off(b))[0];
}
