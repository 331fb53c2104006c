/** The figures of a project in one corner of its ledger, chosen by the corner's words and by nothing of the ledger's code. */
import type { AskedLean, Corner, Lean } from '../../src/ledger/corner.js';
import type { Focus } from '../../src/ledger/moment.js';
import type { BranchPlan, HeldCurrent, JunctionSpread, Member } from '../../src/loads/branch-plan.js';
import { GROUND, isFalling } from '../../src/loads/branch-plan.js';
import { placeOf } from '../../src/project/places.js';
import type { Project } from '../../src/project/project.js';
import type { Link, TreeNode } from '../../src/project/tree-plan.js';
import type { Interval } from '../../src/quantity/interval.js';
import type { Junction } from '../../src/circuit/junction.js';
import type { Ends } from '../ledger/leans.js';
import { DRAW, END, LOAD, LOSS, counted, drawn, leanOfBranch, lit } from '../ledger/leans.js';

/** Figures of one build. */
export interface Figures {
  /** °C. */
  /** Ambient of anything with a name, °C. */
  readonly ambient: (name: string) => number;
  /** Volts of a supply. */
  readonly supply: (node: TreeNode & { readonly volts: Interval }) => number;
  /** A figure of a link, 0 where it has none. */
  readonly link: (link: Link, key: 'ohms' | 'contact' | 'drop' | 'volts' | 'quiescent') => number;
  /** Points of a link's figure over its output current: amperes and the figure; one at 0 where it has none. */
  readonly linkCurve: (link: Link, key: 'dropout' | 'efficiency') => [number, number][];
  readonly diode: (link: Link) => Junction;
  /** Ohms at 20 °C or as stated, volts of a drop, amperes of a fixed current or of a filament at its design point, watts. */
  readonly member: (
    network: number,
    branch: BranchPlan,
    member: Exclude<Member, { kind: 'junction' | 'curve' }>,
  ) => number;
  /** Amperes and volts of the points of a curve. */
  readonly curve: (
    network: number,
    branch: BranchPlan,
    member: Extract<Member, { kind: 'curve' }>,
  ) => [number, number][];
  /** Whether filaments are cold: resistances. */
  readonly isCold: (network: number, branch: BranchPlan) => boolean;
  readonly junction: (network: number, branch: BranchPlan, member: Extract<Member, { kind: 'junction' }>) => Junction;
}

const NOTHING = [{ at: 0, value: { min: 0, typ: 0, max: 0 } }];
const AMBIENT: Readonly<Record<Corner['ambient'], Ends>> = { cold: 'min', typ: 'typ', hot: 'max' };

/** How what hangs on the same pin leans, by what is asked of it; else as all the rest. */
const BESIDE: { readonly [L in AskedLean]?: Lean } = {
  starved: 'high',
  stalled: 'high',
  high: 'low',
  peak: 'low',
  second: 'low',
  flooded: 'low',
  warm: 'low',
};

