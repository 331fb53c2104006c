/** A driver that may not be able to carry its load's current: what it keeps for itself then, and the most heat in between. */
import { keptAt, mostHeat } from '../../circuit/half-driven.js';
import type { Asked } from '../../circuit/half-driven.js';
import type { Reading, Step } from '../account-plan.js';

/** What is asked of a driver in a corner: the branch of its load as solved with its lowest drop. */
export function askedOf(s: Reading, load: string, driver: string): Asked {
  const branch = s.branch(load);
  return {
    whole: branch ? branch.from.volts - branch.to.volts : 0,
    kept: s.across(driver),
    amps: s.current(load),
  };
}

/** A load that takes its current whatever it gets leaves all of the voltage on a driver that cannot carry it. */
const isStubborn = (s: Reading, load: string): boolean =>
  s.branch(load)?.members.some(({ member }) => member.kind === 'current') === true;

/** Volts that a driver keeps, being able to carry so many amperes. */
function keptBy(s: Reading, load: string, driver: string, able: number): number {
  const asked = askedOf(s, load, driver);
  if (able >= asked.amps) return asked.kept;
  return isStubborn(s, load) ? asked.whole : keptAt(asked, able);
}

/** The same beyond what its drop in the branch takes. */
export const keptMore =
  (load: string, driver: string, able: (s: Reading) => number) =>
  (s: Reading): number =>
    Math.max(keptBy(s, load, driver, able(s)) - s.across(driver), 0);

/** Most watts in a driver of which nobody knows how much it can carry: it may keep anything. */
export function heatAnywhere(s: Reading, load: string, driver: string): number {
  const asked = askedOf(s, load, driver);
  return isStubborn(s, load) ? asked.whole * asked.amps : mostHeat(asked, asked.whole);
}

/** The sum behind that. */
export function anywhereSteps(s: Reading, load: string, driver: string): Step[] {
  const { whole, kept, amps } = askedOf(s, load, driver);
  const gives = [heatAnywhere(s, load, driver), 'W'] as const;
  const V = [whole, 'V'] as const;
  const I = [amps, 'A'] as const;
  const says = 'half driven it may keep any part of the voltage: its loss at the most';
  return isStubborn(s, load) || whole <= 2 * kept
    ? [{ name: 'P', says, formula: 'P', with: { P: gives }, gives }]
    : [
        {
          name: 'P',
          says: `${says}, at half of it`,
          formula: 'V / 2 * I * (V / 2) / (V - V_on)',
          with: { V, I, V_on: [kept, 'V'] },
          gives,
        },
      ];
}

/** Most watts in a driver that keeps its drop, or anything up to what it does when it can carry only so many amperes. */
export function heatBy(s: Reading, load: string, driver: string, able: number): number {
  const asked = askedOf(s, load, driver);
  if (able >= asked.amps) return asked.kept * asked.amps;
  if (isStubborn(s, load)) return Math.max(asked.kept * asked.amps, asked.whole * Math.max(able, 0));
  return mostHeat(asked, keptAt(asked, able));
}
