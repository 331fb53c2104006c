/** The voltages of a coil as its figures state them: where it pulls in, where it lets go, and what it bears. */
import { coilTemperature, copperFactor } from '../circuit/copper.js';
import { highestCoilVoltage } from '../circuit/coil.js';
import type { Interval } from '../quantity/interval.js';
import { interpolate } from '../quantity/points.js';
import type { Quantity } from '../quantity/quantity.js';
import { formatInterval, formatValue } from '../quantity/print.js';
import type { Curve, Figures } from './figures.js';
import type { LimitPlan } from './account-plan.js';
import type { Origin } from './branch-plan.js';

/** Shares of the nominal voltage that are taken when nobody states them (rule 8 of the format). */
const PULL_IN: Interval = { min: 0.55, typ: 0.65, max: 0.75 };
const DROP_OUT: Interval = { min: 0.05, typ: 0.2, max: 0.4 };
const MAXIMUM: Interval = { min: 1.1, typ: 1.2, max: 1.3 };
export const PRACTICE: Origin = { document: 'common practice, no source', basis: 'practice' };
/** A published operate voltage that is this much above what copper alone would make of a cold coil's is that of a warm one. */
const WARM = 1.01;

/** Volts with the temperature they hold at. */
type VoltPoint = Pick<Curve['points'][number], 'at' | 'value'>;

/** Voltage at which a coil surely pulls in, and typically does. */
export interface PullIn {
  /** At the reference temperature, coil cold, volts. */
  readonly typ: number;
  readonly max: number;
  readonly stated: string;
  readonly origin: Origin;
  /** Published for coils that are warm from their own heat, by ambient: these replace the copper rule. */
  readonly hot: readonly { readonly at: number; readonly typ: number; readonly max: number; readonly stated: string }[];
}

/** Voltage at which a coil surely lets go, and typically does. */
export interface DropOut {
  readonly min: number;
  readonly typ: number;
  readonly stated: string;
  readonly origin: Origin;
}

const percent = (share: number): number => Math.round(share * 1000) / 10;

/** The points of a voltage that may be written as a share of the nominal one, coldest first. */
function voltPoints(figures: Figures, key: string, nominal: number, reference: number) {
  const asShare = /%/.test(figures.text(key) ?? '');
  const curve = figures.curve(key, asShare ? 'ratio' : 'voltage', 'temperature');
  if (curve === undefined) return undefined;
  const scale = asShare ? nominal : 1;
  const alone = curve.points.length === 1;
  const points = curve.points.map(({ at, anywhere, value: v, quantity }) => ({
    // Beside points with a temperature, one without holds at that of the other figures.
    at: anywhere ? reference : at,
    everywhere: alone && anywhere === true,
    quantity,
    value: { min: v.min * scale, typ: v.typ * scale, max: v.max * scale },
    stated: asShare ? `${quantity.stated} of ${nominal} V` : quantity.stated,
  }));
  return { points: points.sort((a, b) => a.at - b.at), origin: curve.origin };
}

/** Of a range the middle is typical; an exact figure is a bound that somebody guarantees. */
const typicalStated = ({ exact, min, typ, max }: Quantity): boolean =>
  !exact && (typ !== undefined || (min !== undefined && max !== undefined));

/** What stands in for a voltage that nobody states: the usual shares of the nominal one, listed. */
function usualShare(figures: Figures, key: string, nominal: number, usual: Interval) {
  const value = { min: usual.min * nominal, typ: usual.typ * nominal, max: usual.max * nominal };
  if (!figures.masked(key))
    figures.assume(
      `${key} voltage: ${percent(usual.min)} to ${percent(usual.max)} % of ${nominal} V, since nobody states it`,
    );
  return { value, stated: `${formatInterval(value, 'voltage')}, assumed`, origin: PRACTICE };
}

const onlyBound = (figures: Figures, key: string, usual: Interval): void =>
  figures.assume(`${key} voltage: typically ${percent(usual.typ)} % of nominal, since only a bound is stated`);

/** @param reference °C at which figures without a temperature of their own hold */
export function pullInOf(figures: Figures, nominal: number, reference: number): PullIn {
  const stated = voltPoints(figures, 'pull-in', nominal, reference);
  if (stated === undefined) {
    const { value, ...rest } = usualShare(figures, 'pull-in', nominal, PULL_IN);
    return { typ: value.typ, max: value.max, ...rest, hot: [] };
  }
  const { points, origin } = stated;
  const toReference = (p: VoltPoint): number => 1 / copperFactor(p.at, reference);
  const [coldest] = points as [(typeof points)[number]];
  const cold = coldest.value.max * toReference(coldest);
  const isHot = (p: VoltPoint): boolean => p !== coldest && p.value.max * toReference(p) > WARM * cold;
  // Of several for cold coils the one that asks for most counts.
  const base = points
    .filter((p) => !isHot(p))
    .reduce((a, b) => (b.value.max * toReference(b) > a.value.max * toReference(a) ? b : a));
  const max = base.value.max * toReference(base);
  const told = typicalStated(base.quantity);
  // A guaranteed bound is not a typical value.
  if (!told) onlyBound(figures, 'pull-in', PULL_IN);
  const typ = told ? base.value.typ * toReference(base) : Math.min(PULL_IN.typ * nominal, max);
  return {
    typ,
    max,
    stated: base.stated,
    origin,
    hot: points.filter(isHot).map((p) => ({
      at: p.at,
      max: p.value.max,
      typ: typicalStated(p.quantity) ? p.value.typ : (p.value.max * typ) / max,
      stated: `${p.stated} at ${formatValue(p.at, 'temperature')}`,
    })),
  };
}

