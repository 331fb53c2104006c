/**
 * A solution: one mode at one corner. The supply tree is swept back (currents summed towards the supplies) and forth
 * (voltages handed down) until nothing moves; each sweep carries the slope of what hangs on a node along with its current,
 * which makes it Newton's method on a radial tree.
 *
 * A solution about a few circuits stands on one in which they lean like all the others: only their networks are solved
 * anew, the others follow along their tangents. Where the rails move so far that the others bend, their tangents are taken
 * anew, so that what is left out is a millionth; a test holds it against the whole solution.
 */
import { bendAt, branchConductance } from '../circuit/branch.js';
import type { Junction } from '../circuit/junction.js';
import { copperFactor } from '../circuit/copper.js';
import { junctionAt, junctionVoltage } from '../circuit/junction.js';
import type { Edge } from '../circuit/network.js';
import { eliminate, settleNetwork } from '../circuit/network.js';
import { switcherInput } from '../circuit/switcher.js';
import { WIRE_REFERENCE } from '../circuit/wire.js';
import type { BranchPlan, Member, Reading, SolvedBranch } from '../loads/plan.js';
import type { Link } from '../project/project.js';
import type { Interval } from '../quantity/interval.js';
import type { Books } from './bookings.js';
import type { Circuitry, FittedNetwork, LinkIndex, NetworkIndex } from './circuitry.js';
import { builtJunction, fit, fitNetwork, retuned, spread, voltsAcross, zeros } from './circuitry.js';
import { figureOf, within } from './builds.js';
import type { AskedLean, Corner, End } from './corner.js';
import { ambientAt, atEnd, celsiusOf } from './corner.js';

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
  /** The circuits in question, where others share one of their networks: those lean like the rest. */
  readonly among?: ReadonlySet<string>;
  /** 1 for each network that is in question, where those are not the same: of a whole solution, which solves them all, or of circuits. */
  readonly leans?: Uint8Array;
  /** Networks on the control side that lean like the load. */
  readonly loads?: ReadonlySet<number>;
}

/** A network's solved currents; while the tree is swept, one sweep's voltages and currents are the next one's guess. */
interface Flows {
  readonly fitted: FittedNetwork;
  /** Its own nodes' first, then those of the tree's. */
  readonly volts: number[];
  readonly currents: number[];
  readonly conductances: number[];
}

/** For each node the one that it moves with, where some do not move by themselves. */
type Moving = readonly number[] | undefined;

/** Amperes that tangents may leave out: a rail answers to them by a microvolt. */
const LEFT_OUT = 1e-6;
/** Amperes that are rounding. */
const NO_CURRENT = 1e-12;
/** Siemens: what conducts less is switched off. */
const OPEN = 1e-8;
/** Sweeps stop when no node would move by more than this, volts. */
const SETTLED = 1e-10;
const MOST_SWEEPS = 2000;

export class Solution implements Reading {
  readonly circuitry: Circuitry;
  readonly moment: Moment;
  readonly corner: Corner;
  /** The circuits in question. */
  readonly focus: Focus;
  readonly ambient: number;
  /** Volts by node number; ground is 0. */
  readonly volts: number[];
  /** Amperes out of each link, by link number; meaningful once settled. */
  readonly linkCurrents: number[];
  /** Amperes into each link: what a regulator takes is more than it gives. */
  readonly linkInputs: number[];
  private readonly flows: (Flows | undefined)[];

  /** What the networks draw from each node, and how that rises with its voltage: kept for those who stand on it. */
  private readonly drawn: number[];
  private readonly slopes: number[];
  private readonly base: Solution | undefined;
  private bent: readonly number[] | undefined;
  private bridging: readonly number[] | undefined;
  private moving: Moving;
  /** Its books and their sums, written when they are first asked for. */
  books: Books | undefined;
  sums: ReadonlyMap<string, number> | undefined;

  /**
   * @param focus 1 for each circuit in question @param focusNetworks the numbers of their networks
   * @param start first guess of the nodes' volts @param base the solution it stands on, for one about a few circuits
   */
  constructor(circuitry: Circuitry, moment: Moment, corner: Corner, focus: Focus, start: number[], base?: Solution) {
    this.circuitry = circuitry;
    this.moment = moment;
    this.corner = corner;
    this.focus = focus;
    this.ambient = this.celsiusIn(corner.place);
    this.volts = start.slice();
    this.flows = new Array<Flows | undefined>(circuitry.networks.length);
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
    return this.corner.load === 'typ' && this.corner.build === undefined;
  }

  get peak(): boolean {
    return this.corner.load === 'peak';
  }

