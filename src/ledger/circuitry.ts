/** The project's networks and supply tree with names turned into numbers. */
import type { BranchPlan, NetworkPlan } from '../loads/branch-plan.js';
import { GROUND } from '../loads/branch-plan.js';
import type { Interval } from '../quantity/interval.js';
import type { Project } from '../project/project.js';
import type { Link } from '../project/tree-plan.js';
import { placeOf } from '../project/places.js';
import type { Converter } from './collapse.js';
import { convertersOf } from './collapse.js';
import type { Pulsing } from './phases.js';
import { pulsingIn } from './phases.js';
import type { FittedNetwork } from './fitted.js';
import type { BranchIndex } from './fitted-branch.js';
import { branchIndex } from './fitted-branch.js';
import type { FittedLink } from './fitted-links.js';
import { kept } from './kept.js';
import { writtenOut } from './likeness.js';

export interface NetworkIndex {
  readonly plan: NetworkPlan;
  /** Its own nodes, by name. */
  readonly inner: ReadonlySet<string>;
  /** The place it stands in; of one that reaches into several, none. */
  readonly place: string | undefined;
  /** Places of its branches' circuits, where it reaches into several. */
  readonly places?: ReadonlyMap<string, string | undefined>;
  /** All of it but its names, and where it stands. */
  readonly written: string;
  /** The number of the first network that is written alike; often its own. */
  readonly like: number;
  readonly circuits: readonly number[];
  /** Something that is none of its circuits hangs in it: a board's own lamp on the pin. */
  readonly foreign: boolean;
  readonly on: StateIndex;
  readonly off: StateIndex;
}

interface StateIndex {
  readonly plans: readonly BranchPlan[];
  readonly branches: readonly BranchIndex[];
  readonly boundary: readonly number[];
  readonly fitted: Map<number, FittedNetwork>;
}

export interface PartIndex {
  readonly network: number;
  /** Branch and member number in the on and the off state, where the part stands in it. */
  readonly on?: { readonly branch: number; readonly member: number };
  readonly off?: { readonly branch: number; readonly member: number };
}

/** A link of the supply tree with its nodes' numbers. */
export interface LinkIndex {
  readonly link: Link;
  readonly from: number;
  readonly to: number;
}

/** A node with several feeds, of which one feeds it at a time. */
export interface JoinedIndex {
  readonly node: number;
  /** Numbers of the links that lead to it. */
  readonly links: readonly number[];
}

/** So many zeros. Plain arrays: short ones are made and read faster than typed ones. */
export const zeros = (length: number): number[] => new Array<number>(length).fill(0);

/** Arrays that sweeps write into and nobody keeps. */
interface Scratch {
  readonly drawn: number[];
  readonly slopes: number[];
  readonly others: number[];
  readonly otherSlopes: number[];
  readonly linkInputs: number[];
}

/** Figures of a corner in which all lean alike, by number, as far as they were asked for. */
export interface KeptFigures {
  links: readonly FittedLink[] | undefined;
  readonly on: (FittedNetwork | undefined)[];
  readonly off: (FittedNetwork | undefined)[];
}

export interface Circuitry {
  readonly project: Project;
  readonly scratch: Scratch;
  /** What was put in and found out once, by the corner and by the circuits that are on. */
  readonly kept: { readonly figures: WeakMap<object, KeptFigures>; readonly on: WeakMap<Uint8Array, Uint8Array> };
  /** Upstream first. */
  readonly links: readonly LinkIndex[];
  /** The number of each link that is more than a wire. */
  readonly linkIndex: ReadonlyMap<Link, number>;
  /** Nodes that several links lead to, over diodes, with the numbers of those. */
  readonly joined: readonly JoinedIndex[];
  /** Volts of each node with nothing drawn from it; none where nothing feeds it. */
  readonly open: readonly (Interval | undefined)[];
  /** How many nodes there are; 0 is ground. */
  readonly count: number;
  /** Number of each node of the supply tree; nodes that wires join share one. */
  readonly nodeIndex: ReadonlyMap<string, number>;
  readonly circuitIndex: ReadonlyMap<string, number>;
  readonly networks: readonly NetworkIndex[];
  readonly converters: readonly Converter[];
  /** The numbers of regulators that something hangs across, from their input to their output. */
  readonly bridged: ReadonlySet<number>;
  /** Branches over which a supply feeds a node of the tree that hangs on others: a clamp's common pin tied too low. */
  readonly feeders: ReadonlySet<BranchPlan>;
  /** The numbers of all networks. */
  readonly every: readonly number[];
  readonly parts: ReadonlyMap<string, PartIndex>;
  /** For each circuit the numbers of its networks. */
  readonly networksOf: readonly (readonly number[])[];
  /** What is switched on and off many times a second. */
  readonly pulsing: readonly Pulsing[];
}

