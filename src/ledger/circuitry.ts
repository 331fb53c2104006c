/**
 * The project's networks and supply tree with names turned into numbers, and each network's branches with their figures
 * put in, once for each lean and ambient that is asked for.
 */
import type { Branch } from '../circuit/branch.js';
import type { LinePoint } from '../circuit/lines.js';
import { lineVoltage, withLines } from '../circuit/lines.js';
import type { Edge } from '../circuit/network.js';
import { copperFactor } from '../circuit/copper.js';
import type { Filament } from '../circuit/filament.js';
import { filamentVoltage } from '../circuit/filament.js';
import type { Junction } from '../circuit/junction.js';
import { junctionAt, junctionBetween, junctionVoltage } from '../circuit/junction.js';
import type { BranchPlan, JunctionSpread, Member, NetworkPlan, PinPassage } from '../loads/plan.js';
import { GROUND, isFalling } from '../loads/plan.js';
import type { Interval } from '../quantity/interval.js';
import type { Link, Project } from '../project/project.js';
import { placeOf } from '../project/places.js';
import type { Build } from './builds.js';
import { memberFigure, within } from './builds.js';
import type { Ambient, AskedLean, Lean } from './corner.js';
import { writtenOut } from './likeness.js';

/** One member of a branch with its figures put in. */
export interface FittedMember {
  readonly member: Member;
  readonly ohms: number;
  readonly drop: number;
  readonly junction?: Branch['junctions'][number];
  /** Volts over amperes, in straight lines. */
  readonly curve?: readonly LinePoint[];
  readonly filament?: Filament;
}

/** Volts across a member that carries a current in amperes; none of what takes its current whatever it gets. */
export const voltsAcross = ({ ohms, drop, junction, curve, filament }: FittedMember, current: number): number =>
  ohms * current +
  (current > 0 ? drop + (curve ? lineVoltage(curve, current) : 0) : 0) +
  (junction === undefined ? 0 : junctionVoltage(junction, current)) +
  (filament === undefined ? 0 : filamentVoltage(filament, current));

/** A network with its figures put in; local nodes are the inner ones first, then those of the tree. */
export interface FittedNetwork {
  readonly edges: readonly Edge[];
  readonly members: readonly (readonly FittedMember[])[];
  readonly plans: readonly BranchPlan[];
  /** Tree node of each local node from `inner` on. */
  readonly boundary: readonly number[];
  readonly inner: number;
}

