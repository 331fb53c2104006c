/** A series resistor in front of a load, and what it bears. */
import type { Bypassed } from '../circuit/bypass.js';
import { ohmsAfter, ohmsOverSecond } from '../circuit/bypass.js';
import type { Interval } from '../quantity/interval.js';
import { closed } from '../quantity/quantity.js';
import type { Figure, Figures } from './figures.js';
import type { AccountPlan } from './account-plan.js';
import type { Member } from './branch-plan.js';
import { resistorBears, resistorPower, unknownResistor } from './resistor-power.js';

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
  const figure = seriesFigure(figures);
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
  const limit = resistorBears(figures, `the series resistor of ${figures.about}`, detailed ? spelled : undefined);
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

/** The resistance under a load's `series`, plain or spelled out. */
export function seriesFigure(figures: Figures): Figure | undefined {
  const spelled = figures.within('series');
  return spelled.says('resistance')
    ? spelled.figure('resistance', 'resistance')
    : figures.figure('series', 'resistance');
}

/** The resistor under a load's `series` where that lies in its signal and carries no more than an input takes. */
export function ohmsInLine(figures: Figures): Interval | undefined {
  const figure = seriesFigure(figures);
  return figure && closed(figure.quantity);
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
