/**
 * A second reckoning of a project's currents, slower and plainer than the ledger's: one build, each uncertain figure at a
 * given share of its range, every branch bisected, the supply tree gone over until nothing moves. It takes the project as
 * lowered and the laws of parts from `circuit/`, and nothing from the ledger.
 */
import { curveAt } from '../curve.js';
import { copperFactor } from '../../src/circuit/copper.js';
import type { Junction } from '../../src/circuit/junction.js';
import { junctionAt, junctionVoltage } from '../../src/circuit/junction.js';
import type { Held, Reading, SolvedBranch } from '../../src/loads/account-plan.js';
import type { BranchPlan, HeldCurrent, Member, NetworkPlan } from '../../src/loads/branch-plan.js';
import { GROUND } from '../../src/loads/branch-plan.js';
import { placeOf } from '../../src/project/places.js';
import type { Project } from '../../src/project/project.js';
import type { Link } from '../../src/project/tree-plan.js';
import type { Interval } from '../../src/quantity/interval.js';

/** A build: where in its range (0 lowest, 1 highest) each figure lies, by name. */
export interface Build {
  readonly share: (figure: string) => number;
  /** Stall and start currents flow, or what they come to over one second. */
  readonly peak?: boolean | 'rms';
  /** The pulses of each pin begin at a moment of their own, not all together. */
  readonly adrift?: true;
}

/** One output resistance a level for all pins of a chip; every other part has a figure of its own. */
const nameOf = (m: Member, branch: BranchPlan): string =>
  m.kind === 'pin' ? `${m.part.slice(0, m.part.indexOf('.'))} pins ${branch.pin!.level}` : m.part;

const within = ({ min, max }: Interval, share: number): number => min + share * (max - min);

/** A member with its figure put in: the volts it takes at a current, or the current that it fixes. */
interface Element {
  readonly member: Member;
  /** Straight part. */
  readonly ohms: number;
  readonly volts: (amps: number) => number;
  readonly amps?: number;
  /** A power that it takes from whatever it gets; its current is what is left to find. */
  readonly watts?: number;
  /** The current that a chopper holds with it. */
  readonly held?: Held;
  readonly blocks: boolean;
  /** What a junction takes beyond its series resistance, volts. */
  readonly bend?: (amps: number) => number;
  /** The most that it lets through at a voltage by itself, amperes. */
  readonly most?: (volts: number) => number;
}

interface Line {
  readonly plan: BranchPlan;
  readonly elements: readonly Element[];
  readonly fixed: number | undefined;
  readonly watts: number | undefined;
  readonly blocks: boolean;
  /** What is straight in it, summed: ohms and constant drops; and the volts that its junctions take beyond their own ohms. */
  readonly ohms: number;
  readonly drop: number;
  readonly bends: readonly ((amps: number) => number)[];
  amps: number;
}

interface Net {
  readonly plan: NetworkPlan;
  readonly lines: readonly Line[];
}

export interface Reckoned extends Reading {
  /** The same as something with a name reads it: at the ambient of its place. */
  readonly at: (name: string) => Reckoned;
  /** Amperes out of each link, into it, and out of each node. */
  readonly links: ReadonlyMap<string, number>;
  readonly inputs: ReadonlyMap<string, number>;
  readonly nodes: ReadonlyMap<string, number>;
  readonly nets: readonly Net[];
  readonly phases: readonly { readonly share: number; readonly at: Reckoned }[];
  /** A link's own figures in this build. */
  readonly figure: (link: Link, key: 'thermal' | 'quiescent') => number;
  /** What it needs between input and output, at what flows through it. */
  readonly dropout: (link: Link) => number;
}

/**
 * Reckons a build with given circuits on.
 *
 * @throws when the voltages do not come to rest
 */
