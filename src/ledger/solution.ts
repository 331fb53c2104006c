/**
 * A solution: one mode at one corner, as the sweep left it, and what is read off it: currents, volts, branches as they were
 * solved.
 */
import { branchConductance } from '../circuit/branch.js';
import { solveNetwork } from '../circuit/network.js';
import type { Held, Reading, SolvedBranch } from '../loads/account-plan.js';
import type { Member } from '../loads/branch-plan.js';
import type { Link } from '../project/tree-plan.js';
import type { Interval } from '../quantity/interval.js';
import type { Books } from './bookings.js';
import type { End } from './corner.js';
import { voltsAcross } from './fitted.js';
import { cableOf, taken, valueAt } from './fitted-links.js';
import type { FittedLink } from './fitted-links.js';
import { regulates, slopeOhms } from './link-laws.js';
import type { Flows } from './network-flows.js';
import { solved, unsolved } from './network-flows.js';
import type { SolvedPhase } from './phases.js';
import { leastDuty, phasesOf } from './phases.js';
import { heldVoltage } from './reservoirs.js';
import { Sweep } from './sweep.js';

export class Solution extends Sweep implements Reading {
  /** Its books and their sums, written when they are first asked for. */
  books: Books | undefined;
  sums: ReadonlyMap<string, number> | undefined;

  /** The same moment just before the peaks that flow in it; absent where none do, or no capacitor answers to them. */
  before: (() => Solution) | undefined;

  /** The same before what starts in it was switched on; absent where nothing does, or nobody asks how far its supply dips. */
  unstarted: (() => Solution) | undefined;

  /** The same with other circuits on, where something pulses. */
  during: ((on: Uint8Array) => Solution) | undefined;
  private parted: readonly SolvedPhase[] | undefined;

  duty(circuit: string): number {
    return leastDuty(this, circuit);
  }

  get phases(): readonly SolvedPhase[] {
    return (this.parted ??= phasesOf(this));
  }

  get typical(): boolean {
    return this.corner.load === 'typ' && this.corner.build === undefined;
  }

  get peak(): boolean {
    return this.corner.load === 'peak';
  }

  /** The same with the tree's nodes elsewhere, or circuits turned over, and nothing brought to rest: what answers to them. */
  disturbed(volts: readonly number[], moment = this.moment): Solution {
    const moved = new Solution(this.circuitry, moment, this.corner, this.focus, volts, this, true);
    moved.before = this.before;
    moved.unstarted = this.unstarted;
    const { during } = this;
    if (during)
      moved.during = (on) => {
        const phase = during(on);
        return phase.disturbed(phase.volts.map((at, k) => at + volts[k]! - this.volts[k]!));
      };
    return moved;
  }

  // What the tree's questions read.

  /** A link with its figures put in; undefined of a wire, which is no link of its own. */
  private fittedLink(link: Link): FittedLink | undefined {
    const number = this.circuitry.linkIndex.get(link);
    return number === undefined ? undefined : this.links[number];
  }

  /** An uncertain figure as this build has it, or at the corner's end. */
  taken(interval: Interval | undefined, figure: string, end: End): number {
    return taken(this, interval, figure, end);
  }

  /** A cable's resistance: its copper at 20 °C and at its temperature, and its plugs. */
  cableOf(link: Link) {
    return cableOf(this, link);
  }

  /** A regulator's own current, amperes. */
  ownCurrent(link: Link): number {
    return this.fittedLink(link)?.own ?? 0;
  }

  /** Amperes out of a link; undefined of a wire, which is no link of its own. */
  currentOf(link: Link): number | undefined {
    const number = this.circuitry.linkIndex.get(link);
    return number === undefined ? undefined : this.linkCurrents[number];
  }

  /** Amperes that a regulator takes for one that it gives, by its number. */
  gainOf(number: number): number {
    const through = this.linkCurrents[number]!;
    return through === 0 ? 1 : (this.linkInputs[number]! - this.links[number]!.own) / through;
  }

  /** Whether a link is a regulator that has the input it needs to hold its output. */
  regulates(link: Link): boolean {
    const fitted = this.fittedLink(link);
    return fitted !== undefined && regulates(this, fitted);
  }

  /** Volts that a regulator holds where it has the input it needs. */
  setPoint(link: Link): number {
    return this.fittedLink(link)?.holds ?? 0;
  }

  /** Volts that a regulator needs over its output at the current that it gives. */
  dropoutOf(link: Link): number {
    const fitted = this.fittedLink(link);
    return fitted === undefined ? 0 : valueAt(fitted.dropout, this.linkCurrents[fitted.number]!);
  }

  /** Whether another source feeds the node that a link leads to, so that it carries nothing. */
  isHeldOff(link: Link): boolean {
    const number = this.circuitry.linkIndex.get(link);
    return number !== undefined && !this.isLive(number);
  }

  /** Ohms that a link has for small changes of its current. */
  ohmsOf(link: Link): number {
    const fitted = this.fittedLink(link);
    return fitted === undefined ? 0 : slopeOhms(this, fitted, Math.max(this.linkCurrents[fitted.number]!, 0));
  }

  /** What a network draws from each node of the tree in a state, at the voltages of this solution; amperes. */
  drawOf(number: number, on: boolean): readonly { readonly node: string; readonly amps: number }[] {
    const flows =
      on === this.isOn(number)
        ? this.network(number)
        : solved(unsolved(this.fitted(number, on), this.volts), this.volts, this.moving);
    return flows.fitted.plans.flatMap(({ from, to }, k) => [
      { node: from, amps: flows.currents[k]! },
      { node: to, amps: -flows.currents[k]! },
    ]);
  }

