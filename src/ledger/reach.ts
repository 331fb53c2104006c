/**
 * What hangs on a node of the supply tree, and what hangs beside it on the same losses. More load never lowers what a source
 * gives, but what hangs beside a node pulls its rail down: less flows into it then, or more where a switching regulator
 * makes up for it.
 */
import { linearLoss } from '../circuit/regulator.js';
import type { Link } from '../project/tree-plan.js';
import { together } from './moments.js';
import type { Solution } from './solution.js';
import type { Solver } from './solver.js';

export interface Reach {
  /** How much more the account comes to when a circuit is switched on; of those on one pin the first has all of it. */
  readonly adds: () => readonly number[];
  /** Circuits of which that is a difference of two, so that the sign is not sure. */
  readonly torn: () => readonly number[];
  /** Networks that hang beside it and lower it. */
  readonly beside: readonly number[];
}

/** Amperes that are rounding. */
const NOTHING = 1e-12;
/** A circuit is torn when one side of what it does is this share of the other. */
const TORN = 0.02;

/** The tree solved with all circuits on, whose rails are nearly those of any state in which much flows. */
export interface Whole {
  readonly solution: Solution;
  /** What each network draws more from the nodes of the tree when it is on than when it is off, amperes. */
  readonly changes: readonly (readonly { readonly node: string; readonly amps: number }[])[];
}

export const wholeOf = (solution: Solution): Whole => ({
  solution,
  changes: solution.circuitry.networks.map(({ circuits }, n) =>
    circuits.length === 0
      ? []
      : [...solution.drawOf(n, true), ...solution.drawOf(n, false).map(({ node, amps }) => ({ node, amps: -amps }))],
  ),
});

/** @param at the node whose feed the account is about @param heated the regulator whose heat it is instead */
export function reachOf(solver: Solver, whole: () => Whole, at: string, heated?: Link): Reach {
  const { project, networks } = solver.circuitry;
  const sees = heated?.from ?? at;
  const touches = (n: number, nodes: ReadonlySet<string>): boolean =>
    [...networks[n]!.plan.on, ...networks[n]!.plan.off].some((b) => nodes.has(b.from) || nodes.has(b.to));
  const among = (nodes: ReadonlySet<string>): number[] => {
    const through = behind(project.links, at);
    return networks.flatMap((_, n) => (touches(n, nodes) && !touches(n, through) ? [n] : []));
  };
  const losses = once(() => lossesTo(project.links, sees, whole().solution));
  // Only where anything hangs beside it does the tree have to be solved to know what that does.
  const hangsBeside = among(behindOutermost(project.links, lossesTo(project.links, sees))).length > 0;
  const lowers = hangsBeside && (heated !== undefined || slopeInto(whole().solution, at) >= 0);
  const beside = lowers ? among(behindOutermost(project.links, losses())) : [];

  const sets = together(project);
  const parts = once(() => {
    const { solution: s } = whole();
    const more = (to: string): readonly number[] => moreInto(solver, whole(), to);
    // What hangs beside it pulls its rail down; without any, all that hangs on the rail does so alike.
    const droops = (hangsBeside || heated ? losses() : []).map((link) => ({
      ohms: s.ohmsOf(link),
      more: more(link.to),
    }));
    const droop = sets.map((_, c) => droops.reduce((volts, { ohms, more }) => volts + ohms * more[c]!, 0));
    const direct = more(at);
    if (heated === undefined) {
      const slope = hangsBeside ? slopeInto(s, at) : 0;
      return { direct, indirect: droop.map((volts) => -slope * volts) };
    }
    // Watts: what is lost an ampere, and what a volt less at the input saves.
    const passed = s.linkCurrents[solver.circuitry.linkIndex.get(heated)!]!;
    const amps = passed + s.ownCurrent(heated);
    const volts = linearLoss(s.voltage(heated.from), s.voltage(heated.to), 1, 0);
    return { direct: direct.map((more) => volts * more), indirect: droop.map((lost) => -amps * lost) };
  });
  const adds = once(() => {
    const { direct, indirect } = parts();
    // What changes nothing stays on, so that the accounts share their states.
    return direct.map((d, c) =>
      sets[c]![0] !== c ? 0 : Math.abs(d + indirect[c]!) > NOTHING ? d + indirect[c]! : NOTHING,
    );
  });
  const torn = once(() => {
    const { direct, indirect } = parts();
    return direct.flatMap((d, c) =>
      d * indirect[c]! < 0 && Math.abs(indirect[c]!) > TORN * Math.abs(d) && Math.abs(d) > TORN * Math.abs(indirect[c]!)
        ? [c]
        : [],
    );
  });
  return { adds, torn, beside };
}

