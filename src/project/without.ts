/**
 * A project with some of its supplies dead: what they alone feed stands at 0 V, and the pins of a chip without supply are no
 * more than the clamps to its rail (rule 18 of the format).
 */
import { PIN_CLAMP } from '../loads/lines/pin-clamp.js';
import type { BranchPlan, CircuitPlan, Member, NetworkPlan } from '../loads/plan.js';
import { GROUND } from '../loads/plan.js';
import { exactly } from '../quantity/interval.js';
import { nodeOf } from './assemble.js';
import { wired, yielding } from './loose-pins.js';
import type { Project } from './project.js';

/** In the place of a clamp where there is none, ohms. */
const UNCLAMPED = exactly(1e9);

/** The supply that a node is the ideal source of: one with a resistance has its source inside. */
const supplyOf = (node: string): string => node.replace(/:inside$/, '');

/** The nodes of the supply tree that nothing feeds once some supplies are dead. */
export function deadNodes(
  { nodes, links }: Pick<Project, 'nodes' | 'links'>,
  dead: readonly string[],
): ReadonlySet<string> {
  const alive = new Set(nodes.flatMap((n) => (n.volts !== undefined && !dead.includes(supplyOf(n.id)) ? [n.id] : [])));
  // Upstream first: whatever feeds a node has been seen before it.
  for (const { from, to } of links) if (alive.has(from)) alive.add(to);
  return new Set(nodes.flatMap((n) => (alive.has(n.id) ? [] : [n.id])));
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

const railsOf = ({ pins }: Project): ReadonlyMap<string, string> => new Map(pins.map((p) => [p.id, p.rail]));

/** The same project with some supplies dead; of its accounts those that nothing dead has to do with. */
export function withoutSupplies(project: Project, dead: readonly string[]): Project {
  const nodes = deadNodes(project, dead);
  const touched = touchedBy(project, nodes);
  const rails = railsOf(project);
  const clamped = new Set([...project.boot.pins].flatMap(([id, p]) => (p.clamped ? [id] : [])));
  const owners = new Set(project.pins.flatMap((p) => (nodes.has(p.rail) ? [p.owner] : [])));
  return {
    ...project,
    nodes: project.nodes.map((n) => {
      if (!dead.includes(supplyOf(n.id))) return n;
      const { volts: _, ...rest } = n;
      return rest;
    }),
    links: project.links.filter((l) => !nodes.has(l.from)),
    networks: project.networks.map((n) => deadNetwork(n, nodes, rails, clamped)),
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

function deadNetwork(
  network: NetworkPlan,
  nodes: ReadonlySet<string>,
  rails: ReadonlyMap<string, string>,
  clamped: ReadonlySet<string>,
): NetworkPlan {
  const inner = new Set(network.inner);
  const grounded = (node: string): string => (nodes.has(node) ? GROUND : node);
  const isDead = (b: BranchPlan): boolean => b.pin !== undefined && nodes.has(rails.get(b.pin.pin) ?? '');
  const state = (plans: readonly BranchPlan[]): BranchPlan[] => {
    const some = plans.some(isDead);
    const mapped = plans.map((b): BranchPlan => {
      if (isDead(b)) return throughDead(b, inner, clamped);
      const ends = { from: grounded(b.from), to: grounded(b.to) };
      // What takes a current of its own gets none from a pin that is dead.
      return {
        ...b,
        ...ends,
        ...(some && (inner.has(b.from) || inner.has(b.to)) && { members: b.members.map(yielding) }),
      };
    });
    const alone = plans.flatMap((b) => (isDead(b) && b.carries === undefined ? hungOn(b, inner, grounded) : []));
    return [...mapped, ...alone];
  };
  const [on, off] = [state(network.on), state(network.off)];
  return { ...network, on, off, inner: [...inner] };
}

/** The node at a pin: its own, or where several things meet at it. A pin with one branch gets one. */
function pinNode({ pin, from, to, carries }: BranchPlan, inner: Set<string>): string {
  if (carries !== undefined) return pin!.level === 'high' ? to : from;
  const node = nodeOf(pin!.pin);
  inner.add(node);
  return node;
}

/** In the place of a dead pin's output: its clamp to a rail at 0 V. */
function throughDead(b: BranchPlan, inner: Set<string>, clamped: ReadonlySet<string>): BranchPlan {
  const part = b.pin!.pin;
  const clamp: Member = { kind: 'junction', part, law: PIN_CLAMP };
  const open: Member = { kind: 'resistance', part, ohms: UNCLAMPED };
  return {
    from: pinNode(b, inner),
    to: GROUND,
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
