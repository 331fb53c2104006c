/**
 * Rails of a dead supply that is cut off: each rises to where it draws as much as flows in, and may keep half alive what hangs
 * on it.
 */
import type { Step } from '../loads/account-plan.js';
import type { Afloat } from '../project/afloat.js';
import type { Project } from '../project/project.js';
import type { Interval } from '../quantity/interval.js';
import type { Dead } from './dead-corners.js';
import { candidatesOf } from './dead-corners.js';
import type { FeedIn } from './feeds-into-dead.js';
import type { HeldFlows } from './fed-dead.js';
import { behind, feedsInto, stepOf, sumOf } from './feeds-into-dead.js';
import type { Solution } from './solution.js';
import type { Candidate } from './solver.js';
import { solver } from './solver.js';

/**
 * Volts that a rail has to be below for what hangs on it to be surely off, and to start from its reset when the supply comes
 * back. Source: Atmel, ATmega48P/88P/168P/328P, 8025I, Table 26-3: the power-on reset works only after the supply has been below
 * 0.6 / 1.3 / 1.6 V. Other chips state no such figure: common practice, no source.
 */
export const SURELY_OFF = 0.6;

/** A dead rail that is lifted. */
export interface LiftedRail extends Dead {
  readonly rail: string;
  /** Volts, where what hangs on it takes of it in proportion to what it takes at 5 V. */
  readonly usual: Interval;
  /** Volts that it comes up to at the most: nothing takes more than it has to. */
  readonly most: number;
  /** What lives from the rail, or from one behind it: where that likely stands at the most, and from where on it works, where stated. */
  readonly on: readonly { readonly about: string; readonly volts: number; readonly works?: number }[];
  /** What lifts it: pins and inputs through which it is fed, or circuits. */
  readonly through: readonly string[];
  /** Amperes that come in at the most, where the rail is held at 0 V. */
  readonly amps: number;
  readonly steps: readonly Step[];
}

/** Amperes in all that are worth no more than a note, and lift nothing to speak of (rule 18 of the format). */
const LITTLE = 1e-4;

/** Whether something that hangs on it is likely to be neither off nor at work. */
export const isLifted = ({ usual, on }: LiftedRail): boolean => usual.max > SURELY_OFF && on.length > 0;

/** Whether that may be so, since nobody states how little it takes far below its voltage. */
export const mayBeLifted = (rail: LiftedRail): boolean =>
  isLifted(rail) || (rail.most > SURELY_OFF && rail.amps > LITTLE && rail.on.length > 0);

/** @param held what is pushed into each of them where it is held at 0 V */
export function liftedRails(found: Afloat, on: Uint8Array, held: HeldFlows, of: Dead): LiftedRail[] {
  const bench = solver(found.project);
  const [lifted, least] = (['lifted', 'sunk'] as const).map((lean) =>
    candidatesOf(bench, found, on, lean).map((c) => bench.solve(c)),
  ) as [Solution[], Solution[]];
  const [{ moment, focus }] = candidatesOf(bench, found, on, 'lifted') as [Candidate];
  const typical = bench.solve({ moment, corner: bench.typical(undefined), focus });
  const lifting = (project: Project): Solution[] => {
    const light = solver(project);
    return candidatesOf(light, found, on, 'lifted').map((c) => light.solve(c));
  };
  const lightest = lifting(found.lightest);
  const first = found.first && { ...found.first, solutions: lifting(found.first.project) };
  return [...found.tops].flatMap((top): LiftedRail[] => {
    const volts = (s: Solution): number => s.voltage(top);
    const highest = (among: readonly Solution[]): Solution => among.reduce((a, b) => (volts(b) > volts(a) ? b : a));
    const worst = highest(lifted);
    const nodes = behind(found.project, top);
    const feeds = held.get(top) ?? [];
    if (feeds.length === 0) return [];
    const [min, max] = [Math.min(...least.map(volts), volts(worst)), volts(worst)];
    const free = highest([...lightest, worst]);
    // What would have to live on it takes the rail back to where it just does not.
    const starved = first?.nodes.has(top) === true && volts(highest(first.solutions)) < first.works;
    const most = starved ? Math.min(Math.max(first.works, max), volts(free)) : volts(free);
    return [
      {
        ...{
          ...of,
          rail: railAt(found.project, top),
          on: [...standing(worst, nodes), ...starting(found, nodes, most)],
          most,
          amps: sumOf(feeds),
        },
        usual: { min, typ: Math.min(Math.max(volts(typical), min), max), max },
        through: feeds.map((f) => f.name),
        steps: [
          ...usualSteps(max, feedsInto(worst, found, nodes)),
          ...(most > max ? mostSteps(most, starved ? [] : feedsInto(free, found, nodes)) : []),
        ],
      },
    ];
  });
}

/** A node as a file names it: what a board has inside goes by the rail that it feeds. */
function railAt({ links }: Project, top: string): string {
  if (!top.includes(':')) return top;
  return links.find((l) => l.from === top && l.kind === 'wire' && !l.to.includes(':'))?.to ?? top;
}

/** What lives from some nodes that float. */
function standing(s: Solution, nodes: ReadonlySet<string>): LiftedRail['on'] {
  const { windows, ends, nodes: tree } = s.circuitry.project;
  const isNode = new Set(tree.map((n) => n.id));
  const stated = windows.flatMap(({ node, about, min }) =>
    nodes.has(node) && !isNode.has(about)
      ? [{ about, volts: s.voltage(node), ...(min !== undefined && min > 0 && { works: min }) }]
      : [],
  );
  const known = new Set(stated.map((w) => w.about));
  const readers = ends.filter((e) => nodes.has(e.rail) && !known.has(e.owner));
  const others = new Map(readers.map((e) => [e.owner, { about: e.owner, volts: s.voltage(e.rail) }]));
  return [...stated, ...others.values()];
}

/** Switching regulators there that may start on so many volts, and feed what is behind them for a moment. */
const starting = ({ starters }: Afloat, nodes: ReadonlySet<string>, volts: number): LiftedRail['on'] =>
  starters.flatMap(({ id, from, leastInput }) => {
    const least = typeof leastInput?.value === 'number' ? leastInput.value : 0;
    return nodes.has(from) && volts >= least ? [{ about: id, volts }] : [];
  });

function usualSteps(volts: number, feeds: readonly FeedIn[]): Step[] {
  if (feeds.length === 0) return [];
  const amps = sumOf(feeds);
  return [
    stepOf(feeds),
    {
      name: 'V_rail',
      says: 'where what hangs on the rail draws as much: what has a draw of its own takes of it what it takes at 5 V, in proportion',
      formula: 'I * R_on_rail',
      with: { I: [amps, 'A'], R_on_rail: [volts / amps, 'Ω'] },
      gives: [volts, 'V'],
    },
  ];
}

/** @param feeds what comes in where nothing but a leak holds the rail down; none where it is what would work that holds it */
function mostSteps(volts: number, feeds: readonly FeedIn[]): Step[] {
  const amps = sumOf(feeds);
  const name = 'V_most';
  if (amps === 0)
    return [
      {
        ...{ name, says: 'where it comes up to at the most: from there on what hangs on it takes more than comes in' },
        ...{ formula: 'V_works', with: { V_works: [volts, 'V'] }, gives: [volts, 'V'] },
      },
    ];
  return [
    {
      ...{ name, says: 'where it comes up to at the most: what has a draw of its own takes nothing before it works' },
      formula: 'I_leak * R_leak',
      with: { I_leak: [amps, 'A'], R_leak: [volts / amps, 'Ω'] },
      gives: [volts, 'V'],
    },
  ];
}
