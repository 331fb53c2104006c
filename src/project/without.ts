/**
 * A project with some of its supplies dead (rule 18 of the format). What they alone feed is taken at 0 V, and as floating
 * (`afloat.ts`); the pins of a chip without supply, and the inputs of what lives no more, are no more than the clamps to its
 * rail.
 */
import { PIN_CLAMP } from '../loads/lines/pin-clamp.js';
import type { LineEnd } from '../loads/lines/line.js';
import { clampOf } from '../loads/lines/line.js';
import type { BranchPlan, Member, NetworkPlan } from '../loads/branch-plan.js';
import type { CircuitPlan } from '../loads/circuit-plan.js';
import { GROUND } from '../loads/branch-plan.js';
import { exactly } from '../quantity/interval.js';
import { nodeOf } from './assemble.js';
import { withDeadWays } from './dead-ways.js';
import type { Appetite } from './faint.js';
import { inProportion } from './faint.js';
import { wired, yielding } from './loose-pins.js';
import type { Project } from './project.js';
import type { Link, TreeNode } from './tree-plan.js';

/** In the place of a clamp where there is none, ohms. */
const UNCLAMPED = exactly(1e9);

/** The supply that a node is the ideal source of: one with a resistance has its source inside. */
export const supplyOf = (node: string): string => node.replace(/:inside$/, '');

/** The nodes of the supply tree that nothing feeds once some supplies are dead. */
export function deadNodes(
  { nodes, links }: Pick<Project, 'nodes' | 'links'>,
  dead: readonly string[],
): ReadonlySet<string> {
  const isSource = (n: Project['nodes'][number]): boolean => n.volts !== undefined && !dead.includes(supplyOf(n.id));
  const alive = new Set(nodes.flatMap((n) => (isSource(n) && n.life === undefined ? [n.id] : [])));
  // Upstream first: whatever feeds a node has been seen before it.
  for (const { from, to } of links) if (alive.has(from)) alive.add(to);
  for (const n of nodes) if (isSource(n) && n.life !== undefined && alive.has(n.life)) alive.add(n.id);
  return new Set(nodes.flatMap((n) => (alive.has(n.id) ? [] : [n.id])));
}

/** The same with what takes over: a board's own switch joins the next source that lives to a rail that would be dead. */
export function takenOver(project: Project, dead: readonly string[]): Project {
  let { links } = project;
  const taken = new Set<string>();
  for (;;) {
    const nodes = deadNodes({ nodes: project.nodes, links }, dead);
    const spare = project.spares.find((s) => !taken.has(s.to) && nodes.has(s.to) && !nodes.has(s.from));
    if (spare === undefined) return taken.size === 0 ? project : { ...project, links };
    taken.add(spare.to);
    links = upstreamFirst([...links.filter((l) => l.to !== spare.to), spare]);
  }
}

function upstreamFirst(links: readonly Link[]): readonly Link[] {
  const depths = new Map<string, number>();
  const depth = (node: string): number => {
    const known = depths.get(node);
    if (known !== undefined) return known;
    const above = links.filter((l) => l.to === node).map((l) => 1 + depth(l.from));
    const found = Math.max(0, ...above);
    depths.set(node, found);
    return found;
  };
  return [...links].sort((a, b) => depth(a.to) - depth(b.to));
}

/** The circuits that a dead node feeds, or that hang on a pin of a chip which a dead node feeds. */
export function touchedBy(project: Project, nodes: ReadonlySet<string>): ReadonlySet<string> {
  const rails = railsOf(project);
  const touches = (b: BranchPlan): boolean =>
    nodes.has(b.from) || nodes.has(b.to) || (b.pin !== undefined && nodes.has(rails.get(b.pin.pin) ?? ''));
  return new Set(project.networks.flatMap((n) => ([...n.on, ...n.off].some(touches) ? n.circuits : [])));
}

/** The node that feeds the load of a circuit. */
export const feedOfLoad = ({ wiring }: CircuitPlan): string | undefined =>
  wiring.board ? (wiring.board.coil ?? wiring.board.logic) : wiring.supply;

export const railsOf = ({ pins }: Project): ReadonlyMap<string, string> => new Map(pins.map((p) => [p.id, p.rail]));

/** A dead source. */
export function unfed(node: TreeNode): TreeNode {
  const { volts: _, ...rest } = node;
  return rest;
}

/** The same project with some supplies dead, at 0 V. @param ends who reads lines, with a clamp that leads to a dead rail */
export function grounded(project: Project, dead: readonly string[], ends: readonly LineEnd[]) {
  const nodes = deadNodes(project, dead);
  return {
    nodes,
    project: {
      ...project,
      nodes: project.nodes.map((n) => (dead.includes(supplyOf(n.id)) ? unfed(n) : n)),
      links: project.links.filter((l) => !nodes.has(l.from)),
      networks: deadNetworks(project, nodes, ends, () => GROUND),
    } satisfies Project,
  };
}

/** The same; of its accounts those that nothing dead has to do with. */
export function withoutSupplies(whole: Project, dead: readonly string[]): Project {
  // Only what is published is held against anybody: a clamp that is assumed is no more than a question.
  const known = whole.ends.filter((end) => end.assumed !== true);
  const { project, nodes } = grounded(whole, dead, known);
  const touched = touchedBy(whole, nodes);
  const owners = new Set(whole.pins.flatMap((p) => (nodes.has(p.rail) ? [p.owner] : [])));
  return {
    ...project,
    accounts: project.accounts.filter(
      (a) =>
        !a.circuits.some((c) => touched.has(c)) &&
        !(a.line && [...a.line.from, a.line.at].some((node) => nodes.has(node))),
    ),
    pinAccounts: project.pinAccounts.filter((a) => !owners.has(a.id.split('.')[0]!)),
    windows: project.windows.filter((w) => !nodes.has(w.node)),
    dips: project.dips.filter((d) => !nodes.has(d.node)),
    capacitances: project.capacitances.filter((c) => !nodes.has(c.node)),
    measured: [],
  };
}

