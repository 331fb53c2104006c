/** What a coil's figures say: resistance, its voltages, how warm it gets and what it stores. */
import { copperFactor, coilTemperature } from '../circuit/copper.js';
import type { Interval } from '../quantity/interval.js';
import { closed } from '../quantity/quantity.js';
import type { DropOut, Holding, PullIn } from './coil-voltages.js';
import { PRACTICE, dropOutOf, holdingOf, maximumOf, pullInOf } from './coil-voltages.js';
import type { Figures } from './figures.js';
import { rating } from './limits.js';
import type { LimitPlan, Reading } from './account-plan.js';
import type { Origin } from './branch-plan.js';

/** Rise of a coil at its rated voltage, kelvin, up to 1 W and above (rule 8 of the format). */
const RISE = { small: 25, large: 60 };
const USUAL_REFERENCE = 20;

type CoilKey = 'pull-in' | 'drop-out' | 'maximum';
const KEYS: readonly CoilKey[] = ['pull-in', 'drop-out', 'maximum'];

export interface CoilFigures {
  /** Ohms at the reference temperature. */
  readonly ohms: Interval;
  readonly nominal: number;
  /** °C at which its figures hold. */
  readonly reference: number;
  readonly pullIn: PullIn;
  readonly dropOut: DropOut;
  /** What keeps it pulled in; absent where it is held by what it pulls in with, and nobody states it. */
  readonly holding?: Holding;
  /** Absent where the temperature of its winding says what it bears. */
  readonly maximum?: LimitPlan;
  /** What the winding may be heated to, where that is published. */
  readonly hottest?: LimitPlan;
  /** Figures that the file calls unknown: the usual share stands in for the sums, and what is judged by it is unproven. */
  readonly unknown: ReadonlySet<CoilKey>;
  /** K/W. */
  readonly thermal: Interval;
  /** Henries, armature closed, where stated. */
  readonly inductance?: Interval;
  /** It never has to pull in again while it is warm from its own heat. */
  readonly restartsCold: boolean;
  readonly origin: Origin;
}

/** Reads a coil; problems are reported where something needed is missing. */
export function coilFigures(figures: Figures): CoilFigures | undefined {
  const voltage = figures.figure('voltage', 'voltage');
  if (voltage === undefined) {
    figures.problem(
      'voltage',
      `the coil of ${figures.about} has no nominal voltage`,
      '`voltage: 5 V`, or a `part:` from the catalogue',
    );
    return undefined;
  }
  const nominal = closed(voltage.quantity).typ;
  const resistance = figures.figure('resistance', 'resistance');
  const ohms = resistance ? closed(resistance.quantity) : fromPower(figures, nominal);
  if (ohms === undefined || ohms.min <= 0 || nominal <= 0) {
    figures.problem(
      'resistance',
      `the coil of ${figures.about} needs a resistance or a power above zero`,
      '`resistance: 70 Ω ±10 %`',
    );
    return undefined;
  }
  const reference = figures.interval('reference-temperature', 'temperature')?.typ ?? USUAL_REFERENCE;
  const thermal =
    figures.interval('thermal-resistance', 'thermal-resistance') ?? usualThermal(figures, nominal, ohms.typ);
  const hottest = rating(figures, 'maximum-temperature', 'temperature', { margin: 'temperature' });
  const inductance = figures.interval('inductance', 'inductance');
  const pullIn = pullInOf(figures, nominal, reference);
  const dropOut = dropOutOf(figures, nominal, reference);
  const holding = holdingOf(figures, nominal, reference, figures.within('series').says('bypass'));
  return {
    ohms,
    nominal,
    reference,
    pullIn,
    dropOut,
    ...(holding && { holding }),
    // A winding whose temperature is published is judged by that, unless a voltage is published, too.
    ...((hottest === undefined || figures.says('maximum')) && {
      maximum: maximumOf(figures, nominal, { ohms: ohms.typ, thermal: thermal.max, reference }),
    }),
    ...(hottest && { hottest }),
    unknown: new Set(KEYS.filter((key) => figures.masked(key))),
    thermal,
    ...(inductance && { inductance }),
    // What pulses set is cold whenever it is set.
    restartsCold: figures.word('restart') === 'cold' || figures.says('latching'),
    origin: resistance?.origin ?? PRACTICE,
  };
}

function fromPower(figures: Figures, nominal: number): Interval | undefined {
  const power = figures.interval('power', 'power');
  if (power === undefined || power.min <= 0) return undefined;
  const square = nominal * nominal;
  return { min: square / power.max, typ: square / power.typ, max: square / power.min };
}

function usualThermal(figures: Figures, nominal: number, ohms: number): Interval {
  const power = (nominal * nominal) / ohms;
  const rise = power <= 1 ? RISE.small : RISE.large;
  figures.assume(`the coil warms by ${rise} K at its rated voltage, since nobody states its thermal resistance`);
  return { min: rise / power, typ: rise / power, max: rise / power };
}

/** Current at which a coil has surely let go, amperes: the same ampere-turns at any temperature, so the current is what counts. */
export const dropOutCurrent = (coil: CoilFigures, s: Reading): number =>
  s.typical ? coil.dropOut.typ / coil.ohms.typ : coil.dropOut.min / coil.ohms.max;

/** Thermal resistance that a corner counts on, K/W: the worst, typically the typical. */
export const thermalIn = ({ thermal }: CoilFigures, s: Reading): number => (s.typical ? thermal.typ : thermal.max);

/** Temperature of a coil at rest, °C, from the volts across it and its resistance in that corner at the ambient. */
export const coilRestTemperature = (coil: CoilFigures, across: number, ohmsNow: number, s: Reading): number =>
  coilTemperature(
    across,
    ohmsNow / copperFactor(s.ambient, coil.reference),
    s.ambient,
    thermalIn(coil, s),
    coil.reference,
  );
