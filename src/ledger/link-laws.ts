/**
 * The laws of the links of the supply tree: what each kind takes from the node before it, and what it hands down to the one
 * behind. A sweep asks for both with the slope of what hangs behind, so that its step is Newton's.
 */
import { junctionVoltage } from '../circuit/junction.js';
import { switcherInput } from '../circuit/switcher.js';
import type { FittedLink } from './fitted-links.js';
import { valueAt } from './fitted-links.js';

/** Where the tree stands. */
export interface TreeState {
  /** Volts by node number. */
  readonly volts: readonly number[];
  /** Amperes out of each link as the last sweep left them. */
  readonly linkCurrents: readonly number[];
}

/** Amperes that are rounding. */
const NO_CURRENT = 1e-12;

/** Amperes that a link takes from the node before it. @param out amperes drawn from the node behind it */
export function takenBy(s: TreeState, link: FittedLink, out: number): number {
  switch (link.kind) {
    case 'linear-regulator':
      return out + link.own;
    case 'switching-regulator':
      return switcherInput(s.volts[link.to]!, out, efficiencyAt(link, out), inputOf(s, link), link.own);
    case 'wire':
    case 'cable':
    case 'fuse':
    case 'limiter':
    case 'switch':
    case 'diode':
      return out;
    default:
      return link.kind satisfies never;
  }
}

/**
 * How that rises with the voltage of the node before it, siemens.
 *
 * @param amps what it takes @param out amperes drawn from the node behind it @param slope how they rise with that node's voltage
 */
export function slopeBefore(s: TreeState, link: FittedLink, amps: number, out: number, slope: number): number {
  switch (link.kind) {
    case 'linear-regulator':
      return regulatesAt(s, link, out) ? 0 : behind(slope, slopeOhms(s, link, out));
    case 'switching-regulator': {
      // Where its output follows its input, what it takes rises with that.
      if (!regulatesAt(s, link, out)) return behind(slope, slopeOhms(s, link, out));
      // It takes the same power from less voltage.
      // Newton's step is safe well above the least input; near it plain sweeps creep up to the same rest.
      const input = inputOf(s, link);
      return input > 1.3 * link.least ? -(amps - link.own) / input : 0;
    }
    case 'wire':
    case 'cable':
    case 'fuse':
    case 'limiter':
    case 'switch':
    case 'diode':
      return behind(slope, slopeOhms(s, link, Math.max(out, 0)));
    default:
      return link.kind satisfies never;
  }
}

/** The slope of what hangs behind some ohms, seen from before them. */
const behind = (slope: number, ohms: number): number => slope / (1 + ohms * slope);

/** Volts that a switching regulator works from: what asks for more than its source can give makes it collapse. */
const inputOf = (s: TreeState, { from, least }: FittedLink): number => Math.max(s.volts[from]!, least);

/** Volts that a link hands down, with the load's slope taken into account. @param drawn amperes @param slope siemens */
export function outputOf(s: TreeState, link: FittedLink, drawn: number, slope: number): number {
  const input = s.volts[link.from]!;
  const before = s.volts[link.to]!;
  switch (link.kind) {
    case 'wire':
      return input;
    case 'cable':
    case 'fuse':
    case 'limiter':
    case 'switch':
      return stepped(input - link.ohms * drawn, link.ohms * slope, before);
    case 'diode':
      return behindDiode(s, link, input, before, drawn, slope);
    case 'linear-regulator':
    case 'switching-regulator':
      // On a source that collapses a switching one still asks for what its loads take: the books show by how much too much.
      if (!link.fed) return 0;
      if (regulatesAt(s, link, drawn)) return link.holds;
      return stepped(Math.max(input - valueAt(link.dropout, drawn), 0), slopeOhms(s, link, drawn) * slope, before);
    default:
      return link.kind satisfies never;
  }
}

/** Voltage behind a diode from which a current is drawn that rises with it; it takes nothing off what flows back. */
function behindDiode(
  s: TreeState,
  link: FittedLink,
  input: number,
  before: number,
  drawn: number,
  slope: number,
): number {
  if (drawn + slope * (input - before) <= NO_CURRENT) return input;
  const passed = Math.max(drawn, 0);
  if (link.junction === undefined) return input - link.drop;
  const ohms = slopeOhms(s, link, passed);
  return stepped(input - junctionVoltage(link.junction, passed) - ohms * (drawn - passed), ohms * slope, before);
}

/** So near to collapse a plain sweep is as good as at rest. */
const NEARLY = 1 - 1e-6;

/** Newton's step to a node that would stand at `next` if its load did not answer; `bent` is the way's ohms times its slope. */
function stepped(next: number, bent: number, before: number): number {
  // Beyond collapse, where the slope of what takes a constant power outweighs the ohms, there is nothing to step to.
  return bent > -NEARLY ? (next + bent * before) / (1 + bent) : next;
}

/** The least share of its input power that a switching regulator hands on, however far its curve is extended. */
const LEAST_EFFICIENCY = 0.05;

/** Share of a switching regulator's input power that it hands on at an output current in amperes. */
const efficiencyAt = ({ efficiency }: FittedLink, amps: number): number =>
  Math.min(Math.max(valueAt(efficiency, amps), LEAST_EFFICIENCY), 1);

/** Whether a regulator holds its voltage at an output current in amperes, or its output follows its input. */
function regulatesAt(s: TreeState, link: FittedLink, amps: number): boolean {
  const input = s.volts[link.from]!;
  if (link.kind === 'linear-regulator') return input - valueAt(link.dropout, amps) >= link.holds;
  switch (link.step) {
    case 'down':
      return input - valueAt(link.dropout, amps) >= link.holds;
    case 'up':
      return input <= link.holds;
    case 'both':
      return true;
    default:
      return link.step satisfies never;
  }
}

/** Whether a link is a regulator that has the input it needs to hold its output. */
export const regulates = (s: TreeState, link: FittedLink): boolean =>
  isRegulator(link) && regulatesAt(s, link, s.linkCurrents[link.number]!);

const isRegulator = ({ kind }: FittedLink): boolean => kind === 'linear-regulator' || kind === 'switching-regulator';

/** Amperes between which the slope of a dropout is taken. */
const STEP = 1e-3;

/** Ohms of what lies in the way, for small changes of its current in amperes; a regulator that holds its output has none. */
export function slopeOhms(s: TreeState, link: FittedLink, current: number): number {
  switch (link.kind) {
    case 'fuse':
    case 'limiter':
    case 'switch':
    case 'cable':
      return link.ohms;
    case 'diode':
      return link.junction === undefined ? 0 : link.junction.series + link.junction.slope / (current + link.saturation);
    case 'linear-regulator':
    case 'switching-regulator':
      if (typeof link.dropout === 'number' || regulates(s, link)) return 0;
      return (link.dropout(current + STEP) - link.dropout(current)) / STEP;
    case 'wire':
      return 0;
    default:
      return link.kind satisfies never;
  }
}
