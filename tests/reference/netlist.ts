/**
 * A resolved project as a netlist for a circuit simulator: every member of every branch an element of its own, every link of
 * the supply tree a part, and a source of 0 V in each branch and link to read its current by.
 */
import type { Junction } from '../../src/circuit/junction.js';
import type { BranchPlan, Member } from '../../src/loads/branch-plan.js';
import { GROUND } from '../../src/loads/branch-plan.js';
import type { Project } from '../../src/project/project.js';
import type { Link } from '../../src/project/tree-plan.js';
import type { Figures } from './corner-figures.js';
import { THERMAL } from './simulator.js';

export interface Netlist {
  readonly lines: readonly string[];
  /** The simulator's name of a node of the project, inner nodes included. */
  readonly node: (id: string) => string;
  /** Names of the sources that carry a branch's current, by number of network and branch. */
  readonly branches: readonly (readonly string[])[];
  /** The same for what comes out of each link, by id. */
  readonly links: ReadonlyMap<string, string>;
}

/** Branches of a network in a state of the circuits. */
export const branchesOf = (project: Project, network: number, on: ReadonlySet<string>): readonly BranchPlan[] => {
  const plan = project.networks[network]!;
  return plan[plan.circuits.length === 0 || plan.circuits.some((c) => on.has(c)) ? 'on' : 'off'];
};