export function circuitry(project: Project): Circuitry {
  // What a wire joins is one node: a rail fed straight from a supply moves with it.
  const nodeIndex = new Map([[GROUND, 0]]);
  const wired = new Map(project.links.flatMap((l) => (l.kind === 'wire' ? [[l.to, l.from] as const] : [])));
  const root = (id: string): string => (wired.has(id) ? root(wired.get(id)!) : id);
  for (const { id } of project.nodes) if (!wired.has(id)) nodeIndex.set(id, nodeIndex.size);
  const count = nodeIndex.size;
  for (const { id } of project.nodes) nodeIndex.set(id, nodeIndex.get(root(id))!);
  const open = feeding(project, nodeIndex, count);
  const states = stateIndexing(project, nodeIndex, open);
  const circuitIndex = new Map(project.circuits.map((c, k) => [c.id, k]));
  const networksOf: number[][] = project.circuits.map(() => []);
  const parts = new Map<string, PartIndex>();
  const firsts = new Map<string, number>();
  const networks = project.networks.map((plan, number): NetworkIndex => {
    const circuits = plan.circuits.map((id) => circuitIndex.get(id)!);
    for (const c of circuits) networksOf[c]!.push(number);
    for (const state of ['on', 'off'] as const)
      plan[state].forEach((branch, b) =>
        branch.members.forEach((member, m) => {
          const known = parts.get(member.part) ?? { network: number };
          // A pin that digits of a display take turns at stands in a network of each: the first one stands for it.
          if (known.network === number) parts.set(member.part, { ...known, [state]: { branch: b, member: m } });
        }),
      );
    const placed = new Map([...plan.on, ...plan.off].map((b) => [b.circuit, placeOf(project, b.circuit)]));
    const [place, ...others] = new Set(placed.values());
    const written = `${[...placed.values()].join()}|${writtenOut(plan)}`;
    const like = firsts.get(written) ?? number;
    firsts.set(written, like);
    return {
      plan,
      place: others.length > 0 ? undefined : place,
      ...(others.length > 0 && { places: placed }),
      written,
      like,
      circuits,
      foreign: circuits.length > 0 && [...plan.on, ...plan.off].some((b) => !plan.circuits.includes(b.circuit)),
      inner: new Set(plan.inner),
      on: states(plan, plan.on),
      off: states(plan, plan.off),
    };
  });
  const links = project.links
    .filter((link) => link.kind !== 'wire')
    .map((link) => ({ link, from: nodeIndex.get(link.from)!, to: nodeIndex.get(link.to)! }));
  const feeds = new Map<number, number[]>();
  links.forEach(({ to }, k) => feeds.set(to, [...(feeds.get(to) ?? []), k]));
  const joined = [...feeds].flatMap(([node, of]) => (of.length > 1 ? [{ node, links: of }] : []));
  const across =
    (from: number, to: number) =>
    (state: StateIndex): boolean =>
      state.boundary.includes(from) && state.boundary.includes(to);
  const bridged = new Set(
    links.flatMap(({ link, from, to }, k) =>
      link.volts !== undefined && networks.some((n) => [n.on, n.off].some(across(from, to))) ? [k] : [],
    ),
  );
  const before = new Map<number, readonly number[]>();
  for (const { from, to } of links) before.set(to, [...(before.get(to) ?? []), from]);
  const sourcesOf = kept(
    (node: number): ReadonlySet<number> =>
      new Set(before.get(node)?.flatMap((other) => [...sourcesOf(other)]) ?? [node]),
  );
  /** From a supply that gives way to nothing, or that has nothing to do with what it feeds. */
  const isFeeder = ({ from, to, line }: BranchPlan): boolean => {
    const [a, b] = [nodeIndex.get(from), nodeIndex.get(to)];
    if (!a || !b || line !== undefined || !before.has(b)) return false;
    const theirs = sourcesOf(b);
    return !before.has(a) || ![...sourcesOf(a)].some((node) => theirs.has(node));
  };
  const feeders = new Set(networks.flatMap(({ plan }) => [...plan.on, ...plan.off].filter(isFeeder)));
  const scratch: Scratch = {
    drawn: zeros(count),
    slopes: zeros(count),
    others: zeros(count),
    otherSlopes: zeros(count),
    linkInputs: zeros(links.length),
  };
  return {
    project,
    scratch,
    kept: { figures: new WeakMap(), on: new WeakMap() },
    links,
    linkIndex: new Map(links.map(({ link }, k) => [link, k])),
    joined,
    converters: convertersOf({ links, networks, nodeIndex, open }),
    bridged,
    feeders,
    count,
    open,
    nodeIndex,
    circuitIndex,
    networks,
    every: [...networks.keys()],
    parts,
    networksOf,
    pulsing: pulsingIn(project, circuitIndex),
  };
}

