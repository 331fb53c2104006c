/**
 * The sweep that brings the supply tree to rest: currents are summed towards the supplies and voltages handed down until
 * nothing moves; each sweep carries the slope of what hangs on a node along with its current, which makes it Newton's
 * method on a radial tree.
 *
 * A solution about a few circuits stands on one in which they lean like all the others: only their networks are solved
 * anew, the others follow along their tangents. Where the rails move so far that the others bend, their tangents are taken
 * anew, so that what is left out is a millionth; a test holds it against the whole solution.
 */
import { bendAt } from '../circuit/branch.js';
import type { Circuitry } from './circuitry.js';
import { zeros } from './circuitry.js';
import { followedLinks, followedNetwork, isSunk, mayFollow } from './collapse.js';
import type { Corner } from './corner.js';
import { CornerFigures } from './corner-figures.js';
import type { FittedNetwork } from './fitted.js';
import type { FittedLink } from './fitted-links.js';
import { outputOf, regulates, slopeBefore, takenBy } from './link-laws.js';
import type { Focus, Moment } from './moment.js';
import type { Flows, Moving } from './network-flows.js';
import { collect, solved, unsolved } from './network-flows.js';

/** Amperes that tangents may leave out: a rail answers to them by a microvolt. */
const LEFT_OUT = 1e-6;
/** Siemens: what conducts less is switched off. */
const OPEN = 1e-8;
/** Sweeps stop when no node would move by more than this, volts. */
const SETTLED = 1e-10;
/** Amperes to which sums of currents are sure: behind a megohm that only leaks, a node is sure to a microvolt. */
const SURE = 1e-12;
const MOST_SWEEPS = 2000;
/** What is followed below half comes to rest in a few sweeps, or sinks. */
const FOLLOWING = 200;

export class Sweep extends CornerFigures {
  /** Volts by node number; ground is 0. */
  readonly volts: number[];
  /** Amperes out of each link, by link number; meaningful once settled. */
  readonly linkCurrents: number[];
  /** Amperes into each link: what a regulator takes is more than it gives. */
  readonly linkInputs: number[];
  private readonly flows: (Flows | undefined)[];
  /** The links with their figures put in, by number. */
  protected links: readonly FittedLink[];
  /** What the networks draw from each node, and how that rises with its voltage: kept for those who stand on it. */
  private readonly drawn: number[];
  readonly slopes: number[];
  private readonly base: Sweep | undefined;
  private readonly still: boolean;
  /** What takes a constant power is followed below half of what its source stands at. */
  private followed: boolean;
  private bent: readonly number[] | undefined;
  private bridging: readonly number[] | undefined;
  protected moving: Moving;

  /**
   * @param focus 1 for each circuit in question @param focusNetworks the numbers of their networks
   * @param start first guess of the nodes' volts @param base the solution it stands on, for one about a few circuits
   * @param former one of the same corner, in another state: what its networks came to is a guess
   * @param still nothing is brought to rest: the nodes stay where `start` has them, the links carry what they do in `base`
   */
  constructor(
    circuitry: Circuitry,
    moment: Moment,
    corner: Corner,
    focus: Focus,
    start: readonly number[],
    base?: Sweep,
    still = false,
    former?: Sweep,
  ) {
    super(circuitry, moment, corner, focus, base);
    this.volts = start.slice();
    this.flows = new Array<Flows | undefined>(circuitry.networks.length);
    this.links = base ? base.links : this.linksAlike();
    // One about a few circuits is never asked what flows in the tree, nor stood on.
    const { links, scratch } = circuitry;
    // What a regulator needs goes by its current, whoever asks.
    this.linkCurrents = zeros(links.length);
    this.linkInputs = base ? scratch.linkInputs : zeros(links.length);
    this.drawn = base ? scratch.others : zeros(start.length);
    this.slopes = base ? scratch.otherSlopes : zeros(start.length);
    this.base = base;
    this.still = still;
    this.followed = base?.followed === true;
    if (still) {
      this.linkCurrents = base!.linkCurrents;
      this.linkInputs = base!.linkInputs;
      this.moving = base!.moving;
    } else this.settle(start, base ?? former);
  }

  protected override fitted(number: number, on = this.isOn(number)): FittedNetwork {
    const fitted = super.fitted(number, on);
    return this.followed ? followedNetwork(fitted) : fitted;
  }

  /** The network solved at the nodes' present voltages. */
  network(number: number): Flows {
    return (this.flows[number] ??= this.still ? this.asMoved(number) : this.solvedAnew(number));
  }

