/**
 * A project with some of its supplies dead and cut off: what still lives and finds a way into a rail of theirs (through the
 * clamps of pins and inputs, a pull-up, a load) lifts it to where it draws as much as flows in (rule 18 of the format).
 *
 * Such a rail is fed by nothing but next to nothing: a source of 0 V behind a megohm. Fuses, cables and wires conduct
 * backwards, so that what they join floats as one; diodes and regulators do not, and a switching regulator does not start on
 * what leaks in.
 */
import type { BranchPlan, NetworkPlan } from '../loads/branch-plan.js';
import { GROUND } from '../loads/branch-plan.js';
import type { Interval } from '../quantity/interval.js';
import { exactly } from '../quantity/interval.js';
import type { Appetite } from './faint.js';
import { inProportion, leastFrom, nothing } from './faint.js';
import type { Project } from './project.js';
import type { Link, TreeNode } from './tree-plan.js';
import { deadNetworks, deadNodes, railsOf, supplyOf, unfed } from './without.js';

/** Ohms by which a rail that nobody feeds leaks to ground, and by which one is held there. */
const LEAK = exactly(1e6);
const HELD = exactly(1e-3);

export interface Afloat {
  readonly project: Project;
  /** The same with nothing drawn that need not be drawn: how far those rails may rise. */
  readonly lightest: Project;
  /** The same but for what works from the lowest voltage, which takes its least from there on: whether it may live. */
  readonly first?: { readonly works: number; readonly nodes: ReadonlySet<string>; readonly project: Project };
  /** The same with those rails held at 0 V: the most that may be pushed into them. */
  readonly held: Project;
  /** The nodes that float. */
  readonly floating: ReadonlySet<string>;
  /** Of those that float as one, the one furthest up. */
  readonly tops: ReadonlySet<string>;
  /** The circuits by which something that lives finds a way to them. */
  readonly ways: ReadonlySet<string>;
  /** Switching regulators on them: they are taken as off, and may start where enough comes up. */
  readonly starters: readonly Link[];
}

/** Undefined where nothing that lives finds a way to anything dead. */
export function afloat(project: Project, dead: readonly string[]): Afloat | undefined {
  const nodes = deadNodes(project, dead);
  const { ways, networks, reached } = waysInto(project, nodes);
  if (reached.size === 0) return undefined;
  const tops = new Set([...reached].map((node) => topOf(project, node, dead)));
  const floating = new Set(tops);
  const links = project.links.filter(({ from, to, kind }) => {
    const floats = floating.has(from) && !tops.has(to) && kind !== 'switching-regulator';
    if (floats) floating.add(to);
    return floats || !nodes.has(from);
  });
  const stands = (node: string): string => (floating.has(node) ? node : GROUND);
  const fed = (takes: Appetite): readonly NetworkPlan[] =>
    [
      ...deadNetworks(project, nodes, project.ends, stands, takes),
      ...links.flatMap((link) => (floating.has(link.from) ? quiescentOf(link, takes) : [])),
    ].filter((n) => [...n.on, ...n.off].some((b) => floating.has(b.from) || floating.has(b.to)));
  // Whether what switches a load conducts at so little is anybody's guess: at the least nothing of it is on.
  const switched = new Set(project.circuits.flatMap((c) => (c.always ? [] : [c.id])));
  const letGo = (n: NetworkPlan): NetworkPlan =>
    networks.has(n.id) || n.circuits.length === 0 || !n.circuits.every((c) => switched.has(c))
      ? n
      : { ...n, on: n.off };
  const leaking = (ohms: Interval, plans: readonly NetworkPlan[]): Project => ({
    ...project,
    nodes: [...project.nodes.map((n) => (dead.includes(supplyOf(n.id)) ? unfed(n) : n)), ...[...tops].map(sourceOf)],
    links: [
      ...[...tops].map((top) => leakOf(top, ohms)),
      ...links.map(({ quiescent, ...link }): Link =>
        quiescent && !floating.has(link.from) ? { ...link, quiescent } : link,
      ),
    ],
    networks: plans,
    accounts: [],
    pinAccounts: [],
    windows: project.windows.filter((w) => floating.has(w.node)),
    dips: [],
    capacitances: [],
    measured: [],
  });
  const usual = fed(inProportion);
  const windows = project.windows.filter(({ node, min }) => floating.has(node) && min !== undefined && min > 0);
  const works = Math.min(...windows.map((w) => w.min!));
  const starters = project.links.filter((l) => l.kind === 'switching-regulator' && floating.has(l.from));
  return {
    ...{ starters, floating, tops, ways, project: leaking(LEAK, usual), held: leaking(HELD, usual) },
    lightest: leaking(LEAK, fed(nothing).map(letGo)),
    ...(works < Infinity && {
      first: {
        works,
        nodes: new Set(windows.flatMap((w) => (w.min === works ? [w.node] : []))),
        project: leaking(LEAK, fed(leastFrom(works)).map(letGo)),
      },
    }),
  };
}