  /** Whether a network is on in this moment. */
  isOn(network: number): boolean {
    const { circuits } = this.circuitry.networks[network]!;
    for (let k = 0; k < circuits.length; k++) if (this.moment.on[circuits[k]!] === 1) return true;
    return circuits.length === 0;
  }

  /** A network's figures in this corner. */
  private fitted(number: number, on = this.isOn(number)): FittedNetwork {
    const fitted = this.leaning(number, on);
    const { tuned } = this.corner;
    return tuned ? retuned(fitted, tuned.part, tuned.ohms) : fitted;
  }

  private leaning(number: number, on: boolean): FittedNetwork {
    const index = this.circuitry.networks[number]!;
    const { load, control, rest, build } = this.corner;
    if (build) return fitNetwork(index, on, () => load, load, this.celsiusAt(index), build);
    const inQuestion = (this.focus.leans ?? this.focus.has)[number] === 1;
    const controls = index.plan.side === 'control' && !this.focus.loads?.has(number);
    const lean = inQuestion ? (controls ? control : load) : rest;
    const pins = inQuestion ? control : rest;
    const { among } = this.focus;
    const inputs = index.plan.controls;
    if (inQuestion && (index.circuits.length > 1 || index.foreign) && (among || inputs)) {
      const leanOf = ({ circuit }: BranchPlan): AskedLean =>
        among?.has(circuit) === false ? rest : inputs?.has(circuit) ? control : lean;
      return fitNetwork(index, on, leanOf, pins, this.celsiusAt(index));
    }
    // What reaches into several places has no one ambient to be kept by.
    if (index.places) return fitNetwork(index, on, () => lean, pins, this.celsiusAt(index));
    return fit(index, on, lean, pins, ambientAt(this.corner, index.place), this.celsiusIn(index.place));
  }

  /** Ambient of a place, °C. */
  private celsiusIn(place: string | undefined): number {
    return celsiusOf(this.circuitry.project, this.corner, place);
  }

  private celsiusAt({ places, place }: NetworkIndex): (branch: BranchPlan) => number {
    const alike = this.celsiusIn(place);
    return places ? ({ circuit }) => this.celsiusIn(places.get(circuit)) : () => alike;
  }

  /** The network solved at the nodes' present voltages. */
  network(number: number): Flows {
    return (this.flows[number] ??= solved(unsolved(this.fitted(number), this.volts), this.volts, this.moving));
  }

  /** Sweeps the supply tree until it is at rest. @throws when it never is, which a tree that can feed its loads cannot do */
  private settle(): void {
    const { links, every } = this.circuitry;
    const { base, volts } = this;
    // A tangent tells how a network answers to one rail: what hangs between two is solved anew, too.
    const solving = base ? this.focus.networks.concat(base.bridges().filter((n) => this.focus.has[n] === 0)) : every;
    for (const n of solving) {
      // It stands nearly where it stood in the solution underneath, if it is in the same state.
      const near = base && base.isOn(n) === this.isOn(n) ? base.network(n) : undefined;
      this.flows[n] = this.likeness(n) ?? unsolved(this.fitted(n), volts, near);
    }
    base?.without(solving, this.drawn, this.slopes);
    let touching = base?.volts;
    const { drawn, slopes } = this.circuitry.scratch;
    for (let sweep = 0; sweep < MOST_SWEEPS; sweep++) {
      // Where a diode or a regulator is about to block, whole steps may go to and fro.
      const part = sweep < 30 ? 1 : sweep < 100 ? 0.5 : 0.2;
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
      for (const n of solving) collect(solved(this.flows[n]!, volts, this.moving), drawn, slopes, this.moving, 1);
      if (base === undefined) {
        for (let k = 0; k < volts.length; k++) {
          this.drawn[k] = drawn[k]!;
          this.slopes[k] = slopes[k]!;
        }
      }
      for (let k = links.length - 1; k >= 0; k--) this.sweepBack(links[k]!, k, drawn, slopes);
      let moved = false;
      for (let k = 0; k < links.length; k++) {
        const { to } = links[k]!;
        const next = this.outputOf(links[k]!, drawn[to]!, slopes[to]!);
        // What is at rest stays: the networks are solved at these very voltages.
        if (Math.abs(next - volts[to]!) <= SETTLED) continue;
        moved = true;
        volts[to]! += part * (next - volts[to]!);
      }
      if (moved) continue;
      if (touching === undefined || this.leftOut(touching) <= LEFT_OUT) return;
      touching = this.touchAnew(solving);
    }
    throw new Error(`the supply tree did not come to rest in mode '${this.moment.mode}'`);
  }

