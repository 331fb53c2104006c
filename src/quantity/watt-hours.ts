/** Energies as meters and bills have them, where the small and the large stand side by side: watt-hours throughout. */
import { formatValue } from './print.js';

const JOULES = 3600;
const PREFIXES = [
  ['kWh', 1e3],
  ['Wh', 1],
  ['mWh', 1e-3],
  ['µWh', 1e-6],
] as const;

/** Joules in watt-hours, to three digits: 20 700 J → '5.75 Wh'. */
export function formatWattHours(joules: number): string {
  const hours = joules / JOULES;
  const size = Math.abs(Number(hours.toPrecision(3)));
  const [symbol, unit] = PREFIXES.find(([, from]) => size >= from) ?? PREFIXES[size === 0 ? 1 : 3];
  return `${Number((hours / unit).toPrecision(3))} ${symbol}`;
}

/** Seconds a day as hours, and what is less than a minute as it is: 82 800 → '23 h'. */
export const formatHours = (seconds: number): string =>
  seconds > 0 && seconds < 60 ? formatValue(seconds, 'time') : `${Number((seconds / 3600).toPrecision(3))} h`;