export function figuresIn(project: Project, corner: Corner, focus: Focus): Figures {
  const { load, control, rest, apart } = corner;
  const asks = (network: number): boolean => (focus.leans ?? focus.has)[network] === 1;
  const leanOf = (network: number, branch: BranchPlan): Lean =>
    leanOfBranch(askedOf(network, branch), branch, project.networks[network]!);
  const { among } = focus;
  const askedOf = (network: number, branch: BranchPlan): AskedLean => {
    if (!asks(network)) return pushedOf(network, branch);
    const { side, circuits, controls, on, off } = project.networks[network]!;
    const own = ({ circuit }: BranchPlan): AskedLean => {
      if (circuits.length > 1 && controls?.has(circuit)) return control;
      return side === 'control' && !focus.loads?.has(network) ? control : load;
    };
    if (among === undefined || among.has(branch.circuit)) return own(branch);
    // What hangs on a pin beside what is asked about takes much from what starves it, and little from all that draws or floods.
    const asked = [...on, ...off].find(({ circuit }) => among.has(circuit));
    const beside = asked && BESIDE[own(asked)];
    return beside ?? restOf(network, branch);
  };
  /** Where a supply stands apart, what hangs on it and on nothing else takes it there. */
  const restAt = (nodes: readonly string[]): Lean => {
    const ends = new Set(corner.follows ? nodes.map((id) => apart?.get(sourceOf(project, id))) : []);
    const [end] = ends;
    if (ends.size !== 1 || end === undefined) return rest;
    if (end === 'low') return rest === 'peak' ? 'peak' : 'high';
    return end === 'high' ? 'low' : 'typ';
  };
  const restOf = (network: number, branch: BranchPlan): Lean => {
    const { on, inner } = project.networks[network]!;
    const state = on.includes(branch) ? on : project.networks[network]!.off;
    return restAt(state.flatMap(({ from, to }) => [from, to]).filter((id) => id !== GROUND && !inner.includes(id)));
  };
  /** What feeds a rail from a supply that gives way to nothing leans against what draws from it, where the corner says so. */
  const pushedOf = (network: number, branch: BranchPlan): Lean => {
    const lean = restOf(network, branch);
    if (!corner.pushed || branch.line !== undefined || !feedsRail(project, branch)) return lean;
    return lean === 'low' ? 'high' : lean === 'high' || lean === 'peak' || lean === 'second' ? 'low' : lean;
  };
  const endOf = (network: number, branch: BranchPlan, member: Member): Ends => {
    if (member.kind === 'pin')
      return LOSS[leanOfBranch(asks(network) ? control : restOf(network, branch), branch, project.networks[network]!)];
    const lean = leanOf(network, branch);
    // A base that is driven turns most into heat with its junction at the upper end.
    if (member.kind === 'junction') return lean === 'warm' ? 'max' : LOSS[lean];
    if (member.kind === 'current' || member.kind === 'filament' || member.kind === 'power') return DRAW[lean];
    if (isFalling(branch)) return DRAW[lean];
    return (member.kind === 'resistance' || member.kind === 'drop') && member.load ? LOAD[lean] : LOSS[lean];
  };
  const ambientOf = (name: string): number => {
    const place = placeOf(project, name);
    const at = place === corner.place ? corner.ambient : (corner.elsewhere?.get(place ?? '') ?? corner.ambient);
    return (place === undefined ? project.ambient : project.places.get(place)!)[AMBIENT[at]];
  };
  // A regulator belongs to what is in question only where all is.
  const appetite = ({ id, from }: Link): Ends => {
    const whole = focus.networks.length === 0 && focus.besides?.has(id) !== true && corner.follows !== true;
    return DRAW[whole ? (load as Lean) : restAt([from])];
  };
  const lossOf = (link: Link): Ends => {
    const pulled = apart?.get(link.id);
    return pulled === undefined ? END[corner.losses] : END[pulled === 'low' ? 'high' : 'low'];
  };
  const opposite: Readonly<Record<Ends, Ends>> = { min: 'max', typ: 'typ', max: 'min' };
  return {
    ambient: ambientOf,
    // Somebody else's voltage leans against ours.
    supply: (node) => {
      const end = apart?.get(node.id);
      const lifted = [...(corner.feeds?.values() ?? [])].flatMap((feed) =>
        headOf(project, feed.link) === node.id ? [Math.min(feed.atLeast, node.volts.max)] : [],
      );
      if (end !== undefined || !node.outside) return Math.max(node.volts[END[end ?? corner.sources]], ...lifted);
      return node.volts[opposite[END[corner.sources]]];
    },
    link: (link, key) => {
      const end = {
        ohms: lossOf(link),
        contact: lossOf(link),
        drop: lossOf(link),
        volts: END[apart?.get(link.id) ?? corner.outputs],
        quiescent: appetite(link),
      }[key];
      return link[key]?.[end] ?? 0;
    },
    linkCurve: (link, key) => {
      const end = key === 'dropout' ? lossOf(link) : opposite[appetite(link)];
      return (link[key] ?? NOTHING).map(({ at, value }) => [at, value[end]]);
    },
    diode: (link) => link.law![lossOf(link)],
    member: (network, branch, member) => {
      const end = endOf(network, branch, member);
      switch (member.kind) {
        case 'drop':
          return member.volts[end];
        case 'current':
          return drawn(member, leanOf(network, branch));
        case 'power':
          return member.held
            ? heldWatts(member.held, (figure) => figure[end], ambientOf(branch.circuit))
            : member.watts[end];
        case 'filament':
          return lit(member, leanOf(network, branch)).amps;
        default:
          return corner.tuned?.part === member.part
            ? corner.tuned.ohms
            : member.ohms[end] * counted(member, leanOf(network, branch));
      }
    },
    curve: (network, branch, member) =>
      member.points.map(({ amps, volts }) => [amps, volts[endOf(network, branch, member)]]),
    isCold: (network, branch) => leanOf(network, branch) === 'peak',
    junction: (network, branch, member) => member.law[endOf(network, branch, member)],
  };
}

/**
 * Whether a branch leads to a node that hangs on something that loses or regulates, from a supply with nothing but wire before
 * it or from one that the node does not hang on.
 */