export interface NetworkIndex {
  /** Nodes of the tree that no supply feeds, and ground. */
  readonly dead: ReadonlySet<string>;
  /** Lowest volts of the nodes of the tree with nothing drawn from them. */
  readonly standing: ReadonlyMap<string, number>;
  readonly plan: NetworkPlan;
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
  readonly local: ReadonlyMap<string, number>;
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

/** Arrays that sweeps write into and nobody keeps. */
/** So many zeros. Plain arrays: short ones are made and read faster than typed ones. */
export const zeros = (length: number): number[] => new Array<number>(length).fill(0);

interface Scratch {
  readonly drawn: number[];
  readonly slopes: number[];
  readonly others: number[];
  readonly otherSlopes: number[];
  readonly linkCurrents: number[];
  readonly linkInputs: number[];
}

export interface Circuitry {
  readonly project: Project;
  readonly scratch: Scratch;
  /** Upstream first. */
  readonly links: readonly LinkIndex[];
  /** Volts of each node with nothing drawn from it; none where nothing feeds it. */
  readonly open: readonly (Interval | undefined)[];
  /** How many nodes there are; 0 is ground. */
  readonly count: number;
  /** Number of each node of the supply tree; nodes that wires join share one. */
  readonly nodeIndex: ReadonlyMap<string, number>;
  readonly circuitIndex: ReadonlyMap<string, number>;
  readonly networks: readonly NetworkIndex[];
  /** Regulators that something hangs across, from their input to their output. */
  readonly bridged: ReadonlySet<Link>;
  /** The numbers of all networks. */
  readonly every: readonly number[];
  readonly parts: ReadonlyMap<string, PartIndex>;
  /** For each circuit the numbers of its networks. */
  readonly networksOf: readonly (readonly number[])[];
}

export function circuitry(project: Project): Circuitry {
  // What a wire joins is one node: a rail fed straight from a supply moves with it.
  const nodeIndex = new Map([[GROUND, 0]]);
  const wired = new Map(project.links.flatMap((l) => (l.kind === 'wire' ? [[l.to, l.from] as const] : [])));
  const root = (id: string): string => (wired.has(id) ? root(wired.get(id)!) : id);
  for (const { id } of project.nodes) if (!wired.has(id)) nodeIndex.set(id, nodeIndex.size);
  const count = nodeIndex.size;
  for (const { id } of project.nodes) nodeIndex.set(id, nodeIndex.get(root(id))!);
  const { open, dead, standing } = feeding(project, nodeIndex, count);
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
          parts.set(member.part, { ...known, [state]: { branch: b, member: m } });
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
      dead,
      standing,
      on: stateIndex(plan, plan.on, nodeIndex),
      off: stateIndex(plan, plan.off, nodeIndex),
    };
  });
  const links = project.links
    .filter((link) => link.kind !== 'wire')
    .map((link) => ({ link, from: nodeIndex.get(link.from)!, to: nodeIndex.get(link.to)! }));
  const across =
    (from: number, to: number) =>
    (state: StateIndex): boolean =>
      state.boundary.includes(from) && state.boundary.includes(to);
  const bridged = new Set(
    links.flatMap(({ link, from, to }) =>
      link.volts !== undefined && networks.some((n) => [n.on, n.off].some(across(from, to))) ? [link] : [],
    ),
  );
  const scratch: Scratch = {
    drawn: zeros(count),
    slopes: zeros(count),
    others: zeros(count),
    otherSlopes: zeros(count),
    linkCurrents: zeros(links.length),
    linkInputs: zeros(links.length),
  };
  return {
    project,
    scratch,
    links,
    bridged,
    count,
    open,
    nodeIndex,
    circuitIndex,
    networks,
    every: [...networks.keys()],
    parts,
    networksOf,
  };
}

/** What each node stands at with no load, and which nodes nothing feeds. */
function feeding(project: Project, nodeIndex: ReadonlyMap<string, number>, count: number) {
  const open: (Interval | undefined)[] = new Array<undefined>(count).fill(undefined);
  for (const { id, volts } of project.nodes) if (volts) open[nodeIndex.get(id)!] = volts;
  for (const { from, to, volts } of project.links) open[nodeIndex.get(to)!] ??= volts ?? open[nodeIndex.get(from)!];
  const dead = new Set([GROUND, ...project.nodes.flatMap(({ id }) => (open[nodeIndex.get(id)!] ? [] : [id]))]);
  const standing = new Map(project.nodes.map(({ id }) => [id, open[nodeIndex.get(id)!]?.min ?? 0]));
  return { open, dead, standing };
}

function stateIndex(
  plan: NetworkPlan,
  plans: readonly BranchPlan[],
  nodeIndex: ReadonlyMap<string, number>,
): StateIndex {
  const local = new Map(plan.inner.map((id, k) => [id, k]));
  const boundary: number[] = [];
  for (const branch of plans)
    for (const id of [branch.from, branch.to])
      if (!local.has(id)) {
        local.set(id, local.size);
        boundary.push(nodeIndex.get(id) ?? missingNode(id));
      }
  return { plans, local, boundary, fitted: new Map() };
}

const missingNode = (id: string): never => {
  throw new Error(`a branch ends at '${id}', which is no node of the project`);
};