export function reckon(project: Project, on: ReadonlySet<string>, { share, peak = false, adrift }: Build): Reckoned {
  /** Ambient of anything with a name; each place has its own. */
  const ambientOf = (name: string): number => {
    const place = placeOf(project, name);
    return place === undefined
      ? within(project.ambient, share('ambient'))
      : within(project.places.get(place)!, share(`ambient of ${place}`));
  };
  const nets = project.networks.map((plan): Net => {
    const lit = plan.circuits.length === 0 || plan.circuits.some((c) => on.has(c));
    return { plan, lines: plan[lit ? 'on' : 'off'].map((b) => lineOf(b, share, ambientOf(b.circuit), peak)) };
  });
  const volts = new Map<string, number>([[GROUND, 0]]);
  for (const n of project.nodes) volts.set(n.id, n.volts ? within(n.volts, share(`${n.id} volts`)) : 0);
  for (const net of nets) for (const id of net.plan.inner) volts.set(id, 0);
  const inputs = new Map<string, number>();
  const links = new Map<string, number>();
  const nodes = new Map<string, number>();
  const figure = (link: Link, key: 'ohms' | 'contact' | 'volts' | 'quiescent'): number =>
    link[key] === undefined ? 0 : within(link[key], share(`${link.id} ${key}`));
  const curve = (link: Link, key: 'dropout' | 'efficiency', amps: number): number =>
    link[key] === undefined ? 0 : within(curveAt(link[key], Math.max(amps, 0)), share(`${link.id} ${key}`));

  const laws = new Map(
    project.links.flatMap((l) =>
      l.law
        ? [
            [
              l.id,
              [
                junctionAt(l.law.min, ambientOf(l.id)),
                junctionAt(l.law.max, ambientOf(l.id)),
                share(`${l.id} law`),
              ] as const,
            ] as const,
          ]
        : [],
    ),
  );
  const before = new Map<string, { readonly volts: number; readonly amps: number; readonly slope: number }>();
  /** Volts behind a diode, by the slope of what hangs there as it showed in the last two rounds; what flows back is no drop of it. */
  const behindDiode = (link: Link, input: number, amps: number): number => {
    const volts = volted(link.to);
    const last = before.get(link.id);
    const way = last === undefined ? 0 : volts - last.volts;
    const slope = last === undefined ? 0 : Math.abs(way) > 1e-9 ? Math.max((amps - last.amps) / way, 0) : last.slope;
    before.set(link.id, { volts, amps, slope });
    const drop = (at: number): number => {
      const passed = amps + slope * (at - volts);
      return passed > 0 ? mixed(...laws.get(link.id)!, passed) : 0;
    };
    if (slope === 0) return input - drop(volts);
    const over = (at: number): number => at + drop(at) - input;
    return crossing(over, input - 2, input, over(input - 2), over(input), 1e-13);
  };
  const volted = (node: string): number => volts.get(node)!;
  const handDown = (link: Link): number => {
    const input = volts.get(link.from)!;
    const amps = links.get(link.id) ?? 0;
    switch (link.kind) {
      case 'wire':
        return input;
      case 'fuse':
      case 'limiter':
      case 'switch':
        return input - amps * figure(link, 'ohms');
      case 'cable':
        return input - amps * (figure(link, 'ohms') * copperFactor(ambientOf(link.id), 20) + figure(link, 'contact'));
      case 'diode':
        return behindDiode(link, input, amps);
      case 'linear-regulator':
        return Math.min(figure(link, 'volts'), Math.max(input - curve(link, 'dropout', amps), 0));
      case 'switching-regulator':
        return input > 0 ? figure(link, 'volts') : 0;
    }
  };
  const taken = (link: Link, out: number): number => {
    if (link.kind === 'linear-regulator') return out + figure(link, 'quiescent');
    if (link.kind !== 'switching-regulator') return out;
    return (
      (volts.get(link.to)! * out) / (curve(link, 'efficiency', out) * volts.get(link.from)!) + figure(link, 'quiescent')
    );
  };

  for (let round = 0; ; round++) {
    if (round === 300) throw new Error('the second reckoning does not come to rest');
    let moved = 0;
    for (const link of project.links) {
      const next = handDown(link);
      const known = volts.get(link.to)!;
      moved = Math.max(moved, Math.abs(next - known));
      // What hangs on a rail answers to its voltage: should that swing, the steps get shorter.
      volts.set(link.to, round < 30 ? next : known + 0.5 * (next - known));
    }
    for (const net of nets) solve(net, volts);
    nodes.clear();
    for (const n of project.nodes) nodes.set(n.id, 0);
    const book = (node: string, amps: number): void => {
      if (nodes.has(node)) nodes.set(node, nodes.get(node)! + amps);
    };
    for (const net of nets)
      for (const { plan, amps } of net.lines) {
        book(plan.from, amps);
        book(plan.to, -amps);
      }
    for (const link of project.links.toReversed()) {
      const out = nodes.get(link.to)!;
      links.set(link.id, out);
      inputs.set(link.id, taken(link, out));
      book(link.from, inputs.get(link.id)!);
    }
    if (moved < 1e-11) break;
  }

  const place = new Map<string, { line: Line; element: Element }>();
  for (const net of nets)
    for (const line of net.lines)
      for (const element of line.elements) place.set(element.member.part, { line, element });
  const across = (part: string): number => {
    const at = place.get(part);
    if (at === undefined) return 0;
    return at.element.amps === undefined ? at.element.volts(at.line.amps) : left(at.line, volts);
  };
  /** The parts of a period: what is on in one began before it and is not over yet. */
  const phases = (): Reckoned['phases'] => {
    const duties = project.circuits.flatMap(({ id, pulses, type }) =>
      pulses && pulses.slow !== true && type !== 'relay-board' && on.has(id)
        ? [
            {
              id,
              begins: adrift ? share(`${trainOf(id)} begins`) : 0,
              duty: within(pulses.duty, share(`${id} duty`)),
            },
          ]
        : [],
    );
    const edges = [...new Set([0, ...duties.flatMap(({ begins, duty }) => [begins, (begins + duty) % 1]), 1])].sort(
      (a, b) => a - b,
    );
    return edges.slice(1).map((end, k) => {
      const middle = (edges[k]! + end) / 2;
      const over = new Set(duties.flatMap(({ id, begins, duty }) => ((middle - begins + 1) % 1 < duty ? [] : [id])));
      const left = new Set([...on].filter((id) => !over.has(id)));
      return { share: end - edges[k]!, at: over.size === 0 ? reckoned : reckon(project, left, { share, peak }) };
    });
  };
  /** What hangs on one pin pulses together. */
  const trainOf = (id: string): string =>
    project.networks
      .filter(({ circuits }) => circuits.includes(id))
      .reduce((first, { circuits }) => {
        const [least] = [...circuits, first].sort();
        return least!;
      }, id);
  let parted: Reckoned['phases'] | undefined;
  const reckoned: Reckoned = {
    duty: (circuit) => {
      const pulses = project.circuits.find((c) => c.id === circuit)?.pulses;
      return pulses && pulses.slow !== true ? within(pulses.duty, share(`${circuit} duty`)) : 1;
    },
    get phases() {
      return (parted ??= phases());
    },
    ambient: within(project.ambient, share('ambient')),
    ambientOf,
    at: (name) => ({
      ...reckoned,
      ambient: ambientOf(name),
      phases: reckoned.phases.map(({ share: part, at }) => ({
        share: part,
        at: at === reckoned ? { ...reckoned, ambient: ambientOf(name) } : at.at(name),
      })),
    }),
    typical: false,
    held: (part) => place.get(part)?.element.held,
    peak: peak === true,
    links,
    inputs,
    nodes,
    nets,
    dropout: (link) => curve(link, 'dropout', links.get(link.id) ?? 0),
    figure: (link, key) =>
      key === 'thermal' ? within(link.heat!.thermal, share(`${link.id} thermal`)) : figure(link, key),
    current: (part) => place.get(part)?.line.amps ?? 0,
    across,
    ohms: (part) => place.get(part)?.element.ohms ?? 0,
    voltage: (node) => volts.get(node)!,
    // No capacitors are reckoned with here.
    heldAt: (node) => volts.get(node)!,
    groundAt: (node) => {
      const feed = project.links.find((l) => l.to === node);
      if (feed === undefined) return 0;
      const drop = (feed.returns ?? 0) * (volts.get(feed.from)! - volts.get(feed.to)!);
      return drop + reckoned.groundAt(feed.from);
    },
    voltsAt: (part, amps) => {
      const line = place.get(part)?.line;
      if (line === undefined) return 0;
      const { plan, lines } = nets.find((net) => net.lines.includes(line))!;
      const moved = new Map(volts);
      const others = lines.map((l): Line => (l === line ? { ...l, fixed: amps } : { ...l }));
      solve({ plan, lines: others }, moved);
      return moved.get(line.plan.from)! - moved.get(line.plan.to)!;
    },
    branch: (part): SolvedBranch | undefined => {
      const line = place.get(part)?.line;
      if (line === undefined) return undefined;
      const { from, to } = line.plan;
      const members = line.elements.map(({ member, ohms }) => ({ member, ohms, volts: across(member.part) }));
      return {
        from: { node: from, volts: volts.get(from)! },
        to: { node: to, volts: volts.get(to)! },
        amps: line.amps,
        members,
      };
    },
  };
  return reckoned;
}

