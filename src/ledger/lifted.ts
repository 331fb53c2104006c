/**
 * What still lives and finds a way into what is dead. A dead supply that is cut off floats: its rail rises to where it draws
 * as much as flows in, and may keep half alive what hangs on it. One that holds its rail at 0 V takes the most that comes
 * through, and the pin that gives it has to bear that. The worse counts, so both are asked (rule 18 of the format).
 */
import type { LineEnd } from '../loads/lines/line.js';
import type { Step } from '../loads/plan.js';
import type { Afloat } from '../project/afloat.js';
import { afloat } from '../project/afloat.js';
import type { Project } from '../project/project.js';
import { clampOf } from '../project/without.js';
import type { Interval } from '../quantity/interval.js';
import type { Account } from './account.js';
import type { Corner } from './corner.js';
import { likenessOf } from './likeness.js';
import { RUNAWAY, together } from './moments.js';
import { pinQuestions } from './pin-questions.js';
import type { Question } from './question.js';
import { settleAccount } from './settle.js';
import type { Solution } from './solution.js';
import type { Candidate, Solver } from './solver.js';
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

/** What a live pin gives into what is dead, or an input of that has to lead away: an account with its limits. */
export interface PushedPin {
  readonly dead: readonly string[];
  readonly stated: boolean;
  /** Who takes it, as sentences say it. */
  readonly into: readonly string[];
  readonly account: Account;
  /** That current comes through at all is assumed: nobody publishes the input's clamp. */
  readonly assumed: boolean;
}

export interface WaysIntoDead {
  readonly lifted: readonly LiftedRail[];
  readonly pushed: readonly PushedPin[];
}

/** Amperes below which what comes through is the leakage of junctions. */
const LITTLE = 1e-6;

/** Some supplies dead, and what the file says of that. */
export interface Dead {
  readonly dead: readonly string[];
  /** A mode says so: pins whose way through is known have accounts of their own then. */
  readonly stated: boolean;
}

/** What finds a way into the rails of some dead supplies. */
export function waysIntoDead(project: Project, of: Dead): WaysIntoDead {
  const found = afloat(project, of.dead);
  if (found === undefined) return { lifted: [], pushed: [] };
  const on = pushing(project, found);
  return { lifted: liftedRails(found, on, of), pushed: pushedPins(project, found, on, of) };
}

/** The state in which each circuit that has a way lets the most through. */
function pushing(project: Project, { held, ways, floating }: Afloat): Uint8Array {
  const bench = solver(held);
  const { circuitIndex, networksOf } = bench.circuitry;
  const on = Uint8Array.from(bench.resting);
  const moment = { mode: RUNAWAY, on: bench.resting };
  const s = bench.solve({ moment, corner: bench.typical(undefined), focus: bench.nobody });
  const taken = (circuit: number, state: boolean): number =>
    networksOf[circuit]!.flatMap((n) => s.drawOf(n, state)).reduce(
      (sum, { node, amps }) => sum + (floating.has(node) ? amps : 0),
      0,
    );
  const sets = together(project);
  for (const id of ways) {
    const c = circuitIndex.get(id)!;
    if (!project.circuits[c]!.always && taken(c, true) < taken(c, false) - LITTLE) for (const k of sets[c]!) on[k] = 1;
  }
  return on;
}

/** Corners in which the most comes through, or the least. */
const leaning = (lean: 'lifted' | 'sunk', { nodes }: Project): readonly Corner[] => {
  const [sources, losses, rest] =
    lean === 'lifted' ? (['high', 'low', 'low'] as const) : (['low', 'high', 'high'] as const);
  // Somebody else's voltage stands as our own do.
  const apart = new Map(nodes.flatMap((n) => (n.outside ? [[n.id, sources] as const] : [])));
  return (['cold', 'hot'] as const).map((ambient) => ({
    ...{ ambient, sources, outputs: sources, losses, load: lean, control: lean, rest },
    ...(apart.size > 0 && { apart }),
  }));
};