const LEANS: readonly AskedLean[] = [
  ...(['low', 'typ', 'high', 'peak', 'second', 'starved', 'stalled', 'flooded', 'warm'] as const),
  ...(['raised', 'lowered', 'pressed', 'loaded', 'braked'] as const),
];
const AMBIENTS = ['cold', 'typ', 'hot'] as const;

/** The network in a state with its figures put in for a lean, a lean of the pins and an ambient; made once, then kept. */
export function fit(
  network: NetworkIndex,
  on: boolean,
  lean: AskedLean,
  pins: AskedLean,
  ambient: Ambient,
  celsius: number,
): FittedNetwork {
  const state = on ? network.on : network.off;
  const key = (LEANS.indexOf(lean) * LEANS.length + LEANS.indexOf(pins)) * 3 + AMBIENTS.indexOf(ambient);
  let fitted = state.fitted.get(key);
  if (fitted === undefined) {
    fitted = fitNetwork(
      network,
      on,
      () => lean,
      pins,
      () => celsius,
    );
    state.fitted.set(key, fitted);
  }
  return fitted;
}

/** The same where its circuits lean each its own way: a load in question beside others on the same pin. */
export function fitNetwork(
  network: NetworkIndex,
  on: boolean,
  leanOf: (branch: BranchPlan) => AskedLean,
  pins: AskedLean,
  celsiusOf: (branch: BranchPlan) => number,
  build?: Build,
): FittedNetwork {
  const state = on ? network.on : network.off;
  const inner = new Set(network.plan.inner);
  const leans = state.plans.map((p) => leaning(leanOf(p), p, on, inner));
  const members = state.plans.map((p, k) => {
    const celsius = celsiusOf(p);
    if (build) return p.members.map((m) => builtMember(m, p.pin, build, celsius, leans[k]!));
    const ofPin = leaning(pins, p, on, inner);
    return p.members.map((m) => fitMember(m, leans[k]!, ofPin, celsius, isFalling(p)));
  });
  return {
    plans: state.plans,
    members,
    boundary: state.boundary,
    inner: network.plan.inner.length,
    edges: state.plans.map((p, k) => ({
      from: state.local.get(p.from)!,
      to: state.local.get(p.to)!,
      branch: sum(members[k]!, leans[k]!, network.standing.get(p.from), isFed(p, network), build),
    })),
  };
}

/** A fitted network with one resistance at another value, ohms; the network itself where it does not have the part. */
export function retuned(fitted: FittedNetwork, part: string, ohms: number): FittedNetwork {
  const b = fitted.members.findIndex((members) => members.some((m) => m.member.part === part));
  if (b < 0) return fitted;
  const old = fitted.members[b]!.find((m) => m.member.part === part)!;
  const { branch, ...ends } = fitted.edges[b]!;
  const edge = { ...ends, branch: { ...branch, resistance: branch.resistance + ohms - old.ohms } };
  const members = fitted.members[b]!.map((m) => (m === old ? { ...m, ohms } : m));
  return { ...fitted, edges: fitted.edges.with(b, edge), members: fitted.members.with(b, members) };
}

/** `high` and `low` turned over. */
const TURNED: { readonly [L in Lean]?: Lean } = { high: 'low', peak: 'low', second: 'low', low: 'high' };

/**
 * How one branch leans so that its line does. What somebody pushes into a rail takes from what the rail gives, so that it
 * leans the other way when currents are summed.
 */
function leaning(lean: AskedLean, plan: BranchPlan, on: boolean, inner: ReadonlySet<string>): Lean {
  const { line } = plan;
  switch (lean) {
    case 'raised':
    case 'lowered': {
      const grounded = plan.lowers === true || plan.from === GROUND || plan.to === GROUND;
      // A clamp that carries holds its node down to the supply, or up to ground.
      const raises = line === 'clamp' ? grounded : inner.has(plan.from) && inner.has(plan.to) ? on : !grounded;
      return raises === (lean === 'raised') ? 'high' : 'low';
    }
    case 'pressed':
      return line === 'pull' ? 'low' : 'high';
    case 'loaded':
      return 'high';
    case 'braked':
      return line === 'pull' || line === 'clamp' ? 'high' : 'low';
    default:
      return line === 'drive' || line === 'clamp' ? (TURNED[lean] ?? lean) : lean;
  }
}