  private solvedAnew(number: number, near?: Flows): Flows {
    return solved(unsolved(this.fitted(number), this.volts, near), this.volts, this.moving);
  }

  /** A network where nothing was brought to rest: as it was, where neither it nor what it stands on is moved. */
  private asMoved(number: number): Flows {
    const base = this.base!;
    if (base.isOn(number) !== this.isOn(number)) return this.solvedAnew(number);
    const was = base.network(number);
    const moved = was.fitted.boundary.some((node) => this.volts[node] !== base.volts[node]);
    return moved ? this.solvedAnew(number, was) : was;
  }

  /** Brings the supply tree to rest. @throws when it never is, which a tree that can feed its loads cannot do */
  private settle(start: readonly number[], former: Sweep | undefined): void {
    if (!this.followed) {
      this.mustRest(former);
      if (!mayFollow(this.circuitry, this.volts)) return;
      this.followed = true;
      this.links = followedLinks(this.links);
    }
    if (this.rests(FOLLOWING, former) && !isSunk(this.circuitry, this.volts, this.flows)) return;
    this.followed = false;
    this.links = this.linksAlike();
    start.forEach((volts, node) => (this.volts[node] = volts));
    this.mustRest(former);
  }

  private mustRest(former: Sweep | undefined): void {
    if (!this.rests(MOST_SWEEPS, former))
      throw new Error(`the supply tree did not come to rest in mode '${this.moment.mode}'`);
  }

  /** Sweeps it until nothing moves. @returns whether that took no more than so many sweeps */
  private rests(most: number, former: Sweep | undefined): boolean {
    const { every } = this.circuitry;
    const { base, volts, links } = this;
    // A tangent tells how a network answers to one rail: what hangs between two is solved anew, too.
    const solving = base ? this.focus.networks.concat(base.bridges().filter((n) => this.focus.has[n] === 0)) : every;
    for (const n of solving) {
      // It stands nearly where it stood in the solution underneath, or in the one before, if it is in the same state.
      const near = former && former.isOn(n) === this.isOn(n) ? former.network(n) : undefined;
      this.flows[n] = this.likeness(n) ?? unsolved(this.fitted(n), volts, near);
    }
    base?.without(solving, this.drawn, this.slopes);
    let touching = base?.volts;
    const { drawn, slopes } = this.circuitry.scratch;
    for (let sweep = 0; sweep < most; sweep++) {
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
      for (let k = links.length - 1; k >= 0; k--) this.sweepBack(links[k]!, drawn, slopes);
      let moved = false;
      for (let k = 0; k < links.length; k++) {
        if (!this.isLive(k)) continue;
        const { to } = links[k]!;
        const next = outputOf(this, links[k]!, drawn[to]!, slopes[to]!);
        // What is at rest stays: the networks are solved at these very voltages.
        if (Math.abs(next - volts[to]!) <= Math.max(SETTLED, SURE * links[k]!.ohms)) continue;
        moved = true;
        volts[to]! += part * (next - volts[to]!);
      }
      if (moved) continue;
      if (touching === undefined || this.leftOut(touching) <= LEFT_OUT) return true;
      touching = this.touchAnew(solving);
    }
    return false;
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
    const { count, bridged } = this.circuitry;
    let moving: number[] | undefined;
    for (let k = 0; k < this.links.length; k++) {
      const link = this.links[k]!;
      if (link.kind !== 'linear-regulator' || (regulates(this, link) && !bridged.has(link.number))) continue;
      moving ??= Array.from({ length: count }, (_, node) => node);
      moving[link.to] = moving[link.from]!;
    }
    this.moving = moving;
  }

  /** What tangents taken at some voltages leave out at the present ones, amperes. */
  private leftOut(from: readonly number[]): number {
    const bends = this.base!.bends();
    let amps = 0;
    for (let k = 0; k < bends.length; k++) {
      const way = this.volts[k]! - from[k]!;
      amps += (bends[k]! * way * way) / 2;
    }
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

  private sweepBack(link: FittedLink, drawn: number[], slopes: number[]): void {
    const { number, from, to } = link;
    const live = this.isLive(number);
    const out = live ? drawn[to]! : 0;
    const amps = live ? takenBy(this, link, out) : 0;
    const slope = live ? slopeBefore(this, link, amps, out, slopes[to]!) : 0;
    this.linkCurrents[number] = out;
    this.linkInputs[number] = amps;
    drawn[from]! += amps;
    slopes[from]! += slope;
  }
}
