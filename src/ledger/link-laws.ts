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
import { figureOf, within } from './builds.js';
import type { Circuitry, LinkIndex } from './circuitry.js';
import type { Corner, End } from './corner.js';
import { atEnd } from './corner.js';
import { builtJunction } from './fitting.js';
import { spread } from './leaning.js';

/** What the laws see of the solution that a link stands in. */
export interface LinkSetting {
  readonly circuitry: Pick<Circuitry, 'open' | 'nodeIndex'>;
  readonly corner: Corner;
  /** Volts by node number. */
  readonly volts: readonly number[];
  /** What regulators take for themselves: to circuits in question they are the rest, in a question of the tree they are in it. */
  readonly appetite: End;
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
      return { amps: out + ownCurrent(s, link), slope: regulates(s, link) ? 0 : slope };
    case 'switching-regulator': {
      // A source with resistance gives the most at half its voltage; what asks for more makes it collapse.
      const least = (s.circuitry.open[from]?.min ?? 0.2) / 2;
      const input = Math.max(s.volts[from]!, least);
      const amps = switcherInput(s.volts[to]!, out, efficiency(s, link), input, ownCurrent(s, link));
      // It takes the same power from less voltage.
      // Newton's step is safe well above that point; near it plain sweeps creep up to the same rest.
      return { amps, slope: input > 1.3 * least ? -(amps - ownCurrent(s, link)) / input : 0 };
    }
    case 'wire':
    case 'cable':
    case 'fuse':
    case 'diode':
      return { amps: out, slope: slope / (1 + slopeOhms(s, link, Math.max(out, 0)) * slope) };
    default:
      return link.kind satisfies never;
  }
}

/** Volts that a link hands down, with the load's slope taken into account. @param drawn amperes @param slope siemens */
export function outputOf(s: LinkSetting, { link, from, to }: LinkIndex, drawn: number, slope: number): number {
  const input = s.volts[from]!;
  switch (link.kind) {
    case 'wire':
      return input;
    case 'cable':
    case 'fuse': {
      const ohms = resistanceOf(s, link);
      return stepped(input - ohms * drawn, ohms * slope, s.volts[to]!);
    }
    case 'diode':
      return behindDiode(s, link, input, s.volts[to]!, drawn, slope);
    case 'linear-regulator':
      return Math.min(setPoint(s, link), Math.max(input - dropoutOf(s, link), 0));
    case 'switching-regulator':
      // On a source that collapses it still asks for what its loads take: the books show by how much too much.
      return s.circuitry.open[from] ? setPoint(s, link) : 0;
    default:
      return link.kind satisfies never;
  }
}

/** Voltage behind a diode from which a current is drawn that rises with it; it takes nothing off what flows back. */
function behindDiode(s: LinkSetting, link: Link, input: number, before: number, drawn: number, slope: number): number {
  if (drawn + slope * (input - before) <= NO_CURRENT) return input;
  const passed = Math.max(drawn, 0);
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
const setPoint = (s: LinkSetting, link: Link): number =>
  taken(s, link.volts, figureOf(link.id, 'volts'), s.corner.apart?.get(link.id) ?? s.corner.outputs);

/** Volts that a linear regulator needs over its output. */
export const dropoutOf = (s: LinkSetting, link: Link): number =>
  taken(s, link.dropout, figureOf(link.id, 'dropout'), lossesOf(s, link));

/** A regulator's own current, amperes. */
export const ownCurrent = (s: LinkSetting, link: Link): number =>
  taken(s, link.quiescent, figureOf(link.id, 'quiescent'), s.appetite);

/** Share of a switching regulator's input power that it hands on. */
function efficiency(s: LinkSetting, link: Link): number {
  const end = s.appetite === 'typ' ? 'typ' : s.appetite === 'low' ? 'high' : 'low';
  return taken(s, link.efficiency, figureOf(link.id, 'efficiency'), end);
}

function diode(s: LinkSetting, link: Link): Junction {
  const { build } = s.corner;
  if (build) return builtJunction(link.law!, build.share(figureOf(link.id, 'law')), s.celsiusIn(link.place));
  const losses = lossesOf(s, link);
  const lean = losses === 'typ' ? 'typ' : losses === 'low' ? 'high' : 'low';
  return junctionAt(spread(link.law!, lean), s.celsiusIn(link.place));
}

/** Ohms of what lies in the way, for small changes of its current in amperes; a regulator has none. */
export function slopeOhms(s: LinkSetting, link: Link, current: number): number {
  switch (link.kind) {
    case 'fuse':
    case 'cable':
      return resistanceOf(s, link);
    case 'diode': {
      const { slope, logSaturation, series } = diode(s, link);
      return series + slope / (current + Math.exp(logSaturation));
    }
    case 'wire':
    case 'linear-regulator':
    case 'switching-regulator':
      return 0;
    default:
      return link.kind satisfies never;
  }
}

/** Whether a link is a linear regulator with more input than it needs for its output. */
export function regulates(s: LinkSetting, link: Link): boolean {
  if (link.kind !== 'linear-regulator') return false;
  const input = s.volts[s.circuitry.nodeIndex.get(link.from)!]!;
  return input - dropoutOf(s, link) >= setPoint(s, link);
}