/**
 * Whether anything feeds a branch that takes its current from whatever voltage there is. On a rail that collapses under it,
 * it still takes its current, so that the books show what would be asked of the supply.
 */
const isFed = (plan: BranchPlan, network: NetworkIndex): boolean =>
  plan.from !== plan.to && !network.dead.has(plan.from);

/** Leans in which the least comes through to the load. */
const LEAST_PASSES: ReadonlySet<Lean> = new Set(['low', 'starved', 'stalled']);

/** Losses on the way: resistances and drops in series with the useful load. */
const loss = (interval: Interval, lean: Lean, falling = false): number =>
  lean === 'typ' ? interval.typ : leastPasses(lean, falling) ? interval.max : interval.min;

/** Before a load whose current rises as its voltage falls, losses make it draw more. */
const leastPasses = (lean: Lean, falling: boolean): boolean =>
  falling ? !MOST_REACHES.has(lean) : LEAST_PASSES.has(lean);

/** Leans in which what draws current draws the least. */
const MOST_REACHES: ReadonlySet<Lean> = new Set(['low', 'flooded', 'warm']);

/** The load itself is heaviest when it draws most, and when the worst for the voltage that reaches it is asked for. */
const burden = (interval: Interval, lean: Lean, falling = false): number =>
  lean === 'typ' ? interval.typ : MOST_REACHES.has(lean) !== falling ? interval.max : interval.min;

function draw({ amps, peak, second }: Extract<Member, { kind: 'current' }>, lean: Lean): number {
  const more = lean === 'peak' || lean === 'stalled' ? peak : lean === 'second' ? second : undefined;
  return Math.max(more ?? 0, heavier(amps, lean));
}

/** A peak is the most that its figure has: what is uncertain of it is not told. */
function drawn(member: Member & { readonly kind: 'current' }, lean: Lean, build?: Build): number {
  const peaking = lean === 'peak' || lean === 'second' || lean === 'stalled';
  return build === undefined || (peaking && member.peak !== undefined)
    ? draw(member, lean)
    : within(member.amps, build.share(memberFigure(member, undefined)));
}

function fitMember(member: Member, lean: Lean, pins: Lean, celsius: number, falling: boolean): FittedMember {
  switch (member.kind) {
    case 'resistance': {
      const ohms = (member.load ? burden : loss)(member.ohms, lean, falling);
      return {
        member,
        drop: 0,
        ohms: member.copper === undefined ? ohms : ohms * copperFactor(celsius, member.copper),
      };
    }
    case 'pin':
      return { member, drop: 0, ohms: loss(member.ohms, pins) };
    case 'drop':
      return { member, ohms: 0, drop: (member.load ? burden : loss)(member.volts, lean, falling) };
    case 'junction':
      return {
        member,
        ohms: 0,
        drop: 0,
        junction: junctionAt((member.load ? heft : spread)(member.law, lean), celsius),
      };
    case 'curve':
      return {
        member,
        ohms: 0,
        drop: 0,
        curve: member.points.map(({ amps, volts }) => ({ amps, volts: loss(volts, lean, falling) })),
      };
    case 'current':
    case 'power':
      return { member, ohms: 0, drop: 0 };
    case 'filament':
      return fitFilament(member, lean);
    default:
      return member satisfies never;
  }
}

/** A filament hot, cold at the moment it is switched on, or by what that comes to over a second. */
function fitFilament(member: Extract<Member, { kind: 'filament' }>, lean: Lean): FittedMember {
  const { volts, cold } = member;
  const amps = heavier(member.amps, lean);
  if (cold && (lean === 'peak' || lean === 'stalled')) return { member, drop: 0, ohms: volts / (amps * cold.peak) };
  const times = cold && lean === 'second' ? cold.second : 1;
  return { member, ohms: 0, drop: 0, filament: { volts, amps: amps * times } };
}

