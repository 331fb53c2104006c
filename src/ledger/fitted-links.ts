/** The figures of the links of the supply tree, put in once for each corner: at which end of its range each stands there. */
import { copperFactor } from '../circuit/copper.js';
import type { Junction } from '../circuit/junction.js';
import { junctionAt } from '../circuit/junction.js';
import { WIRE_REFERENCE } from '../circuit/wire.js';
import type { Link } from '../project/tree-plan.js';
import type { Interval } from '../quantity/interval.js';
import type { Point } from '../quantity/points.js';
import { interpolate } from '../quantity/points.js';
import { figureOf, within } from './builds.js';
import type { Circuitry, LinkIndex } from './circuitry.js';
import { MOST_AT } from './collapse.js';
import type { Corner, End } from './corner.js';
import { atEnd } from './corner.js';
import { builtJunction } from './fitted-branch.js';
import { spread } from './leaning.js';

/** What the figures of a link depend on. */
export interface LinkSetting {
  readonly corner: Corner;
  /** What regulators take for themselves: to circuits in question they are the rest, in a question of the tree they are in it. */
  appetite(link: Link): End;
  /** Ambient of a place, °C. */
  celsiusIn(place: string | undefined): number;
}

/** A figure that may depend on a current in amperes. */
type OverCurrent = number | ((amps: number) => number);

/** A link with its figures put in; 0 stands for what it does not have. */
export interface FittedLink {
  readonly kind: Link['kind'];
  /** Its number among the links, and those of its nodes. */
  readonly number: number;
  readonly from: number;
  readonly to: number;
  /** Ohms in the way: of a fuse, a limiter, a switch, a cable. */
  readonly ohms: number;
  /** A diode's law, and its saturation current in amperes. */
  readonly junction: Junction | undefined;
  readonly saturation: number;
  /** Volts that a diode without a curve drops whatever the current. */
  readonly drop: number;
  /** Volts that a regulator holds. */
  readonly holds: number;
  /** Which way a switching regulator goes: as stated, or as its voltages say. */
  readonly step: 'down' | 'up' | 'both';
  /** Volts that a regulator needs over its output, at an output current. */
  readonly dropout: OverCurrent;
  /** Share of a switching regulator's input power that it hands on, at an output current. */
  readonly efficiency: OverCurrent;
  /** A regulator's own current, amperes. */
  readonly own: number;
  /** Something feeds it. */
  readonly fed: boolean;
  /** Volts at which its source gives the most: what asks for more makes it collapse. */
  readonly least: number;
}

/** The value of a figure at a current in amperes. */
export const valueAt = (figure: OverCurrent, amps: number): number =>
  typeof figure === 'number' ? figure : figure(amps);

/** The figures of all links in a corner, by number. */
export const fitLinks = (setting: LinkSetting, { links, open }: Circuitry): readonly FittedLink[] =>
  links.map((index, number) => fitLink(setting, index, number, open[index.from]));

function fitLink(
  s: LinkSetting,
  { link, from, to }: LinkIndex,
  number: number,
  source: Interval | undefined,
): FittedLink {
  const losses = lossesOf(s, link);
  const appetite = s.appetite(link);
  const figure = (key: 'ohms' | 'drop' | 'volts' | 'quiescent', end: End): number =>
    taken(s, link[key], figureOf(link.id, key), end);
  const over = (key: 'dropout' | 'efficiency', end: End, points = link[key]): OverCurrent => {
    const name = figureOf(link.id, key);
    if (points === undefined || points.length < 2) return taken(s, points?.[0]?.value, name, end);
    return (amps) => taken(s, at(points, amps), name, end);
  };
  const junction = link.law && diode(s, link);
  return {
    kind: link.kind,
    number,
    from,
    to,
    ohms: link.kind === 'cable' ? cableOf(s, link).ohms : figure('ohms', losses),
    junction,
    saturation: junction ? Math.exp(junction.logSaturation) : 0,
    drop: figure('drop', losses),
    holds: figure('volts', s.corner.apart?.get(link.id) ?? s.corner.outputs),
    step: link.step ?? ((source?.typ ?? 0) >= (link.volts?.typ ?? 0) ? 'down' : 'up'),
    dropout: over('dropout', losses),
    efficiency: over('efficiency', appetite === 'typ' ? 'typ' : appetite === 'low' ? 'high' : 'low'),
    own: figure('quiescent', appetite),
    fed: source !== undefined,
    least: MOST_AT * (source?.min ?? 0.2),
  };
}

/** An uncertain figure as this build has it, or at the corner's end; 0 where there is none. */
export function taken(
  { corner: { build } }: Pick<LinkSetting, 'corner'>,
  of: Interval | undefined,
  figure: string,
  end: End,
): number {
  if (of === undefined) return 0;
  return build ? within(of, build.share(figure)) : atEnd(of, end);
}

/** Losses of a link: those of the corner, or what takes the rail behind it to where it has to stand. */
function lossesOf({ corner }: LinkSetting, link: Link): End {
  const end = corner.apart?.get(link.id);
  return end === undefined ? corner.losses : end === 'low' ? 'high' : 'low';
}

/** A cable's resistance: its copper at 20 °C and at its temperature, and its plugs. */
export function cableOf(s: LinkSetting, link: Link) {
  const losses = lossesOf(s, link);
  const celsius = s.celsiusIn(link.place);
  const cold = taken(s, link.ohms, figureOf(link.id, 'ohms'), losses);
  const contact = taken(s, link.contact, figureOf(link.id, 'contact'), losses);
  return { cold, contact, celsius, ohms: cold * copperFactor(celsius, WIRE_REFERENCE) + contact };
}

/** A figure of a curve at a current in amperes; beyond its points it is extended, but never below nothing. */
function at(points: readonly Point[], amps: number): Interval {
  const { min, typ, max } = interpolate(points, Math.max(amps, 0)).value;
  return { min: Math.max(min, 0), typ: Math.max(typ, 0), max: Math.max(max, 0) };
}

function diode(s: LinkSetting, link: Link): Junction {
  const { build } = s.corner;
  if (build) return builtJunction(link.law!, build.share(figureOf(link.id, 'law')), s.celsiusIn(link.place));
  const losses = lossesOf(s, link);
  const lean = losses === 'typ' ? 'typ' : losses === 'low' ? 'high' : 'low';
  return junctionAt(spread(link.law!, lean), s.celsiusIn(link.place));
}
