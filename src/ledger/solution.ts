/**
 * A solution: one mode at one corner. The supply tree is swept back (currents summed towards the supplies) and forth
 * (voltages handed down) until nothing moves; each sweep carries the slope of what hangs on a node along with its current,
 * which makes it Newton's method on a radial tree.
 *
 * A solution about a few circuits stands on one in which they lean like all the others: only their networks are solved
 * anew, the others follow along their tangents. Where the rails move so far that the others bend, their tangents are taken
 * anew, so that what is left out is a millionth; a test holds it against the whole solution.
 */
import { bendAt, branchFlow } from '../circuit/branch.js';
import type { Junction } from '../circuit/junction.js';
import { junctionAt, junctionVoltage } from '../circuit/junction.js';
import { eliminate, solveNetwork } from '../circuit/network.js';
import { switcherInput } from '../circuit/switcher.js';
import type { Reading, SolvedBranch } from '../loads/plan.js';
import type { Link } from '../project/project.js';
import type { Circuitry, FittedNetwork, LinkIndex } from './circuitry.js';
import { fit, spread, zeros } from './circuitry.js';
import type { Corner } from './corner.js';
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

/** The circuits that a corner is about. */
export interface Focus {
  /** 1 for each network of theirs. */
  readonly has: Uint8Array;
  readonly networks: readonly number[];
}

/** A network's solved currents. */
interface Flows {
  readonly fitted: FittedNetwork;
  readonly volts: readonly number[];
  readonly currents: readonly number[];
  readonly conductances: readonly number[];
}

/** A network while the tree is swept: its own nodes' voltages are the next sweep's guess. */
interface Sweeping {
  readonly fitted: FittedNetwork;
  volts: readonly number[] | undefined;
  /** The same for the currents of plain branches, where sweeps are many. */
  readonly currents: number[] | undefined;
}

/** For each node the one that it moves with, where some do not move by themselves. */
type Moving = readonly number[] | undefined;

/** Amperes that tangents may leave out: a rail answers to them by a microvolt. */
const LEFT_OUT = 1e-6;
/** Siemens: what conducts less is switched off. */
const OPEN = 1e-8;
/** Sweeps stop when no node moves by more than this, volts: they converge quadratically, so what is left is its square. */
const SETTLED = 1e-10;
const MOST_SWEEPS = 2000;

export class Solution implements Reading {
  readonly circuitry: Circuitry;
  readonly moment: Moment;
  readonly corner: Corner;
  readonly ambient: number;
  /** Volts by node number; ground is 0. */
  readonly volts: number[];
  /** Amperes out of each link, by link number; meaningful once settled. */
  readonly linkCurrents: number[];
  /** Amperes into each link: what a regulator takes is more than it gives. */
  readonly linkInputs: number[];
  private readonly flows: (Flows | undefined)[];
  private readonly focus: Focus;

  /** What the networks draw from each node, and how that rises with its voltage: kept for those who stand on it. */
  private readonly drawn: number[];
  private readonly slopes: number[];
  private readonly base: Solution | undefined;
  private bent: readonly number[] | undefined;
  private bridging: readonly number[] | undefined;
  private moving: Moving;

