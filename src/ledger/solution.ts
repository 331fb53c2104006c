/**
 * A solution: one mode at one corner. The supply tree is swept back (currents summed towards the supplies) and forth
 * (voltages handed down) until nothing moves; each sweep carries the slope of what hangs on a node along with its current,
 * which makes it Newton's method on a radial tree.
 */
import { junctionAt, junctionVoltage } from '../circuit/junction.js';
import { solveNetwork } from '../circuit/network.js';
import { switcherInput } from '../circuit/switcher.js';
import type { Reading, SolvedBranch } from '../loads/plan.js';
import type { Link } from '../project/project.js';
import type { Circuitry, FittedNetwork } from './circuitry.js';
import { fit, spread } from './circuitry.js';
import type { Corner, End } from './corner.js';
import { ambientOf, atEnd } from './corner.js';

/** Which circuits are on, and which of them are in question. */
export interface Moment {
  /** Name of the mode. */
  readonly mode: string;
  /** 1 for each circuit that is on. */
  readonly on: Uint8Array;
  /** The state is a proven bound: it may be worse than any state that can really be. */
  readonly bound?: true;
}

/** A network's solved currents. */
interface Flows {
  readonly fitted: FittedNetwork;
  readonly volts: Float64Array;
  readonly currents: Float64Array;
  readonly conductances: Float64Array;
}

/** Sweeps stop when no node moves by more than this, volts. */
const SETTLED = 1e-13;
const MOST_SWEEPS = 200;

export class Solution implements Reading {
  readonly circuitry: Circuitry;
  readonly moment: Moment;
  readonly corner: Corner;
  readonly ambient: number;
  /** Volts by node number; ground is 0. */
  readonly volts: Float64Array;
  /** Amperes out of each link, by link number; meaningful once settled. */
  readonly linkCurrents: Float64Array;
  /** Amperes into each link: what a regulator takes is more than it gives. */
  readonly linkInputs: Float64Array;
  private readonly flows: (Flows | undefined)[];
  private readonly focus: Uint8Array;

  constructor(circuitry: Circuitry, moment: Moment, corner: Corner, focus: Uint8Array, volts: Float64Array) {
    this.circuitry = circuitry;
    this.moment = moment;
    this.corner = corner;
    this.focus = focus;
    this.ambient = ambientOf(circuitry.project.ambient, corner);
    this.volts = volts;
    this.flows = new Array<undefined>(circuitry.networks.length).fill(undefined);
    this.linkCurrents = new Float64Array(circuitry.project.links.length);
    this.linkInputs = new Float64Array(circuitry.project.links.length);
  }

  get typical(): boolean {
    return this.corner.load === 'typ';
  }

  get peak(): boolean {
    return this.corner.load === 'peak';
  }

  /** Whether a network is on in this moment. */
  isOn(network: number): boolean {
    const { circuits } = this.circuitry.networks[network]!;
    return circuits.length === 0 || circuits.some((c) => this.moment.on[c] === 1);
  }

  /** The network solved at the nodes' present voltages. */
  network(number: number): Flows {
    const known = this.flows[number];
    if (known !== undefined) return known;
    const index = this.circuitry.networks[number]!;
    const { load, control, rest, ambient } = this.corner;
    const inQuestion = index.circuits.some((c) => this.focus[c] === 1);
    const lean = inQuestion ? (index.plan.side === 'control' ? control : load) : rest;
    // All pins of a chip have one output resistance a level: that of the circuits in question.
    const fitted = fit(index, this.isOn(number), lean, control, ambient, this.ambient);
    const volts = new Float64Array(fitted.inner + fitted.boundary.length);
    let middle = 0;
    for (let k = 0; k < fitted.boundary.length; k++) {
      const v = this.volts[fitted.boundary[k]!]!;
      volts[fitted.inner + k] = v;
      middle += v / fitted.boundary.length;
    }
    volts.fill(middle, 0, fitted.inner);
    const currents = new Float64Array(fitted.edges.length);
    const conductances = new Float64Array(fitted.edges.length);
    solveNetwork(fitted.inner, fitted.edges, volts).forEach((flow, k) => {
      currents[k] = flow.current;
      conductances[k] = flow.conductance;
    });
    return (this.flows[number] = { fitted, volts, currents, conductances });
  }

  /** Sweeps the supply tree until it is at rest. @throws when it never is, which a tree that can feed its loads cannot do */
  settle(): this {
    const { links } = this.circuitry.project;
    const drawn = new Float64Array(this.volts.length);
    const slopes = new Float64Array(this.volts.length);
    for (let sweep = 0; sweep < MOST_SWEEPS; sweep++) {
      this.collect(drawn, slopes);
      for (let k = links.length - 1; k >= 0; k--) this.sweepBack(links[k]!, k, drawn, slopes);
      let moved = 0;
      for (const [k, link] of links.entries()) {
        const to = this.node(link.to);
        const volts = this.outputOf(link, k, to, drawn[to]!, slopes[to]!);
        moved = Math.max(moved, Math.abs(volts - this.volts[to]!));
        this.volts[to] = volts;
      }
      if (moved <= SETTLED) return this;
      this.flows.fill(undefined);
    }
    throw new Error(`the supply tree did not come to rest in mode '${this.moment.mode}'`);
  }

  private node(id: string): number {
    return this.circuitry.nodeIndex.get(id)!;
  }