/** The figures that are kept for a corner. */
export function keptFigures({ kept, networks }: Circuitry, corner: object): KeptFigures {
  const figures: KeptFigures = kept.figures.get(corner) ?? {
    links: undefined,
    on: new Array<undefined>(networks.length),
    off: new Array<undefined>(networks.length),
  };
  kept.figures.set(corner, figures);
  return figures;
}

/** 1 for each network that is on when some circuits are; one that belongs to none always is. @param circuits 1 for each that is on */
export function networksOn({ kept, networks }: Circuitry, circuits: Uint8Array): Uint8Array {
  const on =
    kept.on.get(circuits) ??
    Uint8Array.from(networks, (n) => (n.circuits.length === 0 || n.circuits.some((c) => circuits[c] === 1) ? 1 : 0));
  kept.on.set(circuits, on);
  return on;
}

/** What each node stands at with no load; undefined where nothing feeds it. */
function feeding(project: Project, nodeIndex: ReadonlyMap<string, number>, count: number) {
  const open: (Interval | undefined)[] = new Array<undefined>(count).fill(undefined);
  for (const { id, volts } of project.nodes) if (volts) open[nodeIndex.get(id)!] = volts;
  for (const { from, to, volts } of project.links) {
    const [node, next] = [nodeIndex.get(to)!, volts ?? open[nodeIndex.get(from)!]];
    // Of several that are joined by diodes the highest feeds the node.
    if (node !== nodeIndex.get(from)) open[node] = higher(open[node], next);
  }
  return open;
}

function higher(a: Interval | undefined, b: Interval | undefined): Interval | undefined {
  if (a === undefined || b === undefined) return a ?? b;
  return { min: Math.max(a.min, b.min), typ: Math.max(a.typ, b.typ), max: Math.max(a.max, b.max) };
}

function stateIndexing(
  project: Project,
  nodeIndex: ReadonlyMap<string, number>,
  open: readonly (Interval | undefined)[],
) {
  // A project's own names only: a name inside a network is none of them.
  const known = new Set(project.nodes.map((node) => node.id));
  const feed = (id: string): Interval | undefined => (known.has(id) ? open[nodeIndex.get(id)!] : undefined);
  const dead = (id: string): boolean => id === GROUND || (known.has(id) && feed(id) === undefined);
  return (plan: NetworkPlan, plans: readonly BranchPlan[]): StateIndex => {
    const local = new Map(plan.inner.map((id, k) => [id, k]));
    const boundary: number[] = [];
    const number = (id: string): number => {
      const known = local.get(id);
      if (known !== undefined) return known;
      local.set(id, local.size);
      boundary.push(nodeIndex.get(id) ?? missingNode(id));
      return local.size - 1;
    };
    const branches = plans.map((branch) => {
      const [from, to] = [number(branch.from), number(branch.to)];
      const fed = branch.from !== branch.to && !dead(branch.from);
      return branchIndex(branch, from, to, feed(branch.from)?.min ?? 0, fed);
    });
    return { plans, branches, boundary, fitted: new Map() };
  };
}

const missingNode = (id: string): never => {
  throw new Error(`a branch ends at '${id}', which is no node of the project`);
};