/** The ways in question, and what hangs on the dead rails as the rest. */
function candidatesOf(bench: Solver, { ways }: Afloat, on: Uint8Array, lean: 'lifted' | 'sunk'): Candidate[] {
  const { project, networks } = bench.circuitry;
  const focus = bench.wholeBut(networks.flatMap(({ plan }, n) => (plan.circuits.some((c) => ways.has(c)) ? [] : [n])));
  return leaning(lean, project).map((corner) => ({ moment: { mode: RUNAWAY, on }, corner, focus }));
}

function liftedRails(found: Afloat, on: Uint8Array, of: Dead): LiftedRail[] {
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

/** The currents into what is dead, held at 0 V, that have limits. */
function pushedPins(project: Project, found: Afloat, on: Uint8Array, of: Dead): PushedPin[] {
  const { held, ways, floating } = found;
  const ends = project.ends.filter((end) => floating.has(end.rail) && ways.has(end.about));
  const assumed = new Set(ends.flatMap((end) => (end.assumed && end.source !== undefined ? [end.source] : [])));
  const used = new Set(
    held.networks.flatMap((n) =>
      n.circuits.some((c) => ways.has(c)) ? [...n.on, ...n.off].flatMap((b) => b.pin?.pin ?? []) : [],
    ),
  );
  const isAsked = ({ kind, direction, limits, pins, heat }: Project['pinAccounts'][number]): boolean =>
    kind !== 'array' && !heat && direction === 'source' && limits.length > 0 && pins.some((pin) => used.has(pin));
  const isAssumed = (pins: readonly string[]): boolean => pins.some((pin) => assumed.has(pin));
  const bench = solver({
    ...held,
    // Where a mode says so and the way is known, the pin's own account tells.
    pinAccounts: project.pinAccounts
      .filter((a) => isAsked(a) && (!of.stated || isAssumed(a.pins)))
      // What the chip draws itself is little beside that, and hangs on none of these networks.
      .map((a) => ({ ...a, own: [] })),
  });
  const mode = { name: RUNAWAY, on };
  const settled = (q: Question): readonly Account[] =>
    [settleAccount(bench, q, [mode], false)].filter((a) => a !== undefined);
  const pinsOf = (id: string): readonly string[] => project.pinAccounts.find((a) => a.id === id)?.pins ?? [id];
  const takersOf = (pin: string): string[] => {
    const lines = ends.filter((end) => end.source === pin).map((end) => end.told);
    return lines.length > 0 ? lines : project.uses.filter((u) => u.pin === pin).map((u) => u.by);
  };
  const pins = pinQuestions(bench, likenessOf(bench.circuitry, [mode])).flatMap((q) =>
    settled(q).map((account) => {
      const summed = pinsOf(q.id).filter((pin) => used.has(pin));
      return { ...of, account, into: [...new Set(summed.flatMap(takersOf))], assumed: isAssumed(summed) };
    }),
  );
  const inputs = ends.flatMap((end) =>
    end.injected.length === 0
      ? []
      : settled(inputQuestion(bench, end, (lean) => candidatesOf(bench, found, on, lean))).map((account) => ({
          ...{ ...of, account, into: [end.told], assumed: false },
        })),
  );
  return [...pins, ...inputs];
}

/** What an input of something dead has to lead away. */
function inputQuestion(
  { circuitry }: Solver,
  end: LineEnd,
  leaning: (lean: 'lifted' | 'sunk') => readonly Candidate[],
): Question {
  const part = circuitry.parts.has(clampOf(end)) ? clampOf(end) : `${end.about}.clamp`;
  const probes = () => leaning('lifted');
  return {
    ...{ id: end.about, kind: 'pin', title: `${end.told}, pushed in`, quantity: 'current', direction: 'injected' },
    ...{ path: end.path, limits: end.injected, steps: () => [], probes },
    read: (s) => Math.max(s.current(part), 0),
    candidates: () => [...leaning('lifted'), ...leaning('sunk')],
  };
}