function feedsRail({ nodes, links }: Pick<Project, 'nodes' | 'links'>, { from, to }: BranchPlan): boolean {
  const known = (id: string): boolean => nodes.some((n) => n.id === id);
  const feeds = (id: string): boolean => {
    const before = links.filter((l) => l.to === id);
    return before.some((l) => l.kind !== 'wire' || feeds(l.from));
  };
  const sources = (id: string): string[] => {
    const before = links.filter((l) => l.to === id);
    return before.length === 0 ? [id] : before.flatMap((l) => sources(l.from));
  };
  const apart = sources(from).every((id) => !sources(to).includes(id));
  return known(from) && known(to) && (!feeds(from) || apart) && feeds(to);
}

/** The source that a node hangs on, whatever lies between them. */
function sourceOf(project: Pick<Project, 'links'>, id: string): string {
  const feed = project.links.findLast((l) => l.to === id);
  return feed === undefined ? id : sourceOf(project, feed.from);
}

/** The source that a link hangs on, with no regulator between them. */
function headOf({ links }: Project, id: string): string | undefined {
  let link = links.find((l) => l.id === id)!;
  for (;;) {
    const before = links.find((l) => l.to === link.from);
    if (before === undefined) return link.from;
    if (before.volts !== undefined) return undefined;
    link = before;
  }
}

/** The figures of one build, each at a share of its range: below a half between least and typical, else typical and most. */
export function figuresAt(project: Project, share: (figure: string) => number): Figures {
  const take = ({ min, typ, max }: Interval, figure: string): number => {
    const at = share(figure);
    return at < 0.5 ? 2 * at * typ + (1 - 2 * at) * min : (2 * at - 1) * max + (2 - 2 * at) * typ;
  };
  const law = ({ min, typ, max }: JunctionSpread, figure: string): Junction => {
    const ends = (of: (end: Junction) => number): number => take({ min: of(min), typ: of(typ), max: of(max) }, figure);
    const of = (key: 'slope' | 'series'): number => ends((end) => end[key]);
    // The ends may state their coefficients at different currents: at another one it changes with the slope.
    const perKelvin = ends(
      (end) =>
        end.perKelvin +
        (end.slope / (end.referenceTemperature + 273.15)) * Math.log(typ.referenceCurrent / end.referenceCurrent),
    );
    // The voltage at 1 A lies as far along as slope and resistance do, and so does the one at any other current.
    const atOne = ends((end) => -end.slope * end.logSaturation);
    return {
      ...typ,
      slope: of('slope'),
      series: of('series'),
      perKelvin,
      logSaturation: -atOne / of('slope'),
    };
  };
  const nameOf = (member: Member, { pin }: BranchPlan): string =>
    member.kind === 'pin'
      ? `${member.part.split('.')[0]!} pins ${pin!.level}`
      : // The board's own draw is one figure, of which the chip has a part.
        member.kind === 'current' && /^\w+\.(board|chip)$/.test(member.part)
        ? `${member.part.split('.')[0]!} draws`
        : member.part;
  const ambientOf = (name: string): number => {
    const place = placeOf(project, name);
    return place === undefined
      ? take(project.ambient, 'ambient')
      : take(project.places.get(place)!, `ambient of ${place}`);
  };
  return {
    ambient: ambientOf,
    supply: (node) => take(node.volts, `${node.id} volts`),
    link: (link, key) => (link[key] ? take(link[key], `${link.id} ${key}`) : 0),
    linkCurve: (link, key) => (link[key] ?? NOTHING).map(({ at, value }) => [at, take(value, `${link.id} ${key}`)]),
    diode: (link) => law(link.law!, `${link.id} law`),
    member: (_, branch, member) => {
      const name = nameOf(member, branch);
      switch (member.kind) {
        case 'drop':
          return take(member.volts, name);
        case 'current':
        case 'filament':
          return take(member.amps, name);
        case 'power':
          return member.held
            ? heldWatts(member.held, (figure, what) => take(figure, `${name} ${what}`), ambientOf(branch.circuit))
            : take(member.watts, name);
        default:
          return take(member.ohms, name);
      }
    },
    isCold: () => false,
    curve: (_, branch, member) => member.points.map(({ amps, volts }) => [amps, take(volts, nameOf(member, branch))]),
    junction: (_, branch, member) => law(member.law, nameOf(member, branch)),
  };
}

/** Watts that a chopper takes: n windings, each with its switches, as warm as they are; copper in proportion to the degrees above -234.5 °C. */
function heldWatts(
  { windings, amps, ohms, copper, rise, bridge, shaft }: HeldCurrent,
  take: (figure: Interval, what: string) => number,
  ambient: number,
): number {
  const warm = (take(ohms, 'winding') * (234.5 + ambient + take(rise, 'rise'))) / (234.5 + copper);
  return windings * take(amps, 'current') ** 2 * (warm + take(bridge, 'bridge')) + take(shaft, 'shaft');
}