  /** How what a network draws from some nodes rises when they all rise, siemens. */
  slopeAt(number: number, nodes: ReadonlySet<string>): number {
    const { fitted, conductances } = this.network(number);
    return fitted.plans.reduce(
      (sum, { from, to }, k) => sum + (nodes.has(from) === nodes.has(to) ? 0 : conductances[k]!),
      0,
    );
  }

  // What accounts read.

  private locate(part: string): { flows: Flows; branch: number; member: number } | undefined {
    const index = this.circuitry.parts.get(part);
    if (index === undefined) throw new Error(`no part '${part}' stands in any circuit`);
    const at = this.isOn(index.network) ? index.on : index.off;
    return at && { flows: this.network(index.network), ...at };
  }

  current(part: string): number {
    const at = this.locate(part);
    return at === undefined ? 0 : at.flows.currents[at.branch]!;
  }

  across(part: string): number {
    const at = this.locate(part);
    if (at === undefined) return 0;
    const fitted = at.flows.fitted.members[at.branch]![at.member]!;
    if (takesWhatIsLeft(fitted.member)) return this.left(at.flows, at.branch);
    return voltsAcross(fitted, at.flows.currents[at.branch]!);
  }

  /** What is left of a branch's voltage for a load that takes its current whatever it gets. */
  private left(flows: Flows, branch: number): number {
    const { edges, members } = flows.fitted;
    const current = flows.currents[branch]!;
    const whole = flows.volts[edges[branch]!.from]! - flows.volts[edges[branch]!.to]!;
    return members[branch]!.reduce((rest, m) => rest - voltsAcross(m, current), whole);
  }

  ohms(part: string): number {
    const at = this.locate(part);
    return at === undefined ? 0 : at.flows.fitted.members[at.branch]![at.member]!.ohms;
  }

  held(part: string): Held | undefined {
    const at = this.locate(part);
    return at && at.flows.fitted.members[at.branch]![at.member]!.held;
  }

  voltage(node: string): number {
    const number = this.circuitry.nodeIndex.get(node);
    if (number !== undefined) return this.volts[number]!;
    const network = this.circuitry.networks.findIndex((n) => n.plan.inner.includes(node));
    if (network < 0) throw new Error(`no node '${node}'`);
    return this.network(network).volts[this.circuitry.networks[network]!.plan.inner.indexOf(node)]!;
  }

  heldAt(node: string): number {
    const before = this.before?.();
    return before === undefined || !this.circuitry.nodeIndex.has(node)
      ? this.voltage(node)
      : heldVoltage(this, before, node);
  }

  /**
   * Volts that what is in series with a part takes at its current, by small-signal resistances: in its own branch, and, no
   * less than it is, in what feeds that.
   */
  voltsBeside(part: string): number {
    const at = this.locate(part);
    if (at === undefined) return 0;
    const { fitted, volts, currents } = at.flows;
    const { from, to, branch } = fitted.edges[at.branch]!;
    const amps = currents[at.branch]!;
    const slope = branchConductance(branch, volts[from]! - volts[to]!, amps);
    const own = slope > 0 ? amps / slope - amps * this.ohms(part) : Infinity;
    const open = (local: number) => this.circuitry.open[fitted.boundary[local - fitted.inner]!];
    const highest = (local: number): number =>
      local >= fitted.inner
        ? (open(local)?.max ?? 0)
        : Math.max(...fitted.boundary.map((_, k) => open(fitted.inner + k)?.max ?? 0));
    const lowest = (local: number): number => (local >= fitted.inner ? (open(local)?.min ?? 0) : 0);
    return own + Math.max(highest(from) - volts[from]!, 0) + Math.max(volts[to]! - lowest(to), 0);
  }

  voltsAt(part: string, amps: number): number {
    const at = this.locate(part);
    if (at === undefined) return 0;
    const { fitted, volts } = at.flows;
    const { from, to } = fitted.edges[at.branch]!;
    const found = volts.slice();
    if (Math.min(from, to) < fitted.inner) {
      const taking = { resistance: 0, drop: 0, junctions: [], current: amps };
      solveNetwork(fitted.inner, fitted.edges.with(at.branch, { from, to, branch: taking }), found);
    }
    return found[from]! - found[to]!;
  }

  groundAt(node: string): number {
    const feeds = (to: string): Link | undefined =>
      this.circuitry.project.links.find((l) => l.to === to && !this.isHeldOff(l));
    let volts = 0;
    for (let link = feeds(node); link !== undefined; link = feeds(link.from))
      if (link.returns !== undefined) volts += link.returns * (this.voltage(link.from) - this.voltage(link.to));
    return volts;
  }

  branch(part: string): SolvedBranch | undefined {
    const at = this.locate(part);
    if (at === undefined) return undefined;
    const { fitted, volts, currents } = at.flows;
    const edge = fitted.edges[at.branch]!;
    const plan = fitted.plans[at.branch]!;
    const amps = currents[at.branch]!;
    return {
      from: { node: plan.from, volts: volts[edge.from]! },
      to: { node: plan.to, volts: volts[edge.to]! },
      amps,
      members: fitted.members[at.branch]!.map((m) => ({
        member: m.member,
        ...(m.held && { held: m.held }),
        ...(m.member.kind === 'resistance' || m.member.kind === 'pin' || m.ohms > 0 ? { ohms: m.ohms } : {}),
        volts: takesWhatIsLeft(m.member) ? this.left(at.flows, at.branch) : voltsAcross(m, amps),
      })),
    };
  }
}

/** What draws its current or power whatever it gets: it gets what the others on its branch leave. */
const takesWhatIsLeft = ({ kind }: Member): boolean => kind === 'current' || kind === 'power';
