/**
 * The laws of the links of the supply tree: what each kind takes from the node before it, and what it hands down to the one
 * behind. A sweep asks for both with the slope of what hangs behind, so that its step is Newton's.
 */
import { copperFactor } from '../circuit/copper.js';
import type { Junction } from '../circuit/junction.js';
import { junctionAt, junctionVoltage } from '../circuit/junction.js';
import { switcherInput } from '../circuit/switcher.js';
import { WIRE_REFERENCE } from '../circuit/wire.js';
import type { Link } from '../project/project.js';
import type { Interval } from '../quantity/interval.js';
import type { Point } from '../quantity/points.js';
import { interpolate } from '../quantity/points.js';
import { figureOf, within } from './builds.js';
import type { Circuitry, LinkIndex } from './circuitry.js';
import type { Corner, End } from './corner.js';
import { atEnd } from './corner.js';
import { builtJunction } from './fitting.js';
import { spread } from './leaning.js';

/** What the laws see of the solution that a link stands in. */
export interface LinkSetting {
  readonly circuitry: Pick<Circuitry, 'open' | 'nodeIndex' | 'linkIndex'>;
  readonly corner: Corner;
  /** Volts by node number. */
  readonly volts: readonly number[];
  /** Amperes out of each link as the last sweep left them. */
  readonly linkCurrents: readonly number[];
  /** What regulators take for themselves: to circuits in question they are the rest, in a question of the tree they are in it. */
  appetite(link: Link): End;
  /** Ambient of a place, °C. */
  celsiusIn(place: string | undefined): number;
}

/** Amperes that are rounding. */
const NO_CURRENT = 1e-12;

/** A current in amperes, and how it rises with the voltage of the node it is taken from, siemens. */
export interface Draw {
  readonly amps: number;
  readonly slope: number;
}

/**
 * What a link takes from the node before it.
 *
 * @param out amperes drawn from the node behind it @param slope how they rise with that node's voltage, siemens
 */
export function takenBy(s: LinkSetting, { link, from, to }: LinkIndex, out: number, slope: number): Draw {
  switch (link.kind) {
    case 'linear-regulator':
      return {
        amps: out + ownCurrent(s, link),
        slope: regulatesAt(s, link, from, out) ? 0 : behind(slope, slopeOhms(s, link, out)),
      };
    case 'switching-regulator': {
      // A source with resistance gives the most at half its voltage; what asks for more makes it collapse.
      const least = (s.circuitry.open[from]?.min ?? 0.2) / 2;
      const input = Math.max(s.volts[from]!, least);
      const amps = switcherInput(s.volts[to]!, out, efficiencyAt(s, link, out), input, ownCurrent(s, link));
      // Where its output follows its input, what it takes rises with that.
      if (!regulatesAt(s, link, from, out)) return { amps, slope: behind(slope, slopeOhms(s, link, out)) };
      // It takes the same power from less voltage.
      // Newton's step is safe well above that point; near it plain sweeps creep up to the same rest.
      return { amps, slope: input > 1.3 * least ? -(amps - ownCurrent(s, link)) / input : 0 };
    }
    case 'wire':
    case 'cable':
    case 'fuse':
    case 'limiter':
    case 'switch':
    case 'diode':
      return { amps: out, slope: behind(slope, slopeOhms(s, link, Math.max(out, 0))) };
    default:
      return link.kind satisfies never;
  }
}

/** The slope of what hangs behind some ohms, seen from before them. */
const behind = (slope: number, ohms: number): number => slope / (1 + ohms * slope);

/** Volts that a link hands down, with the load's slope taken into account. @param drawn amperes @param slope siemens */
export function outputOf(s: LinkSetting, { link, from, to }: LinkIndex, drawn: number, slope: number): number {
  const input = s.volts[from]!;
  switch (link.kind) {
    case 'wire':
      return input;
    case 'cable':
    case 'fuse':
    case 'limiter':
    case 'switch': {
      const ohms = resistanceOf(s, link);
      return stepped(input - ohms * drawn, ohms * slope, s.volts[to]!);
    }
    case 'diode':
      return behindDiode(s, link, input, s.volts[to]!, drawn, slope);
    case 'linear-regulator':
    case 'switching-regulator': {
      // On a source that collapses a switching one still asks for what its loads take: the books show by how much too much.
      if (s.circuitry.open[from] === undefined) return 0;
      if (regulatesAt(s, link, from, drawn)) return setPoint(s, link);
      return stepped(passedOn(s, link, input, drawn), slopeOhms(s, link, drawn) * slope, s.volts[to]!);
    }
    default:
      return link.kind satisfies never;
  }
}

