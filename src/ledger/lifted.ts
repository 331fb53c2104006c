/**
 * Rails of a dead supply that is cut off: each rises to where it draws as much as flows in, and may keep half alive what hangs
 * on it.
 */
import type { Step } from '../loads/account-plan.js';
import type { Afloat } from '../project/afloat.js';
import type { Project } from '../project/project.js';
import { clampOf } from '../project/without.js';
import type { Interval } from '../quantity/interval.js';
import type { Dead } from './dead-corners.js';
import { LITTLE, candidatesOf } from './dead-corners.js';
import type { Solution } from './solution.js';
import type { Candidate } from './solver.js';
import { solver } from './solver.js';

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

/** A node and all that it feeds. */
function behind({ links }: Pick<Project, 'links'>, top: string): ReadonlySet<string> {
  const found = new Set([top]);
  // Upstream first.
  for (const { from, to } of links) if (found.has(from)) found.add(to);
  return found;
}

interface FeedIn {
  readonly name: string;
  readonly amps: number;
}

/** What flows into some nodes from what lives, largest first. */
function feedsInto(s: Solution, { ways }: Afloat, nodes: ReadonlySet<string>): FeedIn[] {
  const { project, networks } = s.circuitry;
  const feeds = new Map<string, number>();
  networks.forEach(({ plan }, n) => {
    if (!plan.circuits.some((c) => ways.has(c))) return;
    const { fitted, currents } = s.network(n);
    fitted.plans.forEach((b, k) => {
      const [from, to] = [nodes.has(b.from), nodes.has(b.to)];
      const amps = from === to ? 0 : to ? currents[k]! : -currents[k]!;
      if (amps <= LITTLE) return;
      const name = told(project, b.members[0]!.part, b.circuit);
      feeds.set(name, (feeds.get(name) ?? 0) + amps);
    });
  });
  return [...feeds].map(([name, amps]) => ({ name, amps })).sort((a, b) => b.amps - a.amps);
}

/** A way into a rail as sentences say it: an input, a pin, else the circuit. */
function told({ ends, pins }: Project, part: string, circuit: string): string {
  const end = ends.find((e) => clampOf(e) === part || part === `${e.about}.clamp`);
  if (end) return end.told;
  const pin = pins.find((p) => p.id === part);
  return pin ? `pin ${pin.label}` : circuit;
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
  const amps = feeds.reduce((sum, f) => sum + f.amps, 0);
  return [
    {
      name: 'I',
      says: `what comes in, by ${feeds.map((f) => f.name).join(', ')}`,
      formula: feeds.map((_, k) => `I_${k + 1}`).join(' + '),
      with: Object.fromEntries(feeds.map((f, k) => [`I_${k + 1}`, [f.amps, 'A'] as const])),
      gives: [amps, 'A'],
    },
    {
      name: 'V_rail',
      says: 'where what hangs on the rail draws as much: what has a draw of its own takes of it what it takes at 5 V, in proportion',
      formula: 'I * R_on_rail',
      with: { I: [amps, 'A'], R_on_rail: [volts / amps, 'Ω'] },
      gives: [volts, 'V'],
    },
  ];
}
