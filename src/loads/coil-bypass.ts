/**
 * A coil behind a resistor that a capacitor bridges when it is switched on (an economiser): it pulls in with nearly all of the
 * voltage, and is held by less.
 */
import { bypassTime } from '../circuit/bypass.js';
import { formatValue } from '../quantity/print.js';
import { acrossSteps } from './coil-working.js';
import type { Reading, Step } from './account-plan.js';
import type { Bypass } from './series.js';

/**
 * How many times as much voltage stands across a winding as in this corner, with another resistor before it: the one that lets
 * through as much as the bypassed one does when the coil has to pull in, or that one itself.
 */
export function raised(
  s: Reading,
  part: string,
  { part: series, acting, ohms }: Bypass,
  as: 'acting' | 'ohms',
): number {
  const now = s.ohms(series);
  const rest = restOf(s, part) - now;
  const other = as === 'acting' ? (s.typical ? acting.typ : acting.max).ohms : s.typical ? ohms.typ : ohms.min;
  return (rest + now) / (rest + other);
}

/** Ohms of all that lies in a winding's branch. */
const restOf = (s: Reading, part: string): number =>
  (s.branch(part)?.members ?? []).reduce((sum, m) => sum + (m.ohms ?? 0), 0);

/**
 * The voltage that reaches the winding when it has to pull in: as its branch leaves it in this corner, and as it would be with
 * the resistor that lets through as much by then.
 *
 * @param short volts that its driver keeps besides
 */
export function actingSteps(s: Reading, part: string, bypass: Bypass, short: number): Step[] {
  const how = s.typical ? bypass.acting.typ : bypass.acting.max;
  const acting = how.ohms;
  const now = s.ohms(bypass.part);
  const across = s.across(part);
  const alike = Math.abs(now - acting) <= 1e-9 * acting;
  const counts = acrossSteps(s, part, alike ? short : 0, alike ? Math.max(across - short, 0) : across);
  const charged: Step[] = [
    {
      name: 'left',
      says: `how far the capacitor is from charged ${formatValue(bypass.after, 'time')} after switching on`,
      formula: 'exp(-t * (R + r) / (C * R * r))',
      with: {
        t: [bypass.after, 's'],
        R: [how.series, 'Ω'],
        r: [how.rest, 'Ω'],
        C: [how.capacitance, 'F'],
      },
      gives: [Math.exp(-bypass.after / bypassTime(how)), ''],
    },
    {
      name: 'R_acting',
      says: 'resistor that would let through as much by then',
      formula: 'R_whole * r * (1 - left) / (r + R * left)',
      with: {
        R_whole: [how.whole, 'Ω'],
        r: [how.rest, 'Ω'],
        R: [how.series, 'Ω'],
        left: [Math.exp(-bypass.after / bypassTime(how)), ''],
      },
      gives: [acting, 'Ω'],
    },
  ];
  if (alike) return [...charged, ...counts];
  const reaches = across * raised(s, part, bypass, 'acting');
  const kept: Step[] =
    short > 0
      ? [
          {
            name: 'V_left',
            says: 'less what its driver keeps besides',
            formula: 'max(V_acting - V_short, 0)',
            with: { V_acting: [reaches, 'V'], V_short: [short, 'V'] },
            gives: [Math.max(reaches - short, 0), 'V'],
          },
        ]
      : [];
  return [
    ...counts,
    ...charged,
    {
      name: 'V_acting',
      says: 'what reaches it with that resistor before it',
      formula: 'V_coil * (R_rest + R_series) / (R_rest + R_acting)',
      with: {
        V_coil: [across, 'V'],
        R_rest: [restOf(s, part) - now, 'Ω'],
        R_series: [now, 'Ω'],
        R_acting: [acting, 'Ω'],
      },
      gives: [reaches, 'V'],
    },
    ...kept,
  ];
}