/** Voltage behind a diode from which a current is drawn that rises with it; it takes nothing off what flows back. */
function behindDiode(s: LinkSetting, link: Link, input: number, before: number, drawn: number, slope: number): number {
  if (drawn + slope * (input - before) <= NO_CURRENT) return input;
  const passed = Math.max(drawn, 0);
  if (link.law === undefined) return input - dropOf(s, link);
  const ohms = slopeOhms(s, link, passed);
  return stepped(input - junctionVoltage(diode(s, link), passed) - ohms * (drawn - passed), ohms * slope, before);
}

/** So near to collapse a plain sweep is as good as at rest. */
const NEARLY = 1 - 1e-6;

/** Newton's step to a node that would stand at `next` if its load did not answer; `bent` is the way's ohms times its slope. */
function stepped(next: number, bent: number, before: number): number {
  // Beyond collapse, where the slope of what takes a constant power outweighs the ohms, there is nothing to step to.
  return bent > -NEARLY ? (next + bent * before) / (1 + bent) : next;
}

/** An uncertain figure as this build has it, or at the corner's end; 0 where there is none. */
export function taken({ corner: { build } }: LinkSetting, of: Interval | undefined, figure: string, end: End): number {
  if (of === undefined) return 0;
  return build ? within(of, build.share(figure)) : atEnd(of, end);
}

/** Losses of a link: those of the corner, or what takes the rail behind it to where it has to stand. */
function lossesOf({ corner }: LinkSetting, link: Link): End {
  const end = corner.apart?.get(link.id);
  return end === undefined ? corner.losses : end === 'low' ? 'high' : 'low';
}

/** Ohms of a fuse, or of a cable: its copper at the ambient and its plugs. */
const resistanceOf = (s: LinkSetting, link: Link): number =>
  link.kind === 'cable' ? cableOf(s, link).ohms : taken(s, link.ohms, figureOf(link.id, 'ohms'), lossesOf(s, link));

/** A cable's resistance: its copper at 20 °C and at its temperature, and its plugs. */
export function cableOf(s: LinkSetting, link: Link) {
  const losses = lossesOf(s, link);
  const celsius = s.celsiusIn(link.place);
  const cold = taken(s, link.ohms, figureOf(link.id, 'ohms'), losses);
  const contact = taken(s, link.contact, figureOf(link.id, 'contact'), losses);
  return { cold, contact, celsius, ohms: cold * copperFactor(celsius, WIRE_REFERENCE) + contact };
}

/** Volts that a regulator holds. */
export const setPoint = (s: LinkSetting, link: Link): number =>
  taken(s, link.volts, figureOf(link.id, 'volts'), s.corner.apart?.get(link.id) ?? s.corner.outputs);

/** Volts that a diode without a curve drops whatever the current. */
const dropOf = (s: LinkSetting, link: Link): number =>
  taken(s, link.drop, figureOf(link.id, 'drop'), lossesOf(s, link));

/** A figure of a curve at a current in amperes; beyond its points it is extended, but never below nothing. */
function at(points: readonly Point[] | undefined, amps: number): Interval | undefined {
  if (points === undefined || points.length < 2) return points?.[0]?.value;
  const { min, typ, max } = interpolate(points, Math.max(amps, 0)).value;
  return { min: Math.max(min, 0), typ: Math.max(typ, 0), max: Math.max(max, 0) };
}

/** Volts that a regulator needs over its output at an output current in amperes. */
const dropoutAt = (s: LinkSetting, link: Link, amps: number): number =>
  taken(s, at(link.dropout, amps), figureOf(link.id, 'dropout'), lossesOf(s, link));