  /** Sums what the networks draw from each node, and how that rises with the node's voltage. */
  private collect(drawn: Float64Array, slopes: Float64Array): void {
    drawn.fill(0);
    slopes.fill(0);
    for (let n = 0; n < this.circuitry.networks.length; n++) {
      const { fitted, currents, conductances } = this.network(n);
      fitted.edges.forEach((edge, k) => {
        if (edge.from >= fitted.inner) {
          const node = fitted.boundary[edge.from - fitted.inner]!;
          drawn[node]! += currents[k]!;
          slopes[node]! += conductances[k]!;
        }
        if (edge.to >= fitted.inner) {
          const node = fitted.boundary[edge.to - fitted.inner]!;
          drawn[node]! -= currents[k]!;
          slopes[node]! += conductances[k]!;
        }
      });
    }
  }

  private sweepBack(link: Link, k: number, drawn: Float64Array, slopes: Float64Array): void {
    const [from, to] = [this.node(link.from), this.node(link.to)];
    const out = drawn[to]!;
    this.linkCurrents[k] = out;
    let taken = out;
    let slope = slopes[to]!;
    if (link.kind === 'linear-regulator') {
      taken += this.own(link.quiescent);
      if (this.regulates(link)) slope = 0;
    } else if (link.kind === 'switching-regulator') {
      const input = Math.max(this.volts[from]!, 0.1);
      taken = switcherInput(this.volts[to]!, out, this.efficiency(link), input, this.own(link.quiescent));
      slope = 0;
    } else if (link.kind === 'fuse') slope /= 1 + this.fuseOhms(link) * slope;
    this.linkInputs[k] = taken;
    drawn[from]! += taken;
    slopes[from]! += slope;
  }

  /** Voltage that a link hands down, with the load's slope taken into account. */
  private outputOf(link: Link, k: number, to: number, drawn: number, slope: number): number {
    const input = this.volts[this.node(link.from)]!;
    switch (link.kind) {
      case 'wire':
        return input;
      case 'fuse': {
        const ohms = this.fuseOhms(link);
        return (input - ohms * (drawn - slope * this.volts[to]!)) / (1 + ohms * slope);
      }
      case 'diode':
        return input - this.diodeDrop(link, this.linkCurrents[k]!);
      case 'linear-regulator':
        return Math.min(this.setPoint(link), Math.max(input - this.dropout(link), 0));
      case 'switching-regulator':
        return input > 0 ? this.setPoint(link) : 0;
      default:
        return link.kind satisfies never;
    }
  }

  /** Whether a linear regulator has the voltage it needs. */
  regulates(link: Link): boolean {
    return this.volts[this.node(link.from)]! - this.dropout(link) >= this.setPoint(link);
  }

  private end(link: Link, otherwise: End): End {
    const { apart } = this.corner;
    return apart?.ids.has(link.id) ? apart.end : otherwise;
  }

  private fuseOhms(link: Link): number {
    return atEnd(link.ohms!, this.corner.losses);
  }

  private setPoint(link: Link): number {
    return atEnd(link.volts!, this.end(link, this.corner.outputs));
  }

  private dropout(link: Link): number {
    return link.dropout === undefined ? 0 : atEnd(link.dropout, this.corner.losses);
  }

  /** A regulator's own current, amperes. */
  ownCurrent(link: Link): number {
    return this.own(link.quiescent);
  }

  private own(amps: Link['quiescent']): number {
    if (amps === undefined) return 0;
    const { rest } = this.corner;
    return rest === 'typ' ? amps.typ : rest === 'low' ? amps.min : amps.max;
  }

  private efficiency(link: Link): number {
    return atEnd(link.efficiency!, this.corner.rest === 'typ' ? 'typ' : this.corner.rest === 'low' ? 'high' : 'low');
  }

  private diodeDrop(link: Link, current: number): number {
    const lean = this.corner.losses === 'typ' ? 'typ' : this.corner.losses === 'low' ? 'high' : 'low';
    return junctionVoltage(junctionAt(spread(link.law!, lean), this.ambient), current);
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
    const { ohms, drop, junction, member } = at.flows.fitted.members[at.branch]![at.member]!;
    const current = at.flows.currents[at.branch]!;
    if (member.kind === 'current') return this.left(at.flows, at.branch);
    return ohms * current + (current > 0 ? drop : 0) + (junction === undefined ? 0 : junctionVoltage(junction, current));
  }

  /** What is left of a branch's voltage for a load that takes its current whatever it gets. */
  private left(flows: Flows, branch: number): number {
    const { edges, members } = flows.fitted;
    const current = flows.currents[branch]!;
    const whole = flows.volts[edges[branch]!.from]! - flows.volts[edges[branch]!.to]!;
    return members[branch]!.reduce((rest, m) => {
      if (m.member.kind === 'current') return rest;
      return rest - m.ohms * current - m.drop - (m.junction === undefined ? 0 : junctionVoltage(m.junction, current));
    }, whole);
  }

  ohms(part: string): number {
    const at = this.locate(part);
    return at === undefined ? 0 : at.flows.fitted.members[at.branch]![at.member]!.ohms;
  }

  voltage(node: string): number {
    const number = this.circuitry.nodeIndex.get(node);
    if (number !== undefined) return this.volts[number]!;
    const network = this.circuitry.networks.findIndex((n) => n.plan.inner.includes(node));
    if (network < 0) throw new Error(`no node '${node}'`);
    return this.network(network).volts[this.circuitry.networks[network]!.plan.inner.indexOf(node)]!;
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
      members: fitted.members[at.branch]!.map(({ member, ohms, drop, junction }) => ({
        member,
        ...(member.kind === 'resistance' || member.kind === 'pin' ? { ohms } : {}),
        volts:
          member.kind === 'current'
            ? this.left(at.flows, at.branch)
            : ohms * amps + drop + (junction === undefined ? 0 : junctionVoltage(junction, amps)),
      })),
    };
  }
}
