/** A series resistor in front of a load, and what it bears. */
import type { Bypassed } from '../circuit/bypass.js';
import { ohmsAfter, ohmsOverSecond } from '../circuit/bypass.js';
import type { Interval } from '../quantity/interval.js';
import { closed } from '../quantity/quantity.js';
import { assumed, rating } from './limits.js';
import type { Figures } from './figures.js';
import type { AccountPlan, LimitPlan, Member, Reading } from './plan.js';
import { meanOf, meanSteps } from './pulses.js';

/** What a resistor bears when nobody says so, watts (rule 8 of the format). */
export const USUAL_POWER = 0.25;

export interface Series {
  readonly members: readonly Member[];
  readonly accounts: readonly AccountPlan[];
  /** Typical ohms, when one is fitted. */
  readonly ohms?: number;
  /** A capacitor lies across it. */
  readonly bypass?: Bypass;
  /** One is fitted, and nobody knows which: nothing behind it can be reckoned. */
  readonly unknown?: true;
}

/** The resistor that would let through as much as a bypassed one does after a while, and what it was reckoned from. */
export interface Acting extends Bypassed {
  readonly ohms: number;
  /** The resistance that it takes the place of, ohms. */
  readonly whole: number;
}

/** A capacitor across the series resistor, and the resistor that would let through as much when its load has to act. */
export interface Bypass {
  readonly part: string;
  /** The resistor itself, ohms. */
  readonly ohms: Interval;
  readonly acting: { readonly typ: Acting; readonly max: Acting };
  /** Seconds after switching on. */
  readonly after: number;
}

/** What a bypassed resistor feeds. */
export interface Fed {
  readonly members: readonly Member[];
  /** Seconds after which it has to act, as a coil that pulls in. */
  readonly acts?: number;
}

/** The resistor under a load's `series`, plain or with its power rating and the capacitor across it. */
export function seriesOf(figures: Figures, circuit: string, path: readonly (string | number)[], fed: Fed): Series {
  if (!figures.says('series')) return { members: [], accounts: [] };
  const spelled = figures.within('series');
  const detailed = spelled.says('resistance');
  const figure = detailed ? spelled.figure('resistance', 'resistance') : figures.figure('series', 'resistance');
  if (figure === undefined) {
    const masked = detailed ? spelled.masked('resistance') : figures.masked('series');
    return masked
      ? { members: [], accounts: [unknownResistor(`${circuit}.series`, circuit, path)], unknown: true }
      : { members: [], accounts: [] };
  }
  const ohms = closed(figure.quantity);
  if (ohms.min <= 0) {
    figures.problem('series', 'a series resistance has to be above zero', 'leave `series` out where none is fitted');
    return { members: [], accounts: [] };
  }
  const part = `${circuit}.series`;
  const limit =
    (detailed ? rating(spelled, 'power', 'power', { grade: 'operating' }) : undefined) ??
    assumed(
      figures,
      `what the series resistor of ${figures.about} bears`,
      { min: USUAL_POWER, typ: USUAL_POWER, max: USUAL_POWER },
      'power',
    );
  const bypass = detailed ? bypassOf(spelled, part, ohms, fed) : undefined;
  const { peaks, ...power } = resistorPower(part, circuit, path, limit, ohms);
  return {
    members: [{ kind: 'resistance', part, ohms, origin: figure.origin, ...(bypass && { bypass: bypass.shares }) }],
    // What the capacitor takes at first does not go through the resistor.
    accounts: [{ ...power, ...(peaks && !bypass && { peaks }) }],
    ohms: ohms.typ,
    ...(bypass && { bypass: bypass.told }),
  };
}

/** The resistor under a load's `series` where that lies in its signal and carries no more than an input takes. */
export function ohmsInLine(figures: Figures): Interval | undefined {
  const spelled = figures.within('series');
  return spelled.says('resistance')
    ? spelled.interval('resistance', 'resistance')
    : figures.interval('series', 'resistance');
}

/** Ohms behind a bypassed resistor where nothing there has any that are known: the capacitor's own, leads and contacts. */
const LEAST_REST = 1;

function bypassOf(figures: Figures, part: string, ohms: Interval, { members, acts }: Fed) {
  const farads = figures.interval('bypass', 'capacitance');
  if (farads === undefined) return undefined;
  if (farads.min <= 0) {
    figures.problem('bypass', 'a capacitance has to be above zero', 'leave `bypass` out where none is fitted');
    return undefined;
  }
  figures.assume(
    `the capacitor across ${part} is empty when it is switched on: it has been off for five times resistance and capacitance`,
  );
  const rest = (end: 'min' | 'typ' | 'max'): number =>
    Math.max(
      members.reduce((sum, m) => sum + (m.kind === 'resistance' ? m.ohms[end] : 0), 0),
      LEAST_REST,
    );
  const second = ohmsOverSecond({ series: ohms.max, rest: rest('min'), capacitance: farads.max }) / ohms.max;
  // One that nothing waits for counts whole.
  const after = acts ?? Infinity;
  /** As much of the whole resistance as is left of one in the range. */
  const acting = (bypassed: Bypassed, whole: number): Acting => {
    const share = after === Infinity ? 1 : ohmsAfter(bypassed, after) / bypassed.series;
    return { ...bypassed, whole, ohms: share * whole };
  };
  const most = [ohms.min, ohms.max]
    .flatMap((series) =>
      (['min', 'max'] as const).map((end) => acting({ series, rest: rest(end), capacitance: farads.min }, ohms.max)),
    )
    .reduce((a, b) => (b.ohms > a.ohms ? b : a));
  const typical = acting({ series: ohms.typ, rest: rest('typ'), capacitance: farads.typ }, ohms.typ);
  const told: Bypass = { part, ohms, acting: { typ: typical, max: most }, after };
  return { shares: { acting: most.ohms / ohms.max, second }, told };
}

/** Power in a resistor of a circuit. @param ohms its range, where the account is about the resistor behind what feeds it */
export function resistorPower(
  part: string,
  circuit: string,
  path: readonly (string | number)[],
  limit: LimitPlan,
  ohms?: Interval,
): AccountPlan {
  const power = (s: Reading): number => s.current(part) ** 2 * s.ohms(part);
  return {
    id: part,
    kind: 'series',
    title: `${part}, heat`,
    quantity: 'power',
    direction: 'at-most',
    circuits: [circuit],
    path,
    // Before a load that hardly answers to it, a resistor at its upper end is the hotter one.
    recipes: ['draw-most', 'draw-least', 'hottest', 'flooded'],
    ...(ohms && { turns: { part, ohms } }),
    peaks: 'rms',
    read: (s) => meanOf(s, power),
    limits: [limit],
    steps: (s) => [
      {
        name: 'P',
        says: 'heat in the resistor',
        formula: 'I^2 * R',
        with: { I: [s.current(part), 'A'], R: [s.ohms(part), 'Ω'] },
        gives: [power(s), 'W'],
      },
      ...meanSteps(s, 'P_mean', 'its mean over a period of the pulses', 'W', power),
    ],
  };
}

/** A resistor that is fitted and unknown: what depends on it is unproven, and this is the question. */
export const unknownResistor = (part: string, circuit: string, path: readonly (string | number)[]): AccountPlan => ({
  id: part,
  kind: 'series',
  title: part,
  quantity: 'power',
  direction: 'at-most',
  circuits: [circuit],
  path,
  recipes: ['draw-most'],
  read: () => undefined,
  limits: [],
  missing: { figure: 'resistance', asks: `what is the resistance of ${part}?` },
  steps: () => [],
});