  /** The flows of a network that is like one before it, where all lean alike: they share their arrays, solved once. */
  private likeness(number: number): Flows | undefined {
    const { like } = this.circuitry.networks[number]!;
    const { has, leans = has } = this.focus;
    // Each part of a build has figures of its own.
    if (this.base !== undefined || this.corner.build !== undefined || like === number || leans[like] !== leans[number])
      return undefined;
    if (this.isOn(like) !== this.isOn(number)) return undefined;
    return { ...this.flows[like]!, fitted: this.fitted(number) };
  }

  /**
   * Finds which nodes move as one: a linear regulator that is out of regulation hands its input's moves on, and what flows
   * from the input of one to its output comes back through it, whatever the input's voltage.
   */
  private tie(): void {
    const { links, count, bridged } = this.circuitry;
    let moving: number[] | undefined;
    for (const { link, from, to } of links) {
      if (link.kind !== 'linear-regulator' || (this.regulates(link) && !bridged.has(link))) continue;
      moving ??= Array.from({ length: count }, (_, k) => k);
      moving[to] = moving[from]!;
    }
    this.moving = moving;
  }

  /** What tangents taken at some voltages leave out at the present ones, amperes. */
  private leftOut(from: readonly number[]): number {
    const bends = this.base!.bends();
    let amps = 0;
    for (let k = 0; k < bends.length; k++) amps += (bends[k]! * (this.volts[k]! - from[k]!) ** 2) / 2;
    return amps;
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
      const { boundary } = this.network(n).fitted;
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
      const flows = unsolved(this.fitted(n), volts, this.base!.network(n));
      collect(solved(flows, volts, this.moving), drawn, slopes, this.moving, 1);
    }
    return volts.slice();
  }

  /** What all but some networks draw, and how it rises. */
  private without(networks: readonly number[], drawn: number[], slopes: number[]): void {
    for (let k = 0; k < drawn.length; k++) {
      drawn[k] = this.drawn[k]!;
      slopes[k] = this.slopes[k]!;
    }
    for (const n of networks) collect(this.network(n), drawn, slopes, this.moving, -1);
  }

  private sweepBack({ link, from, to }: LinkIndex, k: number, drawn: number[], slopes: number[]): void {
    const out = drawn[to]!;
    this.linkCurrents[k] = out;
    let taken = out;
    let slope = slopes[to]!;
    if (link.kind === 'linear-regulator') {
      taken += this.ownCurrent(link);
      if (this.regulates(link)) slope = 0;
    } else if (link.kind === 'switching-regulator') {
      // A source with resistance gives the most at half its voltage; what asks for more makes it collapse.
      const least = (this.circuitry.open[from]?.min ?? 0.2) / 2;
      const input = Math.max(this.volts[from]!, least);
      taken = switcherInput(this.volts[to]!, out, this.efficiency(link), input, this.ownCurrent(link));
      // It takes the same power from less voltage.
      // Newton's step is safe well above that point; near it plain sweeps creep up to the same rest.
      slope = input > 1.3 * least ? -(taken - this.ownCurrent(link)) / input : 0;
    } else slope /= 1 + this.slopeOhms(link, Math.max(out, 0)) * slope;
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
      case 'cable':
      case 'fuse': {
        const ohms = this.resistanceOf(link);
        return stepped(input - ohms * drawn, ohms * slope, this.volts[to]!);
      }
      case 'diode':
        return this.behindDiode(link, input, this.volts[to]!, drawn, slope);
      case 'linear-regulator':
        return Math.min(this.setPoint(link), Math.max(input - this.dropout(link), 0));
      case 'switching-regulator':
        // On a source that collapses it still asks for what its loads take: the books show by how much too much.
        return this.circuitry.open[from] ? this.setPoint(link) : 0;
      default:
        return link.kind satisfies never;
    }
  }

  /** Voltage behind a diode from which a current is drawn that rises with it; it takes nothing off what flows back. */
  private behindDiode(link: Link, input: number, before: number, drawn: number, slope: number): number {
    if (drawn + slope * (input - before) <= NO_CURRENT) return input;
    const passed = Math.max(drawn, 0);
    const ohms = this.slopeOhms(link, passed);
    return stepped(input - junctionVoltage(this.diode(link), passed) - ohms * (drawn - passed), ohms * slope, before);
  }

  /** Losses of a link: those of the corner, or what takes the rail behind it to where it has to stand. */
  private lossesOf(link: Link): End {
    const end = this.corner.apart?.get(link.id);
    return end === undefined ? this.corner.losses : end === 'low' ? 'high' : 'low';
  }

  /** An uncertain figure as this build has it, or at the corner's end. */
  taken(interval: Interval | undefined, figure: string, end: End): number {
    if (interval === undefined) return 0;
    const { build } = this.corner;
    return build ? within(interval, build.share(figure)) : atEnd(interval, end);
  }

  /** Ohms of a fuse, or of a cable: its copper at the ambient and its plugs. */
  private resistanceOf(link: Link): number {
    return link.kind === 'cable'
      ? this.cableOf(link).ohms
      : this.taken(link.ohms, figureOf(link.id, 'ohms'), this.lossesOf(link));
  }

  /** A cable's resistance: its copper at 20 °C and at its temperature, and its plugs. */
  cableOf(link: Link) {
    const losses = this.lossesOf(link);
    const celsius = this.celsiusIn(link.place);
    const cold = this.taken(link.ohms, figureOf(link.id, 'ohms'), losses);
    const contact = this.taken(link.contact, figureOf(link.id, 'contact'), losses);
    return { cold, contact, celsius, ohms: cold * copperFactor(celsius, WIRE_REFERENCE) + contact };
  }

  private setPoint(link: Link): number {
    const end = this.corner.apart?.get(link.id) ?? this.corner.outputs;
    return this.taken(link.volts, figureOf(link.id, 'volts'), end);
  }

  private dropout(link: Link): number {
    return this.taken(link.dropout, figureOf(link.id, 'dropout'), this.lossesOf(link));
  }

  /** A regulator's own current, amperes. */
  ownCurrent(link: Link): number {
    return this.taken(link.quiescent, figureOf(link.id, 'quiescent'), this.appetite);
  }

  /** What regulators take for themselves: to circuits in question they are the rest, in a question of the tree they are in it. */
  private get appetite(): End {
    const whole = this.focus.networks.length === 0;
    const lean = whole ? this.corner.load : this.corner.rest;
    return lean === 'typ' ? 'typ' : lean === 'low' ? 'low' : 'high';
  }

  private efficiency(link: Link): number {
    const { appetite } = this;
    const end = appetite === 'typ' ? 'typ' : appetite === 'low' ? 'high' : 'low';
    return this.taken(link.efficiency, figureOf(link.id, 'efficiency'), end);
  }

  private diode(link: Link): Junction {
    const { build } = this.corner;
    if (build) return builtJunction(link.law!, build.share(figureOf(link.id, 'law')), this.celsiusIn(link.place));
    const losses = this.lossesOf(link);
    const lean = losses === 'typ' ? 'typ' : losses === 'low' ? 'high' : 'low';
    return junctionAt(spread(link.law!, lean), this.celsiusIn(link.place));
  }

  /** Ohms of what lies in the way, where it carries a current in amperes. */
  private slopeOhms(link: Link, current: number): number {
    if (link.kind === 'fuse' || link.kind === 'cable') return this.resistanceOf(link);
    const { slope, logSaturation, series } = this.diode(link);
    return series + slope / (current + Math.exp(logSaturation));
  }

  /** Whether a link is a linear regulator with more input than it needs for its output. */
  regulates(link: Link): boolean {
    const input = this.volts[this.circuitry.nodeIndex.get(link.from)!]!;
    return link.kind === 'linear-regulator' && input - this.dropout(link) >= this.setPoint(link);
  }

  /** Ohms that a link has for small changes of its current. */
  ohmsOf(link: Link): number {
    if (link.kind !== 'fuse' && link.kind !== 'cable' && link.kind !== 'diode') return 0;
    return this.slopeOhms(
      link,
      Math.max(this.linkCurrents[this.circuitry.links.findIndex((l) => l.link === link)]!, 0),
    );
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

  voltage(node: string): number {
    const number = this.circuitry.nodeIndex.get(node);
    if (number !== undefined) return this.volts[number]!;
    const network = this.circuitry.networks.findIndex((n) => n.plan.inner.includes(node));
    if (network < 0) throw new Error(`no node '${node}'`);
    return this.network(network).volts[this.circuitry.networks[network]!.plan.inner.indexOf(node)]!;
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

  groundAt(node: string): number {
    const feeds = (to: string): Link | undefined => this.circuitry.project.links.find((l) => l.to === to);
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
        ...(m.member.kind === 'resistance' || m.member.kind === 'pin' || m.ohms > 0 ? { ohms: m.ohms } : {}),
        volts: takesWhatIsLeft(m.member) ? this.left(at.flows, at.branch) : voltsAcross(m, amps),
      })),
    };
  }
}

