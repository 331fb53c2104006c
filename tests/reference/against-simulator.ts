/** A solution of the ledger held against the simulator: what flows in every branch and link, and where every node stands. */
import type { Solution } from '../../src/ledger/solution.js';
import { GROUND } from '../../src/loads/branch-plan.js';
import { figuresIn } from './corner-figures.js';
import { branchesOf, netlistOf } from './netlist.js';
import type { Simulator } from './simulator.js';

/** One figure of a solution beside the simulator's. */
export interface Compared {
  readonly what: string;
  readonly told: number;
  readonly simulated: number;
}

/** Amperes: a node at which no more than that flows stands where leakage leaves it. */
const TRACE = 1e-6;

/** @param figures those of the solution's corner, unless said */
export async function compare(
  engine: Simulator,
  s: Solution,
  figures = figuresIn(s.circuitry.project, s.corner, s.focus),
): Promise<readonly Compared[]> {
  const { project, links } = s.circuitry;
  const on = new Set(project.circuits.flatMap((c, k) => (s.moment.on[k] === 1 ? [c.id] : [])));
  // Sources that are joined by diodes do not share in the books: what is held off is not there.
  const netlist = netlistOf({ ...project, links: project.links.filter((l) => !s.isHeldOff(l)) }, on, figures);
  const point = await engine.solve(netlist.lines);
  const volts = (id: string): Compared => ({
    what: `volts of ${id}`,
    told: id === GROUND ? 0 : s.voltage(id),
    simulated: point.volts(netlist.node(id)),
  });
  const compared: Compared[] = project.nodes.map(({ id }) => volts(id));
  project.networks.forEach(({ inner }, n) => {
    const carrying = new Set<string>();
    branchesOf(project, n, on).forEach((branch, b) => {
      const amps = point.amps(netlist.branches[n]![b]!);
      const told = s.network(n).currents[b]!;
      compared.push({
        what: `amperes from ${branch.from} to ${branch.to} through ${branch.members.map((m) => m.part).join(', ')}`,
        told,
        simulated: amps,
      });
      if (Math.abs(amps) > TRACE) for (const id of [branch.from, branch.to]) carrying.add(id);
    });
    for (const id of inner) if (carrying.has(id)) compared.push(volts(id));
  });
  // A question about a few circuits is not asked what flows in the tree.
  if (s.focus.networks.length === 0)
    links.forEach(({ link }, k) => {
      if (s.isHeldOff(link)) return;
      compared.push({
        what: `amperes out of ${link.id}`,
        told: s.linkCurrents[k]!,
        simulated: point.amps(netlist.links.get(link.id)!),
      });
    });
  return compared;
}