/** A member with its figure as a build has it. @param lean says whether filaments are cold */
function builtMember(
  member: Member,
  pin: PinPassage | undefined,
  build: Build,
  celsius: number,
  lean: Lean,
): FittedMember {
  const share = build.share(memberFigure(member, pin));
  switch (member.kind) {
    case 'resistance':
    case 'pin': {
      const copper = member.kind === 'resistance' && member.copper !== undefined;
      return {
        member,
        drop: 0,
        ohms: within(member.ohms, share) * (copper ? copperFactor(celsius, member.copper) : 1),
      };
    }
    case 'drop':
      return { member, ohms: 0, drop: within(member.volts, share) };
    case 'junction':
      return { member, ohms: 0, drop: 0, junction: builtJunction(member.law, share, celsius) };
    case 'curve': {
      const curve = member.points.map(({ amps, volts }) => ({ amps, volts: within(volts, share) }));
      return { member, ohms: 0, drop: 0, curve };
    }
    case 'filament': {
      const amps = within(member.amps, share);
      return fitFilament({ ...member, amps: { min: amps, typ: amps, max: amps } }, lean);
    }
    case 'current':
    case 'power':
      return { member, ohms: 0, drop: 0 };
    default:
      return member satisfies never;
  }
}

/** A junction at a share of its spread, at a temperature in °C. */
export function builtJunction({ min, typ, max }: JunctionSpread, share: number, celsius: number): Junction {
  const [from, to, way] = share < 0.5 ? [min, typ, 2 * share] : [typ, max, 2 * share - 1];
  return junctionBetween(junctionAt(from, celsius), junctionAt(to, celsius), way);
}

/** Of a draw: the most of it, unless the least is asked for. */
const heavier = (interval: Interval, lean: Lean): number =>
  lean === 'typ' ? interval.typ : MOST_REACHES.has(lean) ? interval.min : interval.max;

export const spread = (law: JunctionSpread, lean: Lean): Branch['junctions'][number] =>
  lean === 'typ' ? law.typ : LEAST_PASSES.has(lean) || lean === 'warm' ? law.max : law.min;

/** A junction that takes current away from what is asked about: the less it drops, the more it takes. */
const heft = (law: JunctionSpread, lean: Lean): Branch['junctions'][number] =>
  lean === 'typ' ? law.typ : MOST_REACHES.has(lean) ? law.max : law.min;

const takenPower = (member: Member & { readonly kind: 'power' }, lean: Lean, build?: Build): number =>
  build ? within(member.watts, build.share(memberFigure(member, undefined))) : heavier(member.watts, lean);

/** @param standing lowest volts that the branch's feed stands at with nothing on it */
function sum(
  members: readonly FittedMember[],
  lean: Lean,
  standing: number | undefined,
  fed: boolean,
  build?: Build,
): Branch {
  const junctions = members.flatMap((m) => m.junction ?? []);
  const filament = members.find((m) => m.filament)?.filament;
  const fixed = members.find(({ member: { kind } }) => kind === 'current' || kind === 'power')?.member;
  const plain: Branch = {
    resistance: members.reduce((total, m) => total + m.ohms, 0),
    drop: members.reduce((total, m) => total + m.drop, 0),
    junctions,
    ...(filament && { filament }),
    ...(fixed?.kind === 'current' && { current: fed ? drawn(fixed, lean, build) : 0 }),
    ...(fixed?.kind === 'power' && {
      power: { watts: fed ? takenPower(fixed, lean, build) : 0, least: (standing ?? 0) / 2 },
    }),
  };
  return withLines(
    plain,
    members.flatMap((m) => (m.curve ? [m.curve] : [])),
  );
}
