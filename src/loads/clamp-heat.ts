/**
 * Heat in a clamp that breaks down, at the rate at which its winding is switched off: each time it takes the winding's energy at
 * most, and under pulses no more than its voltage times the current that runs on in the pauses. A plain diode whose power nobody
 * states is held by the current that it may carry for ever.
 */
import { storedEnergy } from '../circuit/release.js';
import { heatAccount, heatOf } from './drivers/junction-heat.js';
import type { Figures } from './figures.js';
import { rating } from './limits.js';
import type { Winding } from './clamp-working.js';
import type { AccountPlan, Reading, Step } from './account-plan.js';
import type { Pulses } from './circuit-plan.js';
import { pauseOf } from './pulses.js';

/** Time constant at which a winding of which nobody states the inductance is tried, seconds: relay coils have 1 to 20 ms. Common practice, no source. */
const TRIED_CONSTANT = 50e-3;
const DAY = 86_400;
/** On and off are counted as two operations, and only one of them leaves energy to the clamp. */
const OPERATIONS = 2;

export interface Rate {
  /** The part that carries the winding's current. */
  readonly part: string;
  readonly winding?: Winding;
  readonly pulses?: Pulses;
  /** Operations a day, on and off counted as two. */
  readonly perDay?: number;
}

type Base = Pick<AccountPlan, 'id' | 'kind' | 'direction' | 'circuits' | 'path' | 'title'>;

/** @param most volts across it at so many amperes; undefined where a figure for that is missing */
export function clampHeat(
  figures: Figures,
  base: Base,
  rate: Rate,
  most: (amps: number, s: Reading) => number | undefined,
): AccountPlan[] {
  const { part, winding, pulses, perDay } = rate;
  const often = pulses ? pulses.frequency.max : perDay === undefined ? undefined : perDay / OPERATIONS / DAY;
  if (often === undefined || often <= 0) return [];
  if (winding === undefined && pulses === undefined)
    figures.assume(
      `the winding of ${base.circuits.join()}: tried at a time constant of 50 ms, since nobody states its inductance`,
    );
  const henries = (s: Reading): number =>
    winding ? (s.typical ? winding.inductance.typ : winding.inductance.max) : TRIED_CONSTANT * s.ohms(part);
  const energies = winding !== undefined || pulses === undefined;
  const byEnergy = (s: Reading): number =>
    energies ? often * storedEnergy(henries(s), Math.abs(s.current(part))) : Infinity;
  const pause = pulses && pauseOf(pulses).max;
  const byPause = (s: Reading): number =>
    pause === undefined ? Infinity : pause * (most(s.current(part), s) ?? 0) * s.current(part);
  const watts = (s: Reading): number => Math.min(byEnergy(s), byPause(s));
  const steps = (s: Reading): Step[] =>
    byEnergy(s) <= byPause(s)
      ? [
          {
            name: 'P',
            says: 'the winding’s energy, as often as it is switched off',
            formula: 'L * I^2 / 2 * f',
            with: { L: [henries(s), 'H'], I: [s.current(part), 'A'], f: [often, 'Hz'] },
            gives: [watts(s), 'W'],
          },
        ]
      : [
          {
            name: 'P',
            says: 'its voltage times the current that runs on in the pauses',
            formula: 'x_pause * V_clamp * I',
            with: {
              x_pause: [pause!, ''],
              V_clamp: [most(s.current(part), s) ?? 0, 'V'],
              I: [s.current(part), 'A'],
            },
            gives: [watts(s), 'W'],
          },
        ];
  const named = { ...base, title: `${base.title}, heat` };
  const recipes = ['draw-most', 'draw-least'] as const;
  const bears = rating(figures, 'power', 'power');
  if (bears) return [{ ...named, quantity: 'power', recipes, read: watts, limits: [bears], steps }];
  // The pauses are in the sum already.
  const warm = heatAccount(named, heatOf(figures, base.title), (_, whole) => watts(whole), recipes);
  return [{ ...warm, steps: (s) => [...steps(s), ...warm.steps(s).slice(-1)] }];
}