const left = (line: Line, volts: ReadonlyMap<string, number>): number =>
  line.elements.reduce(
    (rest, e) => rest - (e.amps === undefined ? e.volts(line.amps) : 0),
    volts.get(line.plan.from)! - volts.get(line.plan.to)!,
  );

/** What a chopper holds, each of its figures by itself; copper in proportion to the degrees above -234.5 °C. */
function heldIn(part: string, held: HeldCurrent, share: Build['share'], ambient: number): Held {
  const rise = within(held.rise, share(`${part} rise`));
  return {
    windings: held.windings,
    amps: within(held.amps, share(`${part} current`)),
    ohms: (within(held.ohms, share(`${part} winding`)) * (234.5 + ambient + rise)) / (234.5 + held.copper),
    bridge: within(held.bridge, share(`${part} bridge`)),
    shaft: within(held.shaft, share(`${part} shaft`)),
  };
}

/** Ohms of a lamp's leads. */
const LEADS = 1e-6;

/** The forward law between two others, by voltage. */
const mixed = (low: Junction, high: Junction, share: number, amps: number): number =>
  share === 0
    ? junctionVoltage(low, amps)
    : share === 1
      ? junctionVoltage(high, amps)
      : junctionVoltage(low, amps) * (1 - share) + junctionVoltage(high, amps) * share;