export function dropOutOf(figures: Figures, nominal: number, reference: number): DropOut {
  const stated = voltPoints(figures, 'drop-out', nominal, reference);
  if (stated === undefined) {
    const { value, ...rest } = usualShare(figures, 'drop-out', nominal, DROP_OUT);
    return { min: value.min, typ: value.typ, ...rest };
  }
  const [{ value, quantity, stated: text }] = stated.points as [(typeof stated.points)[number]];
  const told = typicalStated(quantity);
  if (!told) onlyBound(figures, 'drop-out', DROP_OUT);
  const typ = told ? value.typ : Math.max(DROP_OUT.typ * nominal, value.min);
  return { min: value.min, typ, stated: text, origin: stated.origin };
}

/** Volts that keep a coil pulled in, at the reference temperature. */
export interface Holding {
  readonly volts: { readonly typ: number; readonly max: number };
  readonly stated: string;
  readonly origin: Origin;
}

/** @param asked it is held by less than it pulls in with, so that it matters even where nobody states it */
export function holdingOf(figures: Figures, nominal: number, reference: number, asked: boolean): Holding | undefined {
  const stated = voltPoints(figures, 'holding', nominal, reference);
  if (stated === undefined) {
    if (!asked) return undefined;
    // It lets go somewhere in the usual range of drop-out voltages: above that it holds.
    const [typ, max] = [DROP_OUT.typ * nominal, DROP_OUT.max * nominal];
    figures.assume(
      `it stays pulled in above ${percent(DROP_OUT.max)} % of ${nominal} V, the highest usual drop-out voltage, since nobody states its holding voltage`,
    );
    return { volts: { typ, max }, stated: `${formatValue(max, 'voltage')}, assumed`, origin: PRACTICE };
  }
  const [{ value, quantity, stated: text }] = stated.points as [(typeof stated.points)[number]];
  const typ = typicalStated(quantity) ? value.typ : Math.min(DROP_OUT.typ * nominal, value.max);
  return { volts: { typ, max: value.max }, stated: text, origin: stated.origin };
}

/** What the derating of a maximum needs of its coil: ohms at the reference temperature, K/W. */
interface Winding {
  readonly ohms: number;
  readonly thermal: number;
  readonly reference: number;
}

/**
 * Highest voltage for good. Points over the ambient are interpolated; one that holds at an ambient is as much in a colder
 * place, and in a hotter one what brings the winding to the same temperature.
 */
export function maximumOf(figures: Figures, nominal: number, winding: Winding): LimitPlan {
  const stated = voltPoints(figures, 'maximum', nominal, winding.reference);
  const base = { margin: 'none' as const, grade: 'operating' as const };
  if (stated !== undefined) {
    const { points, origin } = stated;
    const [first] = points as [(typeof points)[number]];
    if (first.everywhere) {
      // Of a range that is common practice, nobody answers for the part above its lower end.
      const open = origin.basis === 'practice' && first.value.max > first.value.min;
      const doubtful = open && { grade: 'practice' as const, range: first.value };
      return { ...base, value: first.value.min, stated: first.stated, origin, ...doubtful };
    }
    const { ohms, thermal, reference } = winding;
    const permitted = coilTemperature(first.value.min, ohms, first.at, thermal, reference);
    const hotter = (ambient: number): number =>
      points.length > 1
        ? interpolate(points, ambient).value.min
        : highestCoilVoltage(ohms, ambient, thermal, permitted, reference);
    return {
      ...base,
      value: (s) => (s.ambient <= first.at ? first.value.min : Math.max(hotter(s.ambient), 0)),
      stated: points.map((p) => `${p.stated} at ${formatValue(p.at, 'temperature')}`).join(', '),
      origin,
      condition: points.length > 1 ? 'by the ambient' : 'less in a hotter place, where the winding is as hot by then',
    };
  }
  const range = { min: MAXIMUM.min * nominal, typ: MAXIMUM.typ * nominal, max: MAXIMUM.max * nominal };
  if (!figures.masked('maximum'))
    figures.assume(`highest coil voltage: 110 to 130 % of ${nominal} V, since nobody states it`);
  return {
    ...base,
    value: range.min,
    stated: `${formatInterval(range, 'voltage')}, assumed`,
    grade: 'practice',
    range,
    origin: PRACTICE,
  };
}