/**
 * The networks while some nodes are dead.
 *
 * @param ends who reads lines, with a clamp @param stands the node in the place of a dead one: ground, or itself where it floats
 * @param takes what a thing takes of one that floats
 */
export function deadNetworks(
  project: Project,
  nodes: ReadonlySet<string>,
  ends: readonly LineEnd[],
  stands: (node: string) => string,
  takes: Appetite = inProportion,
): NetworkPlan[] {
  const rails = railsOf(project);
  const clamped = new Set([...project.boot.pins].flatMap(([id, p]) => (p.clamped ? [id] : [])));
  // What only has a voltage of its own nobody said what keeps alive: it is taken to die with what it is wired to.
  const unknown = new Set(project.nodes.flatMap((n) => (n.outside && n.life === undefined ? [n.id] : [])));
  return project.networks.map((network) => {
    const inner = new Set(network.inner);
    const read = ends.filter((end) => nodes.has(end.rail) && inner.has(end.node));
    const at = (node: string): string => (nodes.has(node) ? stands(node) : node);
    const isDead = (b: BranchPlan): boolean => b.pin !== undefined && nodes.has(rails.get(b.pin.pin) ?? '');
    const assumed = new Set(project.ends.flatMap((end) => (ends.includes(end) ? [] : [clampOf(end)])));
    const ways = (network.whenDead ?? []).filter(
      ({ from, to, members }) =>
        nodes.has(to) && !('node' in from && nodes.has(from.node)) && !members.some((m) => assumed.has(m.part)),
    );
    const state = (live: readonly BranchPlan[], is: 'on' | 'off'): BranchPlan[] => {
      const some = live.some(isDead);
      // Behind a pin whose chip is dead, too, nothing is driven.
      const open = some ? ways.filter(({ from }) => 'node' in from) : ways;
      const plans = withDeadWays(
        live,
        open.filter(({ only }) => only === undefined || only === is),
        inner,
      );
      const mapped = plans.map((b): BranchPlan => {
        if (isDead(b)) return throughDead(b, inner, clamped, at(rails.get(b.pin!.pin)!));
        if (read.length > 0 && unknown.has(b.from)) return { ...b, from: b.to };
        // What takes a current of its own gets none from a pin that is dead, and less from a rail that only leaks feed.
        const members =
          floats(b.from) || floats(b.to)
            ? b.members.map((m) => takes(m, worksFrom(project, b)))
            : some && (inner.has(b.from) || inner.has(b.to))
              ? b.members.map(yielding)
              : b.members;
        return { ...b, from: at(b.from), to: at(b.to), members };
      });
      const alone = plans.flatMap((b) => (isDead(b) && b.carries === undefined ? hungOn(b, inner, at) : []));
      const clamps = read.flatMap((end) =>
        plans.some((b) => b.line === 'clamp' && b.from === end.node && b.to === end.rail)
          ? []
          : [endClamp(end, at(end.rail))],
      );
      return [...mapped, ...alone, ...clamps];
    };
    const floats = (node: string): boolean => nodes.has(node) && stands(node) !== GROUND;
    const [on, off] = [state(network.on, 'on'), state(network.off, 'off')];
    return { ...network, on, off, inner: [...inner] };
  });
}

/** Volts from which what a branch feeds works, where that is stated. */
function worksFrom({ windows }: Project, { from, to, circuit }: BranchPlan): number | undefined {
  const mine = windows.filter(
    ({ node, about, min }) =>
      (node === from || node === to) && (about === circuit || circuit.startsWith(`${about}.`)) && (min ?? 0) > 0,
  );
  return mine.length === 0 ? undefined : Math.min(...mine.map((w) => w.min!));
}

const endClamp = (end: LineEnd, to: string): BranchPlan => ({
  ...{ from: end.node, to, circuit: end.about, line: 'clamp' },
  members: [{ kind: 'junction', part: clampOf(end), law: PIN_CLAMP }],
});

/** The node at a pin: its own, or where several things meet at it. A pin with one branch gets one. */
function pinNode({ pin, from, to, carries }: BranchPlan, inner: Set<string>): string {
  if (carries !== undefined) return pin!.level === 'high' ? to : from;
  const node = nodeOf(pin!.pin);
  inner.add(node);
  return node;
}

/** In the place of a dead pin's output: its clamp to its rail. */
function throughDead(b: BranchPlan, inner: Set<string>, clamped: ReadonlySet<string>, rail: string): BranchPlan {
  const part = b.pin!.pin;
  const clamp: Member = { kind: 'junction', part, law: PIN_CLAMP };
  const open: Member = { kind: 'resistance', part, ohms: UNCLAMPED };
  return {
    from: pinNode(b, inner),
    to: rail,
    circuit: b.circuit,
    members: clamped.has(part) ? [clamp] : [open],
  };
}

/** What hangs on a pin by itself. */
function hungOn(b: BranchPlan, inner: Set<string>, grounded: (node: string) => string): BranchPlan[] {
  const members = wired(b.members.filter((m) => m.kind !== 'pin').map(yielding), `${b.pin!.pin}.lead`);
  const node = pinNode(b, inner);
  const { circuit } = b;
  return b.pin!.outward === 1
    ? [{ circuit, members, from: node, to: grounded(b.to) }]
    : [{ circuit, members, from: grounded(b.from), to: node }];
}