function lineOf(plan: BranchPlan, share: Build['share'], ambient: number, peak: boolean | 'rms'): Line {
  const elements = plan.members.map((member): Element => {
    const at = share(nameOf(member, plan));
    switch (member.kind) {
      case 'resistance':
      case 'pin': {
        const copper =
          member.kind === 'resistance' && member.copper !== undefined ? copperFactor(ambient, member.copper) : 1;
        const bypass = member.kind === 'resistance' ? member.bypass : undefined;
        const left = bypass === undefined || !peak ? 1 : peak === 'rms' ? bypass.second : 1e-6;
        const ohms = within(member.ohms, at) * copper * left;
        return { member, ohms, volts: (amps) => ohms * amps, blocks: false };
      }
      case 'drop': {
        const drop = within(member.volts, at);
        return { member, ohms: 0, volts: (amps) => (amps > 0 ? drop : 0), blocks: drop > 0 };
      }
      case 'junction': {
        const [low, high] = [junctionAt(member.law.min, ambient), junctionAt(member.law.max, ambient)];
        const ohms = low.series * (1 - at) + high.series * at;
        const volts = (amps: number): number => mixed(low, high, at, amps);
        return { member, ohms, volts, blocks: true, bend: (amps) => volts(amps) - ohms * amps };
      }
      case 'curve': {
        const points = member.points.map((p) => [p.amps, within(p.volts, at)] as const);
        const volts = (amps: number): number => {
          const k = Math.max(Math.min(points.findIndex(([next]) => next > amps) - 1, points.length - 2), -1);
          const [a, b] = k < 0 ? points.slice(-2) : points.slice(k, k + 2);
          return b === undefined ? a![1] : a![1] + ((b[1] - a![1]) * (amps - a![0])) / (b[0] - a![0]);
        };
        const foot = points[0]![1];
        return {
          member,
          ohms: 0,
          volts: (amps) => (amps > 0 ? volts(amps) : 0),
          blocks: true,
          bend: (amps) => volts(amps) - foot,
        };
      }
      case 'filament': {
        const times = (peak === 'rms' ? member.cold?.second : peak ? member.cold?.peak : undefined) ?? 1;
        const amps = within(member.amps, at) * times;
        if (peak === true && member.cold) {
          const ohms = member.volts / amps;
          return { member, ohms, volts: (i) => ohms * i, blocks: false };
        }
        const volts = (i: number): number => Math.sign(i) * member.volts * (Math.abs(i) / amps) ** (1 / 0.55);
        // Leads and holder; without them nothing would bound the current of a lamp straight on a supply.
        const most = (u: number): number => amps * (u / member.volts) ** 0.55;
        return { member, ohms: LEADS, volts, blocks: true, bend: (i) => volts(i) - LEADS * i, most };
      }
      case 'power': {
        const held = member.held && heldIn(member.part, member.held, share, ambient);
        const watts = held
          ? held.windings * held.amps * held.amps * (held.ohms + held.bridge) + held.shaft
          : within(member.watts, at);
        return { member, ohms: 0, volts: () => 0, blocks: true, watts, amps: 0, ...(held && { held }) };
      }
      case 'current': {
        const more = peak === 'rms' ? member.second : peak ? member.peak : undefined;
        const amps = more === undefined ? within(member.amps, at) : Math.max(more, member.amps.max);
        return { member, ohms: 0, volts: () => 0, blocks: true, amps };
      }
    }
  });
  return {
    plan,
    elements,
    fixed: elements.find((e) => e.amps !== undefined && e.watts === undefined)?.amps,
    watts: elements.find((e) => e.watts !== undefined)?.watts,
    blocks: elements.some((e) => e.blocks),
    ohms: elements.reduce((sum, e) => sum + e.ohms, 0),
    drop: elements.reduce((sum, e) => {
      if (e.member.kind === 'curve') return sum + e.volts(Number.MIN_VALUE);
      return sum + (e.member.kind === 'drop' ? e.volts(1) : 0);
    }, 0),
    bends: elements.flatMap((e) => (e.bend ? [e.bend] : [])),
    amps: 0,
  };
}