/** What draws its current or power whatever it gets: it gets what the others on its branch leave. */
const takesWhatIsLeft = ({ kind }: Member): boolean => kind === 'current' || kind === 'power';

/** So near to collapse a plain sweep is as good as at rest. */
const NEARLY = 1 - 1e-6;

/** Newton's step to a node that would stand at `next` if its load did not answer; `bent` is the way's ohms times its slope. */
function stepped(next: number, bent: number, before: number): number {
  // Beyond collapse, where the slope of what takes a constant power outweighs the ohms, there is nothing to step to.
  return bent > -NEARLY ? (next + bent * before) / (1 + bent) : next;
}

/** Adds (or takes away) what a network draws from each node of the tree, and how that rises with the node's voltage. */
function collect(
  { fitted, currents, conductances }: Flows,
  drawn: number[],
  slopes: number[],
  moving: Moving,
  sign: 1 | -1,
): void {
  const { edges, boundary, inner } = fitted;
  for (let k = 0; k < edges.length; k++) {
    const { from, to } = edges[k]!;
    const a = from < inner ? -1 : boundary[from - inner]!;
    const b = to < inner ? -1 : boundary[to - inner]!;
    // A pin that stands at its own rail moves with it.
    if (a === b) continue;
    if (a >= 0) drawn[a]! += sign * currents[k]!;
    if (b >= 0) drawn[b]! -= sign * currents[k]!;
    // What hangs between nodes that move as one is not moved at all.
    if (moving !== undefined && a >= 0 && b >= 0 && moving[a] === moving[b]) continue;
    if (a >= 0) slopes[a]! += sign * conductances[k]!;
    if (b >= 0) slopes[b]! += sign * conductances[k]!;
  }
}

