/** What a coil's figures say: resistance, the voltages it pulls in, lets go and bears, and how warm it gets. */
import { copperFactor, coilTemperature } from '../circuit/copper.js';
import type { Interval } from '../quantity/interval.js';
import type { Quantity } from '../quantity/quantity.js';
import { closed } from '../quantity/quantity.js';
import { formatInterval } from '../quantity/print.js';
import type { Figures } from './figures.js';
import type { LimitPlan, Origin } from './plan.js';

/** Shares of the nominal voltage that are taken when nobody states them (rule 8 of the format). */
const PULL_IN: Interval = { min: 0.55, typ: 0.65, max: 0.75 };
const DROP_OUT: Interval = { min: 0.05, typ: 0.2, max: 0.4 };
const MAXIMUM: Interval = { min: 1.1, typ: 1.2, max: 1.3 };
/** Rise of a coil at its rated voltage, kelvin, up to 1 W and above. */
const RISE = { small: 25, large: 60 };
const USUAL_REFERENCE = 20;
const PRACTICE: Origin = { document: 'common practice, no source', basis: 'practice' };

type CoilKey = 'pull-in' | 'drop-out' | 'maximum';
const KEYS: readonly CoilKey[] = ['pull-in', 'drop-out', 'maximum'];

export interface CoilFigures {
  /** Ohms at the reference temperature. */
  readonly ohms: Interval;
  readonly nominal: number;
  /** °C at which its figures hold. */
  readonly reference: number;
  /** Volts at the reference temperature at which it pulls in: the typical one, and the one it surely does. */
  readonly pullIn: { readonly typ: number; readonly max: number; readonly stated: string; readonly origin: Origin };
  /** Volts at which it lets go: surely, and typically. */
  readonly dropOut: { readonly min: number; readonly typ: number; readonly stated: string; readonly origin: Origin };
  readonly maximum: LimitPlan;
  /** Figures that the file calls unknown: the usual share stands in for the sums, and what is judged by it is unproven. */
  readonly unknown: ReadonlySet<CoilKey>;
  /** K/W. */
  readonly thermal: number;
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
  const pullIn = share(figures, 'pull-in', nominal, PULL_IN, 'pull-in');
  const dropOut = share(figures, 'drop-out', nominal, DROP_OUT, 'drop-out');
  const reference = figures.interval('reference-temperature', 'temperature')?.typ ?? USUAL_REFERENCE;
  return {
    ohms,
    nominal,
    reference,
    pullIn: { typ: pullIn.value.typ, max: pullIn.value.max, stated: pullIn.stated, origin: pullIn.origin },
    dropOut: { min: dropOut.value.min, typ: dropOut.value.typ, stated: dropOut.stated, origin: dropOut.origin },
    maximum: maximumOf(figures, nominal),
    unknown: new Set(KEYS.filter((key) => figures.masked(key))),
    thermal:
      figures.interval('thermal-resistance', 'thermal-resistance')?.max ?? usualThermal(figures, nominal, ohms.typ),
    origin: resistance?.origin ?? PRACTICE,
  };
}

function fromPower(figures: Figures, nominal: number): Interval | undefined {
  const power = figures.interval('power', 'power');
  if (power === undefined || power.min <= 0) return undefined;
  const square = nominal * nominal;
  return { min: square / power.max, typ: square / power.typ, max: square / power.min };
}

const percent = (share: number): number => Math.round(share * 1000) / 10;

/** A voltage that may be written as a share of the nominal one. */
function volts(
  figures: Figures,
  key: string,
  nominal: number,
): { value: Interval; stated: string; origin: Origin; has: { typ: boolean } } | undefined {
  const asShare = /%/.test(figures.text(key) ?? '');
  const figure = figures.figure(key, asShare ? 'ratio' : 'voltage');
  if (figure === undefined) return undefined;
  const value = closed(figure.quantity);
  const scale = asShare ? nominal : 1;
  return {
    value: { min: value.min * scale, typ: value.typ * scale, max: value.max * scale },
    stated: asShare ? `${figure.quantity.stated} of ${nominal} V` : figure.quantity.stated,
    origin: figure.origin,
    has: { typ: typicalStated(figure.quantity) },
  };
}

/** Of a range the middle is typical; an exact figure is a bound that somebody guarantees. */
const typicalStated = ({ exact, min, typ, max }: Quantity): boolean =>
  !exact && (typ !== undefined || (min !== undefined && max !== undefined));

/** Pull-in and drop-out: as stated, with the usual share as the typical one where only a bound is stated. */
function share(figures: Figures, key: string, nominal: number, usual: Interval, what: string) {
  const stated = volts(figures, key, nominal);
  const typical = usual.typ * nominal;
  if (stated !== undefined) {
    if (stated.has.typ) return stated;
    // A guaranteed bound is not a typical value.
    const typ = key === 'pull-in' ? Math.min(typical, stated.value.max) : Math.max(typical, stated.value.min);
    figures.assume(`${what} voltage: typically ${percent(usual.typ)} % of nominal, since only a bound is stated`);
    return { ...stated, value: { ...stated.value, typ } };
  }
  const value = { min: usual.min * nominal, typ: typical, max: usual.max * nominal };
  if (!figures.masked(key))
    figures.assume(
      `${what} voltage: ${percent(usual.min)} to ${percent(usual.max)} % of ${nominal} V, since nobody states it`,
    );
  return { value, stated: `${formatInterval(value, 'voltage')}, assumed`, origin: PRACTICE };
}

function maximumOf(figures: Figures, nominal: number): LimitPlan {
  const stated = volts(figures, 'maximum', nominal);
  if (stated)
    return {
      value: stated.value.min,
      stated: stated.stated,
      grade: 'operating',
      margin: 'none',
      origin: stated.origin,
    };
  const range = { min: MAXIMUM.min * nominal, typ: MAXIMUM.typ * nominal, max: MAXIMUM.max * nominal };
  if (!figures.masked('maximum'))
    figures.assume(`highest coil voltage: 110 to 130 % of ${nominal} V, since nobody states it`);
  return {
    value: range.min,
    stated: `${formatInterval(range, 'voltage')}, assumed`,
    grade: 'practice',
    margin: 'none',
    range,
    origin: PRACTICE,
  };
}

function usualThermal(figures: Figures, nominal: number, ohms: number): number {
  const power = (nominal * nominal) / ohms;
  const rise = power <= 1 ? RISE.small : RISE.large;
  figures.assume(`the coil warms by ${rise} K at its rated voltage, since nobody states its thermal resistance`);
  return rise / power;
}

/** Temperature of a coil at rest, °C, from the volts across it and its resistance in that corner at the ambient. */
export const coilRestTemperature = (coil: CoilFigures, across: number, ohmsNow: number, ambient: number): number =>
  coilTemperature(across, ohmsNow / copperFactor(ambient, coil.reference), ambient, coil.thermal, coil.reference);