  /**
   * @param focus 1 for each circuit in question @param focusNetworks the numbers of their networks
   * @param start first guess of the nodes' volts @param base the solution it stands on, for one about a few circuits
   */
  constructor(circuitry: Circuitry, moment: Moment, corner: Corner, focus: Focus, start: number[], base?: Solution) {
    this.circuitry = circuitry;
    this.moment = moment;
    this.corner = corner;
    this.focus = focus;
    this.ambient = ambientOf(circuitry.project.ambient, corner);
    this.volts = start.slice();
    this.flows = [];
    // One about a few circuits is never asked what flows in the tree, nor stood on.
    const { links, scratch } = circuitry;
    this.linkCurrents = base ? scratch.linkCurrents : zeros(links.length);
    this.linkInputs = base ? scratch.linkInputs : zeros(links.length);
    this.drawn = base ? scratch.others : zeros(start.length);
    this.slopes = base ? scratch.otherSlopes : zeros(start.length);
    this.base = base;
    this.settle();
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

  /** A network's figures in this corner. */
  private fitted(number: number): FittedNetwork {
    const index = this.circuitry.networks[number]!;
    const { load, control, rest, ambient } = this.corner;
    const inQuestion = this.focus.has[number] === 1;
    const lean = inQuestion ? (index.plan.side === 'control' ? control : load) : rest;
    return fit(index, this.isOn(number), lean, inQuestion ? control : rest, ambient, this.ambient);
  }

  /** The network solved at the nodes' present voltages. */
  network(number: number): Flows {
    return (this.flows[number] ??= solved(this.fitted(number), this.volts, this.moving));
  }

  /** Sweeps the supply tree until it is at rest. @throws when it never is, which a tree that can feed its loads cannot do */
  private settle(): void {
    const { links } = this.circuitry;
    const { base, volts } = this;
    const solving: Sweeping[] = [];
    // A tangent tells how a network answers to one rail: what hangs between two is solved anew, too.
    const anew = base && [...this.focus.networks, ...base.bridges().filter((n) => this.focus.has[n] === 0)];
    for (const n of anew ?? this.circuitry.networks.keys()) {
      const fitted = this.fitted(n);
      // Its own nodes stand nearly where they stood in the solution underneath, if it is in the same state.
      const near = base && fitted.inner > 0 && base.isOn(n) === this.isOn(n) ? base.network(n).volts : undefined;
      if (fitted.edges.length > 0) solving.push({ fitted, volts: near, currents: base ? undefined : [] });
    }
    if (anew) base!.without(anew, this.drawn, this.slopes);
    let touching = base?.volts;
    const { drawn, slopes } = this.circuitry.scratch;
    for (let sweep = 0; sweep < MOST_SWEEPS; sweep++) {
      if (touching) {
        for (let k = 0; k < volts.length; k++) {
          drawn[k] = this.drawn[k]! + this.slopes[k]! * (volts[k]! - touching[k]!);
          slopes[k] = this.slopes[k]!;
        }
      } else {
        drawn.fill(0);
        slopes.fill(0);
      }
      this.tie();
      for (const network of solving) collect(network, volts, drawn, slopes, this.moving);
      if (base === undefined) {
        for (let k = 0; k < volts.length; k++) {
          this.drawn[k] = drawn[k]!;
          this.slopes[k] = slopes[k]!;
        }
      }
      for (let k = links.length - 1; k >= 0; k--) this.sweepBack(links[k]!, k, drawn, slopes);
      let moved = 0;
      for (let k = 0; k < links.length; k++) {
        const { to } = links[k]!;
        const next = this.outputOf(links[k]!, drawn[to]!, slopes[to]!);
        moved = Math.max(moved, Math.abs(next - volts[to]!));
        volts[to] = next;
      }
      if (moved > SETTLED) continue;
      if (touching === undefined || this.leftOut(touching) <= LEFT_OUT) return;
      touching = this.touchAnew(anew!);
    }
    throw new Error(`the supply tree did not come to rest in mode '${this.moment.mode}'`);
  }

  /** Finds which nodes move as one: a linear regulator that is out of regulation hands its input's moves on. */
  private tie(): void {
    const { links, count } = this.circuitry;
    let moving: number[] | undefined;
    for (const { link, from, to } of links) {
      if (link.kind !== 'linear-regulator' || this.regulates(link)) continue;
      moving ??= Array.from({ length: count }, (_, k) => k);
      moving[to] = moving[from]!;
    }
    this.moving = moving;
  }

  /** What tangents taken at some voltages leave out at the present ones, amperes. */
  private leftOut(from: readonly number[]): number {
    const bends = this.base!.bends();
    return this.volts.reduce((amps, v, k) => amps + (bends[k]! * (v - from[k]!) ** 2) / 2, 0);
  }

  /** How what the networks draw from each node bends with its voltage, A/V²; no less than it does, for what is inside them. */
  private bends(): readonly number[] {
    if (this.bent !== undefined) return this.bent;
    const bent = zeros(this.volts.length);
    for (let n = 0; n < this.circuitry.networks.length; n++) {
      const { fitted, currents, conductances } = this.network(n);
      let bend = 0;
      for (let k = 0; k < currents.length; k++) bend += bendAt(fitted.edges[k]!.branch, currents[k]!, conductances[k]!);
      if (bend > 0) for (const node of fitted.boundary) bent[node]! += bend;
    }
    this.bent = bent;
    return bent;
  }

  /** Networks that conduct between two nodes of the tree. */
  private bridges(): readonly number[] {
    return (this.bridging ??= [...this.circuitry.networks.keys()].filter((n) => {
      const { boundary } = this.fitted(n);
      if (!boundary.some((node) => node !== 0 && node !== boundary.find((other) => other !== 0))) return false;
      return this.network(n).conductances.some((g) => g > OPEN);
    }));
  }

  /** Takes the tangents of all but some networks at the present voltages, which are returned. */
  private touchAnew(but: readonly number[]): number[] {
    const { drawn, slopes, volts } = this;
    drawn.fill(0);
    slopes.fill(0);
    for (let n = 0; n < this.circuitry.networks.length; n++) {
      if (but.includes(n)) continue;
      collect(
        { fitted: this.fitted(n), volts: this.base!.flows[n]?.volts, currents: [] },
        volts,
        drawn,
        slopes,
        this.moving,
      );
    }
    return volts.slice();
  }

  /** What all but some networks draw, and how it rises. */
  private without(networks: readonly number[], drawn: number[], slopes: number[]): void {
    for (let k = 0; k < drawn.length; k++) {
      drawn[k] = this.drawn[k]!;
      slopes[k] = this.slopes[k]!;
    }
    for (const n of networks) collectSolved(this.network(n), drawn, slopes, this.moving, -1);
  }

  private sweepBack({ link, from, to }: LinkIndex, k: number, drawn: number[], slopes: number[]): void {
    const out = drawn[to]!;
    this.linkCurrents[k] = out;
    let taken = out;
    let slope = slopes[to]!;
    if (link.kind === 'linear-regulator') {
      taken += this.own(link.quiescent);
      if (this.regulates(link)) slope = 0;
    } else if (link.kind === 'switching-regulator') {
      // A source with resistance gives the most at half its voltage; what asks for more makes it collapse.
      const least = (this.circuitry.open[from]?.min ?? 0.2) / 2;
      const input = Math.max(this.volts[from]!, least);
      taken = switcherInput(this.volts[to]!, out, this.efficiency(link), input, this.own(link.quiescent));
      // It takes the same power from less voltage.
      // Newton's step is safe well above that point; near it plain sweeps creep up to the same rest.
      slope = input > 1.3 * least ? -(taken - this.own(link.quiescent)) / input : 0;
    } else slope /= 1 + this.slopeOhms(link, out) * slope;
    this.linkInputs[k] = taken;
    drawn[from]! += taken;
    slopes[from]! += slope;
  }

  /** Voltage that a link hands down, with the load's slope taken into account. */
  private outputOf({ link, from, to }: LinkIndex, drawn: number, slope: number): number {
    const input = this.volts[from]!;
    switch (link.kind) {
      case 'wire':
        return input;
      case 'fuse':
      case 'diode': {
        // A diode that more flows back into than is drawn behind it passes nothing.
        const passed = link.kind === 'fuse' ? drawn : Math.max(drawn, 0);
        const ohms = this.slopeOhms(link, passed);
        const lost =
          ohms * (drawn - passed) + (link.kind === 'fuse' ? ohms * passed : junctionVoltage(this.diode(link), passed));
        // Near collapse, where the slope of a switching regulator outweighs the ohms, plain sweeps are surer.
        const bent = ohms * slope > -0.5 ? ohms * slope : 0;
        return (input - lost + bent * this.volts[to]!) / (1 + bent);
      }
      case 'linear-regulator':
        return Math.min(this.setPoint(link), Math.max(input - this.dropout(link), 0));
      case 'switching-regulator':
        // On a source that collapses it still asks for what its loads take: the books show by how much too much.
        return this.circuitry.open[from] ? this.setPoint(link) : 0;
      default:
        return link.kind satisfies never;
    }
  }

  private fuseOhms(link: Link): number {
    return atEnd(link.ohms!, this.corner.losses);
  }

  private setPoint(link: Link): number {
    return atEnd(link.volts!, this.corner.apart?.get(link.id) ?? this.corner.outputs);
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

  private diode(link: Link): Junction {
    const lean = this.corner.losses === 'typ' ? 'typ' : this.corner.losses === 'low' ? 'high' : 'low';
    return junctionAt(spread(link.law!, lean), this.ambient);
  }

  /** Ohms of what lies in the way, where it carries a current in amperes. */
  private slopeOhms(link: Link, current: number): number {
    if (link.kind === 'fuse') return this.fuseOhms(link);
    const { slope, logSaturation, series } = this.diode(link);
    return series + slope / (current + Math.exp(logSaturation));
  }

  /** Whether a link is a linear regulator with more input than it needs for its output. */
  regulates(link: Link): boolean {
    const input = this.volts[this.circuitry.nodeIndex.get(link.from)!]!;
    return link.kind === 'linear-regulator' && input - this.dropout(link) >= this.setPoint(link);
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
    return (
      ohms * current + (current > 0 ? drop : 0) + (junction === undefined ? 0 : junctionVoltage(junction, current))
    );
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

/** Adds (or takes away) what a network draws from each node of the tree, and how that rises with the node's voltage. */
function collect(network: Sweeping, volts: number[], drawn: number[], slopes: number[], moving: Moving): void {
  const { fitted } = network;
  const { edges, boundary, inner } = fitted;
  if (inner === 0) {
    // Most networks are plain branches between nodes of the tree.
    for (let k = 0; k < edges.length; k++) {
      const edge = edges[k]!;
      const from = boundary[edge.from]!;
      const to = boundary[edge.to]!;
      // A pin that stands at its own rail moves with it.
      if (from === to) continue;
      const { current, conductance } = branchFlow(edge.branch, volts[from]! - volts[to]!, network.currents?.[k]);
      if (network.currents) network.currents[k] = current;
      drawn[from]! += current;
      drawn[to]! -= current;
      // What hangs between nodes that move as one is not moved at all.
      if (moving !== undefined && moving[from] === moving[to]) continue;
      slopes[from]! += conductance;
      slopes[to]! += conductance;
    }
    return;
  }
  const flows = solved(fitted, volts, moving, network.volts);
  network.volts = flows.volts;
  collectSolved(flows, drawn, slopes, moving, 1);
}

/** The same from a network that is solved already. */
function collectSolved(
  { fitted, currents, conductances }: Flows,
  drawn: number[],
  slopes: number[],
  moving: Moving,
  sign: 1 | -1,
): void {
  const { edges, boundary, inner } = fitted;
  for (let k = 0; k < edges.length; k++) {
    const { from, to } = edges[k]!;
    const [a, b] = [from < inner ? -1 : boundary[from - inner]!, to < inner ? -1 : boundary[to - inner]!];
    if (a === b) continue;
    if (a >= 0) drawn[a]! += sign * currents[k]!;
    if (b >= 0) drawn[b]! -= sign * currents[k]!;
    if (moving !== undefined && a >= 0 && b >= 0 && moving[a] === moving[b]) continue;
    if (a >= 0) slopes[a]! += sign * conductances[k]!;
    if (b >= 0) slopes[b]! += sign * conductances[k]!;
  }
}

/** A network at given voltages of the tree's nodes. @param guess its own nodes as solved before, nearly right */
function solved(fitted: FittedNetwork, nodes: readonly number[], moving: Moving, guess?: readonly number[]): Flows {
  const { inner, boundary, edges } = fitted;
  const volts: number[] = [];
  let middle = 0;
  for (const node of boundary) middle += nodes[node]! / boundary.length;
  for (let k = 0; k < inner; k++) volts.push(guess === undefined ? middle : guess[k]!);
  for (const node of boundary) volts.push(nodes[node]!);
  const flows = solveNetwork(inner, edges, volts);
  const currents: number[] = [];
  const conductances: number[] = [];
  for (const { current, conductance } of flows) {
    currents.push(current);
    conductances.push(conductance);
  }
  if (inner > 0) follow(fitted, moving, conductances);
  return { fitted, volts, currents, conductances };
}

/**
 * Turns the conductances of a network's outer branches into slopes against the tree's nodes: the network's own nodes follow
 * the one that moves, so that a pin of 12 Ω with 470 Ω behind it answers like 482 Ω.
 */
function follow({ edges, boundary, inner }: FittedNetwork, moving: Moving, conductances: number[]): void {
  const movedBy = boundary.map((node) => moving?.[node] ?? node);
  const own = conductances.slice();
  for (const node of new Set(movedBy)) {
    const moves = (local: number): boolean => local >= inner && movedBy[local - inner] === node;
    const matrix = zeros(inner * inner);
    const shifts = zeros(inner);
    edges.forEach(({ from, to }, k) => {
      for (const [here, there] of [
        [from, to],
        [to, from],
      ] as const) {
        if (here >= inner) continue;
        matrix[here * inner + here]! += own[k]!;
        if (there < inner) matrix[here * inner + there]! -= own[k]!;
        else if (moves(there)) shifts[here]! += own[k]!;
      }
    });
    eliminate(matrix, shifts, inner);
    const shift = (local: number): number => (local < inner ? shifts[local]! : moves(local) ? 1 : 0);
    edges.forEach(({ from, to }, k) => {
      if (moves(from)) conductances[k] = own[k]! * (1 - shift(to));
      else if (moves(to)) conductances[k] = own[k]! * (1 - shift(from));
    });
  }
}