/** A network about to be solved. @param near the same one in the same state, solved at other voltages: a guess */
function unsolved(fitted: FittedNetwork, nodes: readonly number[], near?: Flows): Flows {
  const { inner, boundary, edges } = fitted;
  const volts = near?.volts.slice() ?? zeros(inner + boundary.length);
  if (near === undefined && inner > 0) {
    let middle = 0;
    for (const node of boundary) middle += nodes[node]! / boundary.length;
    volts.fill(middle, 0, inner);
  }
  // It was solved at no voltages yet.
  volts.fill(NaN, inner);
  return { fitted, volts, currents: near?.currents.slice() ?? zeros(edges.length), conductances: zeros(edges.length) };
}

/** Solves a network at given voltages of the tree's nodes; nothing is to do where none of its nodes moved. */
function solved(flows: Flows, nodes: readonly number[], moving: Moving): Flows {
  const { fitted, volts, currents, conductances } = flows;
  const { inner, boundary, edges } = fitted;
  // Slopes change with what moves as one, too.
  let moved = moving !== undefined;
  for (let k = 0; k < boundary.length; k++) {
    const at = nodes[boundary[k]!]!;
    if (volts[inner + k] === at) continue;
    volts[inner + k] = at;
    moved = true;
  }
  if (!moved) return flows;
  settleNetwork(inner, edges, volts, currents, conductances);
  if (inner === 1) followNode(fitted, moving, conductances);
  else if (inner > 1) follow(fitted, moving, conductances);
  return flows;
}

/**
 * Turns the conductances of a network's outer branches into slopes against the tree's nodes: the network's own nodes follow
 * the one that moves, so that a pin of 12 Ω with 470 Ω behind it answers like 482 Ω.
 */
function follow({ edges, boundary, inner }: FittedNetwork, moving: Moving, conductances: number[]): void {
  const movedBy = boundary.map((node) => mover(node, moving));
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

/** The same for a network with one node of its own: it follows by the share of its conductance that leads to what moves. */
function followNode({ edges, boundary }: FittedNetwork, moving: Moving, conductances: number[]): void {
  const own = conductances.slice();
  let whole = 0;
  for (let k = 0; k < edges.length; k++) if (outer(edges[k]!) > 0) whole += own[k]!;
  if (whole === 0) return;
  for (let k = 0; k < edges.length; k++) {
    const end = outer(edges[k]!);
    if (end === 0) continue;
    let together = 0;
    for (let j = 0; j < edges.length; j++) {
      const other = outer(edges[j]!);
      if (other > 0 && mover(boundary[other - 1]!, moving) === mover(boundary[end - 1]!, moving)) together += own[j]!;
    }
    conductances[k] = own[k]! * (1 - together / whole);
  }
}

/** The end in the tree of an edge at a network's one node; 0 when it does not touch that node. */
const outer = ({ from, to }: Edge): number => (from === 0 ? to : to === 0 ? from : 0);

/** The node that a node of the tree moves with. */
const mover = (node: number, moving: Moving): number => moving?.[node] ?? node;