export function netlistOf(project: Project, on: ReadonlySet<string>, figures: Figures): Netlist {
  const lines: string[] = [];
  const nodes = new Map([[GROUND, '0']]);
  let made = 0;
  const fresh = (letter: string): string => `${letter}${++made}`;
  const node = (id: string): string => {
    if (!nodes.has(id)) nodes.set(id, fresh('n'));
    return nodes.get(id)!;
  };
  /** A source of 0 V from one node to another, by whose name its current is read. */
  const meter = (from: string, to: string): string => {
    const name = fresh('v');
    lines.push(`${name} ${from} ${to} 0`);
    return name;
  };
  const resistance = (from: string, to: string, ohms: number): void => {
    // To the simulator a resistance of nothing is a milliohm.
    lines.push(ohms > 0 ? `${fresh('r')} ${from} ${to} ${ohms}` : `${fresh('v')} ${from} ${to} 0`);
  };
  /** @param name what it belongs to: its ambient counts */
  const junction = (name: string, from: string, to: string, law: Junction): void => {
    const { slope, saturation } = warmed(law, figures.ambient(name));
    const model = fresh('m');
    lines.push(`.model ${model} D(IS=${saturation} N=${slope / THERMAL} RS=${law.series})`);
    lines.push(`${fresh('d')} ${from} ${to} ${model}`);
  };

  const fed = new Set(project.links.map((l) => l.to));
  const alive = living(project);
  for (const n of project.nodes)
    if (n.volts !== undefined) lines.push(`${fresh('v')} ${node(n.id)} 0 ${figures.supply({ ...n, volts: n.volts })}`);
    else if (!fed.has(n.id)) lines.push(`${fresh('v')} ${node(n.id)} 0 0`);

  const links = new Map(project.links.map((l) => [l.id, link(l)]));
  function link(l: Link): string {
    const [from, to, end] = [node(l.from), node(l.to), fresh('n')];
    const out = meter(end, to);
    switch (l.kind) {
      case 'wire':
        lines.push(`${fresh('v')} ${from} ${end} 0`);
        return out;
      case 'fuse':
      case 'limiter':
      case 'switch':
        resistance(from, end, figures.link(l, 'ohms'));
        return out;
      case 'cable': {
        const copper = (figures.link(l, 'ohms') * (234.5 + figures.ambient(l.id))) / (234.5 + 20);
        resistance(from, end, copper + figures.link(l, 'contact'));
        return out;
      }
      case 'diode':
        if (l.law === undefined) {
          // One drop whatever the current, and nothing back: a current with a kink.
          lines.push(`${fresh('b')} ${from} ${end} V = I(${out}) > 1e-12 ? ${figures.link(l, 'drop')} : 0`);
          return out;
        }
        junction(l.id, from, end, figures.diode(l));
        // As in the ledger, it takes nothing off what flows back: rules of their own judge that.
        lines.push(`${fresh('b')} ${end} ${from} I = max(V(${end}, ${from}), 0) / 1e-3`);
        return out;
      case 'linear-regulator':
        lines.push(
          `${fresh('b')} ${end} 0 V = min(${figures.link(l, 'volts')}, max(V(${from}) - max(${ladder(`max(I(${out}), 0)`, figures.linkCurve(l, 'dropout'))}, 0), 0))`,
          `${fresh('f')} ${from} 0 ${out} 1`,
          `${fresh('i')} ${from} 0 ${figures.link(l, 'quiescent')}`,
        );
        return out;
      case 'switching-regulator': {
        const set = alive.has(l.from) ? figures.link(l, 'volts') : 0;
        const efficiency = ladder(`max(I(${out}), 0)`, figures.linkCurve(l, 'efficiency'));
        const up = l.step === 'up' || (l.step === undefined && standing(project, l.from) < l.volts!.typ);
        // One that steps down follows an input that is too low, one that steps up an input that is too high.
        const held =
          l.step === 'both'
            ? `${set}`
            : up
              ? `max(${set}, V(${from}))`
              : `min(${set}, max(V(${from}) - max(${ladder(`max(I(${out}), 0)`, figures.linkCurve(l, 'dropout'))}, 0), 0))`;
        lines.push(
          `${fresh('b')} ${end} 0 V = ${alive.has(l.from) ? held : 0}`,
          `${fresh('b')} ${from} 0 I = V(${end}) * I(${out}) / (min(max(${efficiency}, 0.05), 1) * max(V(${from}), 0.1))`,
          `${fresh('i')} ${from} 0 ${figures.link(l, 'quiescent')}`,
        );
        return out;
      }
      default:
        return l.kind satisfies never;
    }
  }

  const ohmsOf = (network: number, branch: BranchPlan, m: Extract<Member, { kind: 'resistance' | 'pin' }>): number => {
    const ohms = figures.member(network, branch, m);
    // Copper: in proportion to the degrees above -234.5 °C.
    return m.kind === 'pin' || m.copper === undefined
      ? ohms
      : (ohms * (234.5 + figures.ambient(branch.circuit))) / (234.5 + m.copper);
  };
  const element = (
    network: number,
    branch: BranchPlan,
    member: Member,
    [from, to]: readonly [string, string],
    carried: string,
  ): void => {
    switch (member.kind) {
      case 'resistance':
      case 'pin':
        resistance(from, to, ohmsOf(network, branch, member));
        return;
      case 'junction':
        junction(branch.circuit, from, to, figures.junction(network, branch, member));
        return;
      case 'drop':
        lines.push(`${fresh('v')} ${from} ${to} ${figures.member(network, branch, member)}`);
        return;
      case 'curve':
        lines.push(
          `${fresh('b')} ${from} ${to} V = ${ladder(`I(${carried})`, figures.curve(network, branch, member))}`,
        );
        return;
      case 'current':
        // What nothing feeds draws nothing.
        lines.push(
          `${fresh('i')} ${from} ${to} ${alive.has(branch.from) && branch.from !== branch.to ? figures.member(network, branch, member) : 0}`,
        );
        return;
      case 'filament': {
        const amps = figures.member(network, branch, member);
        if (member.cold && figures.isCold(network, branch)) return resistance(from, to, member.volts / amps);
        // The rerating law, solved for the voltage; a microohm keeps its slope at nothing from being none.
        const share = `abs(I(${carried})) / ${amps}`;
        lines.push(
          `${fresh('b')} ${from} ${to} V = sgn(I(${carried})) * ${member.volts} * pow(${share}, ${1 / 0.55}) + 1e-6 * I(${carried})`,
        );
        return;
      }
      case 'power':
        lines.push(
          `${fresh('b')} ${from} ${to} I = ${alive.has(branch.from) ? figures.member(network, branch, member) : 0} / max(V(${from}, ${to}), 1)`,
        );
        return;
      default:
        member satisfies never;
    }
  };
  const inSeries = (network: number, branch: BranchPlan, start: string, carried: string): void => {
    let at = start;
    branch.members.forEach((member, k) => {
      const next = k === branch.members.length - 1 ? node(branch.to) : fresh('n');
      element(network, branch, member, [at, next], carried);
      at = next;
    });
  };
  /** A drop opposes what flows and gives nothing back: it and the resistances beside it as a current with a kink. */
  const oneWay = (network: number, branch: BranchPlan, start: string, carried: string): void => {
    let [ohms, volts] = [0, 0];
    let curve: [number, number][] | undefined;
    for (const member of branch.members)
      if (member.kind === 'drop') volts += figures.member(network, branch, member);
      else if (member.kind === 'curve') curve = figures.curve(network, branch, member);
      else if (member.kind === 'resistance' || member.kind === 'pin') ohms += ohmsOf(network, branch, member);
    if (volts === 0 && curve === undefined) return inSeries(network, branch, start, carried);
    const end = node(branch.to);
    if (curve !== undefined) {
      const across = `V(${start}, ${end})`;
      // The same points seen from the voltage, all else in the branch counted in.
      const points = curve.map(([amps, v]): [number, number] => [volts + v + ohms * amps, amps]);
      const [[foot]] = points as [[number, number]];
      if (points.length === 1) points.push([foot + ohms, 1]);
      lines.push(`${fresh('b')} ${start} ${end} I = ${across} > ${foot} ? ${ladder(across, points)} : 0`);
      return;
    }
    lines.push(`${fresh('b')} ${start} ${end} I = max(V(${start}, ${end}) - ${volts}, 0) / ${ohms}`);
  };
  const branches = project.networks.map((_, network) =>
    branchesOf(project, network, on).map((branch) => {
      const start = fresh('n');
      const carried = meter(node(branch.from), start);
      if (isOneWay(branch)) oneWay(network, branch, start, carried);
      else inSeries(network, branch, start, carried);
      return carried;
    }),
  );
  return { lines, node, branches, links };
}

