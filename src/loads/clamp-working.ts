/** What a winding leaves to its clamp when it is switched off: the energy in it, and how long its current takes to fall. */
import { releaseTime, storedEnergy } from '../circuit/release.js';
import type { Interval } from '../quantity/interval.js';
import type { Reading, Step } from './account-plan.js';

const DAY = 86_400;

/** A winding whose inductance is stated. */
export interface Winding {
  /** Henries, armature closed. */
  readonly inductance: Interval;
  /** Amperes at which it lets go. */
  readonly release: (s: Reading) => number;
  /** The sum behind that. */
  readonly releaseStep: (s: Reading) => Step;
}

/**
 * Energy, power and release time as steps: the most energy, and the longest time.
 *
 * @param part the winding @param drop volts across the clamp at its current, highest and lowest in the corner, and operations a
 * day where they are counted
 */
export function releaseSteps(
  { inductance, release, releaseStep }: Winding,
  part: string,
  s: Reading,
  drop: {
    readonly most: number;
    readonly least: number;
    readonly perDay?: number;
    /** Volts of what the clamp leads to and of the winding's own supply, where these are two. */
    readonly above?: readonly [number, number];
  },
): Step[] {
  const [amps, ohms] = [s.current(part), s.ohms(part)];
  if (amps <= 0) return [];
  const henries = s.typical ? inductance.typ : inductance.max;
  const at = release(s);
  const [common, supply] = drop.above ?? [0, 0];
  const meets = drop.least + common - supply;
  return [
    {
      name: 'E',
      says: 'energy in the winding, of which the clamp takes what the winding’s own resistance leaves',
      formula: 'L * I^2 / 2',
      with: { L: [henries, 'H'], I: [amps, 'A'] },
      gives: [storedEnergy(henries, amps), 'J'],
    },
    {
      name: 'P_peak',
      says: 'power in the clamp in the first moment',
      formula: 'V_clamp * I',
      with: { V_clamp: [drop.most, 'V'], I: [amps, 'A'] },
      gives: [drop.most * amps, 'W'],
    },
    ...(drop.perDay === undefined
      ? []
      : [
          {
            name: 'P_mean',
            says: 'heat in the clamp on average over a day: one in two operations switches off',
            formula: 'L * I^2 / 2 * n / 2 / t_day',
            with: { L: [henries, 'H'], I: [amps, 'A'], n: [drop.perDay, ''], t_day: [DAY, 's'] },
            gives: [(storedEnergy(henries, amps) * drop.perDay) / 2 / DAY, 'W'],
          } satisfies Step,
        ]),
    releaseStep(s),
    ...(amps > at && drop.above
      ? [
          {
            name: 'V_clamp',
            says: 'what the winding works against: its clamp leads above its supply',
            formula: 'V_common + V_diode - V_supply',
            with: { V_common: [common, 'V'], V_diode: [drop.least, 'V'], V_supply: [supply, 'V'] },
            gives: [meets, 'V'],
          } satisfies Step,
        ]
      : []),
    ...(amps > at
      ? [
          {
            name: 't_release',
            says: 'time until the current has fallen to that, at the longest (log is the natural logarithm); the armature moves after it',
            formula: 'L / R * log((I + V_clamp / R) / (I_release + V_clamp / R))',
            with: {
              L: [henries, 'H'],
              R: [ohms, 'Ω'],
              I: [amps, 'A'],
              V_clamp: [meets, 'V'],
              I_release: [at, 'A'],
            },
            gives: [releaseTime(henries, ohms, amps, at, meets), 's'],
          } satisfies Step,
        ]
      : []),
  ];
}
