/**
 * What is switched on and off many times a second (`pwm`): how it is read, and what a period of it comes to. Pins, LEDs and
 * semiconductors see the pulses themselves; heat and batteries see their mean, wires and fuses their root mean square.
 *
 * Source of the root mean square of steps: R. W. Erickson, D. Maksimović, Fundamentals of Power Electronics, Springer,
 * appendix A: sqrt(D_1·I_1² + D_2·I_2² + …).
 */
import type { Interval } from '../quantity/interval.js';
import type { Figures } from './figures.js';
import type { Step } from './account-plan.js';
import type { Pulses } from './circuit-plan.js';

/** Slower pulses than this, hertz, heat and cool what they flow through: to every account they are on throughout. */
const SLOWEST = 10;

/** The pulses of a load, from its `pwm`; undefined when it has none, or with a problem. */
export function pulsesOf(figures: Figures): Pulses | undefined {
  if (!figures.says('pwm')) return undefined;
  const pwm = figures.within('pwm');
  const frequency = pwm.interval('frequency', 'frequency');
  const duty = pwm.interval('duty', 'ratio');
  if (frequency === undefined || duty === undefined) return undefined;
  if (frequency.min <= 0) {
    pwm.problem('frequency', 'a frequency has to be above zero', '`frequency: 1 kHz`');
    return undefined;
  }
  if (duty.min < 0 || duty.max > 1) {
    pwm.problem('duty', 'a duty lies between 0 and 100 %', '`duty: 60 %`');
    return undefined;
  }
  if (frequency.min < SLOWEST)
    figures.assume(
      `pulses slower than ${SLOWEST} Hz count as on throughout, since each of them lasts long enough to heat; what is drawn on average is told by their duty`,
    );
  return { frequency, duty, path: pwm.path, ...(frequency.min < SLOWEST && { slow: true }) };
}

/** Something with a period: a solution, or a reading of one. */
interface Periodic<S> {
  readonly phases: readonly { readonly share: number; readonly at: S }[];
}

/** Averages a reading over the period of what pulses; where nothing does, it is the reading itself. */
export function meanOf<S extends Periodic<S>>(s: S, read: (s: S) => number): number {
  const { phases } = s;
  if (phases.length === 1) return read(s);
  return phases.reduce((sum, { share, at }) => sum + share * read(at), 0);
}

/** Root mean square over the period of what pulses: what a current heats as, or a voltage across a resistance. */
export function rmsOf<S extends Periodic<S>>(s: S, read: (s: S) => number): number {
  if (s.phases.length === 1) return read(s);
  return Math.sqrt(meanOf(s, (at) => read(at) ** 2));
}

/** How a sum over a period is told: its name and unit, what it says, and the reading that it is of. */
type Told<S> = readonly [name: string, says: string, unit: string, read: (s: S) => number];

/** The sum behind a mean; none where nothing pulses. */
export const meanSteps = <S extends Periodic<S>>(s: S, ...told: Told<S>): Step[] => periodSteps(s, 1, told);

/** The same for a root mean square. */
export const rmsSteps = <S extends Periodic<S>>(s: S, ...told: Told<S>): Step[] => periodSteps(s, 2, told);

/** @param power of what is averaged: 1 for a mean, 2 for a root mean square */
function periodSteps<S extends Periodic<S>>(s: S, power: 1 | 2, [name, says, unit, read]: Told<S>): Step[] {
  if (s.phases.length === 1) return [];
  const letter = name[0]!;
  const terms = termsOf(s.phases, read, power);
  const sum = terms.map((_, k) => `x_${k + 1} * ${letter}_${k + 1}${power === 2 ? '^2' : ''}`).join(' + ') || '0';
  return [
    {
      name,
      says,
      formula: power === 2 ? `sqrt(${sum})` : sum,
      with: values(terms, letter, unit),
      gives: [power === 2 ? rmsOf(s, read) : meanOf(s, read), unit],
    },
  ];
}

type Term = { readonly share: number; readonly value: number };

/** Phases that differ by no more than this share of what is read are told as one. */
const ALIKE = 1e-2;

/** What is read in each phase in which anything is, neighbours that are nearly alike as one. @param power of the mean: 2 for a square */
function termsOf<S>(phases: Periodic<S>['phases'], read: (s: S) => number, power: 1 | 2): Term[] {
  const terms: Term[] = [];
  for (const { share, at } of phases) {
    const value = read(at);
    const last = terms.at(-1);
    if (value === 0) continue;
    if (last === undefined || Math.abs(value - last.value) > ALIKE * Math.abs(last.value)) terms.push({ share, value });
    else {
      const whole = last.share + share;
      const mean = (last.share * last.value ** power + share * value ** power) / whole;
      terms[terms.length - 1] = { share: whole, value: power === 2 ? Math.sign(value) * Math.sqrt(mean) : mean };
    }
  }
  return terms;
}

const values = (terms: readonly Term[], letter: string, unit: string): Step['with'] =>
  Object.fromEntries(
    terms.flatMap(({ share, value }, k) => [
      [`x_${k + 1}`, [share, ''] as const],
      [`${letter}_${k + 1}`, [value, unit] as const],
    ]),
  );

/** The least and the most that is left of a period when a pulse is over. */
export const pauseOf = ({ duty }: Pulses): Interval => ({
  min: 1 - duty.max,
  typ: 1 - duty.typ,
  max: 1 - duty.min,
});
