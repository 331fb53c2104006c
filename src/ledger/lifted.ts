/**
 * Rails of a dead supply that is cut off: each rises to where it draws as much as flows in, and may keep half alive what hangs
 * on it.
 */
import type { Step } from '../loads/account-plan.js';
import type { Afloat } from '../project/afloat.js';
import type { Interval } from '../quantity/interval.js';
import type { Dead } from './dead-corners.js';
import { candidatesOf } from './dead-corners.js';
import type { FeedIn } from './feeds-into-dead.js';
import { behind, feedsInto, stepOf } from './feeds-into-dead.js';
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
export interface LiftedRail {
  readonly dead: readonly string[];
  /** A mode says that those are dead. */
  readonly stated: boolean;
  readonly rail: string;
  readonly volts: Interval;
  /** What lives from the rail, or from one behind it: where it stands at the most, and from where on it works, where stated. */
  readonly on: readonly { readonly about: string; readonly volts: number; readonly works?: number }[];
  /** What lifts it: pins and inputs through which it is fed, or circuits. */
  readonly through: readonly string[];
  readonly steps: readonly Step[];
}

/** Whether something that hangs on it may be neither off nor at work. */
export const isLifted = ({ volts, on }: LiftedRail): boolean => volts.max > SURELY_OFF && on.length > 0;

export function liftedRails(found: Afloat, on: Uint8Array, of: Dead): LiftedRail[] {
  const bench = solver(found.project);
  const [most, least] = (['lifted', 'sunk'] as const).map((lean) =>
    candidatesOf(bench, found, on, lean).map((c) => bench.solve(c)),
  ) as [Solution[], Solution[]];
  const [{ moment, focus }] = candidatesOf(bench, found, on, 'lifted') as [Candidate];
  const typical = bench.solve({ moment, corner: bench.typical(undefined), focus });
  return [...found.tops].flatMap((top): LiftedRail[] => {
    const volts = (s: Solution): number => s.voltage(top);
    const worst = most.reduce((a, b) => (volts(b) > volts(a) ? b : a));
    const nodes = behind(found.project, top);
    const feeds = feedsInto(worst, found, nodes);
    if (feeds.length === 0) return [];
    const [min, max] = [Math.min(...least.map(volts), volts(worst)), volts(worst)];
    return [
      {
        ...{ ...of, rail: top, on: standing(worst, nodes), steps: stepsOf(max, feeds) },
        volts: { min, typ: Math.min(Math.max(volts(typical), min), max), max },
        through: feeds.map((f) => f.name),
      },
    ];
  });
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

function stepsOf(volts: number, feeds: readonly FeedIn[]): Step[] {
  const sum = stepOf(feeds);
  const [amps] = sum.gives;
  return [
    sum,
    {
      name: 'V_rail',
      says: 'where what hangs on the rail draws as much: what has a draw of its own takes of it what it takes at 5 V, in proportion',
      formula: 'I * R_on_rail',
      with: { I: [amps, 'A'], R_on_rail: [volts / amps, 'Ω'] },
      gives: [volts, 'V'],
    },
  ];
}