/** What each circuit, switched on, lowers the voltage of a node by: over the losses on its way, whatever hangs on them. */
export function sagOf(solver: Solver, whole: () => Whole, at: string): Reach {
  const adds = once(() => {
    const { solution: s } = whole();
    const losses = lossesTo(solver.circuitry.project.links, at, s).map((link) => ({
      ohms: s.ohmsOf(link),
      more: moreInto(solver, whole(), link.to),
    }));
    return solver.circuitry.project.circuits.map((_, c) => {
      const volts = losses.reduce((sum, { ohms, more }) => sum + ohms * more[c]!, 0);
      // What changes nothing stays on, so that the accounts share their states.
      return Math.abs(volts) > NOTHING ? volts : NOTHING;
    });
  });
  return { adds, torn: () => [], beside: [] };
}

/** How much more flows into a node when a circuit is switched on and nothing answers, amperes, read off any solution. */
export const addedInto = (solver: Solver, s: Solution, to: string): readonly number[] =>
  moreInto(solver, wholeOf(s), to);

/** How much more flows into a node when a circuit is switched on, amperes; of those on one pin the first has all of it. */
function moreInto({ circuitry: { project, networksOf } }: Solver, { solution, changes }: Whole, to: string): number[] {
  const gain = gainsOf(solution, to);
  const change = changes.map((parts) => parts.reduce((sum, { node, amps }) => sum + amps * (gain.get(node) ?? 0), 0));
  return together(project).map((set, c) =>
    set[0] === c ? [...new Set(set.flatMap((k) => networksOf[k]!))].reduce((sum, n) => sum + change[n]!, 0) : 0,
  );
}

const once = <T>(make: () => T): (() => T) => {
  let made: { readonly value: T } | undefined;
  return () => (made ??= { value: make() }).value;
};

/** A node and all that it feeds. */
export function behind(links: readonly Link[], at: string): ReadonlySet<string> {
  const nodes = new Set([at]);
  for (const link of links) if (nodes.has(link.from)) nodes.add(link.to);
  return nodes;
}

/** The fuses, diodes and regulators out of regulation on the way to a node that its voltage answers to, from it upwards. */
function lossesTo(links: readonly Link[], at: string, s?: Solution): readonly Link[] {
  const feeds = new Map(links.filter((l) => !s?.isHeldOff(l)).map((l) => [l.to, l]));
  const found: Link[] = [];
  for (let link = feeds.get(at); link; link = feeds.get(link.from)) {
    if (link.kind === 'switching-regulator' || s?.regulates(link)) break;
    if (link.kind !== 'wire') found.push(link);
  }
  return found;
}

const behindOutermost = (links: readonly Link[], losses: readonly Link[]): ReadonlySet<string> => {
  const outermost = losses.at(-1);
  return outermost ? behind(links, outermost.to) : new Set();
};

/** How what flows into a node rises with its voltage, siemens: less than nothing where a switching regulator outweighs the rest. */
export function slopeInto(s: Solution, at: string): number {
  const { project, linkIndex, networks } = s.circuitry;
  const moving = new Set([at]);
  let slope = 0;
  for (const link of project.links) {
    if (!moving.has(link.from) || s.isHeldOff(link)) continue;
    if (!s.regulates(link)) moving.add(link.to);
    else if (link.kind === 'switching-regulator') {
      const taken = s.linkInputs[linkIndex.get(link)!]! - s.ownCurrent(link);
      slope -= taken / Math.max(s.voltage(link.from), 0.1);
    }
  }
  networks.forEach((_, n) => (slope += s.slopeAt(n, moving)));
  return slope;
}

/** Amperes into a node that one ampere at it, and at each of those behind it, takes. */
function gainsOf(s: Solution, at: string): ReadonlyMap<string, number> {
  const { project, linkIndex } = s.circuitry;
  const gain = new Map([[at, 1]]);
  for (const link of project.links) {
    const above = gain.get(link.from);
    if (above === undefined) continue;
    const k = linkIndex.get(link);
    const through = k === undefined ? 0 : s.linkCurrents[k]!;
    gain.set(
      link.to,
      above * (k === undefined || through === 0 ? 1 : (s.linkInputs[k]! - s.ownCurrent(link)) / through),
    );
  }
  return gain;
}