/** What a node stands at with nothing drawn from it, typically, volts. */
function standing(project: Project, node: string): number {
  const own = project.nodes.find((n) => n.id === node)?.volts?.typ;
  const fed = project.links.filter((l) => l.to === node).map((l) => l.volts?.typ ?? standing(project, l.from));
  return own ?? Math.max(0, ...fed);
}

/** Straight lines through points, the outermost of which go on, as an expression. */
function ladder(x: string, points: readonly (readonly [number, number])[]): string {
  const [[x0, y0], second, ...rest] = points as [readonly [number, number], ...(readonly [number, number])[]];
  if (second === undefined) return String(y0);
  const line = `(${y0} + (${x} - ${x0}) * ${(second[1] - y0) / (second[0] - x0)})`;
  return rest.length === 0 ? line : `(${x} < ${second[0]} ? ${line} : ${ladder(x, points.slice(1))})`;
}

/** Drops without a junction, which would block by itself, and without a fixed current, which flows one way. */
const isOneWay = ({ members }: BranchPlan): boolean =>
  members.some((m) => m.kind === 'drop' || m.kind === 'curve') &&
  members.every((m) => ['drop', 'curve', 'resistance', 'pin'].includes(m.kind));

/** Nodes that a supply feeds, and the inner nodes of networks. */
function living(project: Project): ReadonlySet<string> {
  const alive = new Set(project.nodes.flatMap((n) => (n.volts ? [n.id] : [])));
  for (const l of project.links) if (alive.has(l.from)) alive.add(l.to);
  for (const n of project.networks) for (const id of n.inner) alive.add(id);
  return alive;
}

/**
 * A junction at a temperature in °C: its slope goes with the absolute temperature, its voltage at the current of reference
 * with its coefficient, and its saturation current follows from both.
 */
function warmed(law: Junction, celsius: number): { readonly slope: number; readonly saturation: number } {
  const { slope: cold, logSaturation, referenceCurrent: amps, perKelvin, referenceTemperature: reference } = law;
  const slope = (cold * (celsius + 273.15)) / (reference + 273.15);
  const volts = cold * Math.log1p(amps / Math.exp(logSaturation)) + perKelvin * (celsius - reference);
  return { slope, saturation: amps / Math.expm1(volts / slope) };
}