/** Current through a line at a voltage. */
function through(line: Line, volts: number): number {
  if (line.fixed !== undefined) return volts > 0 ? line.fixed : 0;
  if (line.watts !== undefined) {
    // P = I (U - R I), by its smaller solution.
    const u = Math.max(volts - line.drop, 2 * Math.sqrt(line.watts * line.ohms));
    return volts > 0 ? (2 * line.watts) / (u + Math.sqrt(Math.max(u * u - 4 * line.watts * line.ohms, 0))) : 0;
  }
  if (!line.blocks) return volts / line.ohms;
  if (volts <= line.drop) return 0;
  const highest = line.elements.reduce(
    (amps, e) => (e.most ? Math.min(amps, e.most(volts - line.drop)) : amps),
    (volts - line.drop) / line.ohms,
  );
  const over = (amps: number): number => {
    let sum = line.ohms * amps + line.drop - volts;
    for (const bend of line.bends) sum += bend(amps);
    return sum;
  };
  return line.bends.length === 0
    ? highest
    : crossing(over, 0, highest, line.drop - volts, over(highest), 1e-13 * highest);
}

/** A network at given voltages of its outer nodes: each inner node in turn is put where its currents balance. */
function solve({ plan, lines }: Net, volts: Map<string, number>): void {
  const flow = (line: Line): number => through(line, volts.get(line.plan.from)! - volts.get(line.plan.to)!);
  if (plan.inner.length > 0) {
    const touching = plan.inner.map((id) => lines.filter((l) => l.plan.from === id || l.plan.to === id));
    const outer = lines
      .flatMap((l) => [l.plan.from, l.plan.to])
      .filter((id) => !plan.inner.includes(id))
      .map((id) => volts.get(id)!);
    const [floor, roof] = [Math.min(...outer), Math.max(...outer)];
    for (let round = 0; round < 200; round++) {
      let moved = 0;
      plan.inner.forEach((id, k) => {
        const known = volts.get(id)!;
        const lost = (at: number): number => {
          volts.set(id, at);
          return touching[k]!.reduce((sum, l) => sum + (l.plan.to === id ? -flow(l) : flow(l)), 0);
        };
        const [low, high] = [lost(floor), lost(roof)];
        volts.set(id, low >= 0 ? floor : high <= 0 ? roof : crossing(lost, floor, roof, low, high, 1e-13));
        moved = Math.max(moved, Math.abs(volts.get(id)! - known));
      });
      if (plan.inner.length === 1 || moved < 1e-12) break;
    }
  }
  for (const line of lines) line.amps = flow(line);
}

/** Where a rising function crosses zero between two arguments, by false position with the stuck end's weight halved. */
function crossing(
  f: (x: number) => number,
  from: number,
  to: number,
  below: number,
  above: number,
  near: number,
): number {
  let [low, high, under, over] = [from, to, below, above];
  let stuck = 0;
  for (let k = 0; k < 200 && high - low > near; k++) {
    const x = k % 8 === 7 ? (low + high) / 2 : low - ((high - low) * under) / (over - under);
    const y = f(x);
    if (y === 0) return x;
    if (y < 0) {
      if (x - low < near / 4 && k > 8) return x;
      [low, under] = [x, y];
      if (stuck < 0) over /= 2;
      stuck = -1;
    } else {
      if (high - x < near / 4 && k > 8) return x;
      [high, over] = [x, y];
      if (stuck > 0) under /= 2;
      stuck = 1;
    }
  }
  return (low + high) / 2;
}

/** Numbers between 0 and 1 in an order that a seed fixes (mulberry32). */
export function dice(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let t = Math.imul(state ^ (state >>> 15), 1 | state);
    t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t;
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  };
}

/** A build with every figure somewhere in its range, or, as often, at an end. */
export function buildAtRandom(random: () => number): Build {
  const shares = new Map<string, number>();
  return {
    share: (figure) => {
      let share = shares.get(figure);
      if (share === undefined) {
        share = random() < 0.5 ? Math.round(random()) : random();
        shares.set(figure, share);
      }
      return share;
    },
  };
}