/** What a regulator takes for itself: of a rail that only leaks feed the less the lower that stands. */
function quiescentOf({ id, from, quiescent }: Link, takes: Appetite): readonly NetworkPlan[] {
  if (quiescent === undefined) return [];
  const part = `${id}.quiescent`;
  const members = [takes({ kind: 'current', part, amps: quiescent }, undefined)];
  const branch: BranchPlan = { from, to: GROUND, circuit: part, members };
  return [{ id: part, circuits: [], side: 'load', inner: [], on: [branch], off: [branch] }];
}

const nameOf = (top: string): string => `${top}:afloat`;

const sourceOf = (top: string): TreeNode => ({
  id: nameOf(top),
  kind: 'joint',
  title: `what leaks from ${top}`,
  path: [],
  limits: [],
  volts: exactly(0),
});

const leakOf = (top: string, ohms: Interval): Link => ({
  ...{ id: `${nameOf(top)}.leak`, kind: 'fuse', inner: true, title: `what leaks from ${top}`, path: [] },
  ...{ from: nameOf(top), to: top, ohms, limits: [] },
});

/** The node that a rail floats with, furthest up: over what conducts backwards, and short of a dead source itself. */
function topOf(project: Project, node: string, dead: readonly string[]): string {
  const [feed, ...others] = project.links.filter((l) => l.to === node);
  if (feed === undefined || others.length > 0 || !BACKWARDS.has(feed.kind)) return node;
  const isSource = feed.from !== supplyOf(feed.from) && dead.includes(supplyOf(feed.from));
  return isSource ? node : topOf(project, feed.from, dead);
}

const BACKWARDS: ReadonlySet<Link['kind']> = new Set(['wire', 'cable', 'fuse', 'limiter', 'switch']);

/** The dead nodes that something alive is wired to, and the networks and circuits by which it is. */
function waysInto(project: Project, nodes: ReadonlySet<string>) {
  const rails = railsOf(project);
  const readBy = new Map<string, string[]>();
  for (const { node, rail } of project.ends) readBy.set(node, [...(readBy.get(node) ?? []), rail]);
  const alive = new Set(
    project.nodes.flatMap((n) => (nodes.has(n.id) || (n.outside && n.life === undefined) ? [] : [n.id])),
  );
  const [ways, networks] = [new Set<string>(), new Set<string>()];
  const reached = new Set<string>();
  const railOf = ({ pin }: BranchPlan): string[] => (pin === undefined ? [] : [rails.get(pin.pin) ?? '']);
  for (const network of project.networks) {
    const ends = [...network.on, ...network.off].flatMap((b) => [b.from, b.to, ...railOf(b)]);
    if (!ends.some((end) => alive.has(end))) continue;
    const read = network.inner.flatMap((node) => readBy.get(node) ?? []);
    const led = (network.whenDead ?? []).map((way) => way.to);
    const into = [...ends, ...read, ...led].filter((end) => nodes.has(end));
    for (const end of into) reached.add(end);
    if (into.length === 0) continue;
    networks.add(network.id);
    for (const c of network.circuits) ways.add(c);
  }
  return { ways, networks, reached };
}