/** Which way a switching regulator goes: as stated, or as its voltages say. */
const stepOf = (s: LinkSetting, link: Link, from: number): 'down' | 'up' | 'both' =>
  link.step ?? ((s.circuitry.open[from]?.typ ?? 0) >= link.volts!.typ ? 'down' : 'up');

/** Whether a regulator holds its voltage at an output current in amperes, or its output follows its input. */
function regulatesAt(s: LinkSetting, link: Link, from: number, amps: number): boolean {
  const input = s.volts[from]!;
  if (link.kind === 'linear-regulator') return input - dropoutAt(s, link, amps) >= setPoint(s, link);
  switch (stepOf(s, link, from)) {
    case 'down':
      return input - dropoutAt(s, link, amps) >= setPoint(s, link);
    case 'up':
      return input <= setPoint(s, link);
    case 'both':
      return true;
  }
}

/** Volts that a regulator which does not hold its own hands on: all of its input but the dropout. */
const passedOn = (s: LinkSetting, link: Link, input: number, amps: number): number =>
  Math.max(input - (link.dropout ? dropoutAt(s, link, amps) : 0), 0);

/** A regulator's own current, amperes. */
export const ownCurrent = (s: LinkSetting, link: Link): number =>
  taken(s, link.quiescent, figureOf(link.id, 'quiescent'), s.appetite(link));

/** The least share of its input power that a switching regulator hands on, however far its curve is extended. */
const LEAST_EFFICIENCY = 0.05;

/** Share of a switching regulator's input power that it hands on at an output current in amperes. */
function efficiencyAt(s: LinkSetting, link: Link, amps: number): number {
  const appetite = s.appetite(link);
  const end = appetite === 'typ' ? 'typ' : appetite === 'low' ? 'high' : 'low';
  const stated = taken(s, at(link.efficiency, amps), figureOf(link.id, 'efficiency'), end);
  return Math.min(Math.max(stated, LEAST_EFFICIENCY), 1);
}

function diode(s: LinkSetting, link: Link): Junction {
  const { build } = s.corner;
  if (build) return builtJunction(link.law!, build.share(figureOf(link.id, 'law')), s.celsiusIn(link.place));
  const losses = lossesOf(s, link);
  const lean = losses === 'typ' ? 'typ' : losses === 'low' ? 'high' : 'low';
  return junctionAt(spread(link.law!, lean), s.celsiusIn(link.place));
}

/** Amperes between which the slope of a dropout is taken. */
const STEP = 1e-3;

/** Ohms of what lies in the way, for small changes of its current in amperes; a regulator that holds its output has none. */
export function slopeOhms(s: LinkSetting, link: Link, current: number): number {
  switch (link.kind) {
    case 'fuse':
    case 'limiter':
    case 'switch':
    case 'cable':
      return resistanceOf(s, link);
    case 'diode': {
      if (link.law === undefined) return 0;
      const { slope, logSaturation, series } = diode(s, link);
      return series + slope / (current + Math.exp(logSaturation));
    }
    case 'linear-regulator':
    case 'switching-regulator': {
      if ((link.dropout?.length ?? 0) < 2 || regulates(s, link)) return 0;
      return (dropoutAt(s, link, current + STEP) - dropoutAt(s, link, current)) / STEP;
    }
    case 'wire':
      return 0;
    default:
      return link.kind satisfies never;
  }
}

/** Whether a link is a regulator that has the input it needs to hold its output. */
export function regulates(s: LinkSetting, link: Link): boolean {
  if (link.volts === undefined) return false;
  const number = s.circuitry.linkIndex.get(link);
  const from = s.circuitry.nodeIndex.get(link.from)!;
  return regulatesAt(s, link, from, number === undefined ? 0 : s.linkCurrents[number]!);
}

/** Volts that a regulator needs over its output at the current that it gives. */
export const dropoutOf = (s: LinkSetting, link: Link): number =>
  dropoutAt(s, link, s.linkCurrents[s.circuitry.linkIndex.get(link)!]!);
