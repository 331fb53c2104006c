/** The figures that a solution stands on: of every network and link, as its moment has them on and its corner leans them. */
import type { BranchPlan } from '../loads/branch-plan.js';
import { placeOf } from '../project/places.js';
import type { Link } from '../project/tree-plan.js';
import type { Circuitry, KeptFigures, NetworkIndex } from './circuitry.js';
import { keptFigures, networksOn } from './circuitry.js';
import type { AskedLean, Corner, End, Lean } from './corner.js';
import { ambientAt, celsiusOf } from './corner.js';
import { liveLinks } from './feeds.js';
import type { FittedNetwork } from './fitted.js';
import type { FittedLink } from './fitted-links.js';
import { fitLinks } from './fitted-links.js';
import { fit, fitNetwork, retuned, turnedOver } from './fitting.js';
import { besidePin, endsApart, followingLean } from './followers.js';
import type { Focus, Moment } from './moment.js';

export class CornerFigures {
  readonly circuitry: Circuitry;
  readonly moment: Moment;
  readonly corner: Corner;
  /** The circuits in question. */
  readonly focus: Focus;
  readonly ambient: number;
  /** 1 for each link that carries what hangs behind it; absent where no node has several feeds. */
  private readonly live: Uint8Array | undefined;
  /** 1 for each network that is on. */
  private readonly on: Uint8Array;
  /** What is not in question leans alike in all solutions that stand on one. */
  private readonly alike: KeptFigures;

  private apart: readonly (End | undefined)[] | undefined;

  /** @param focus the circuits in question @param base figures of the same corner in which nobody is */
  constructor(circuitry: Circuitry, moment: Moment, corner: Corner, focus: Focus, base?: CornerFigures) {
    this.circuitry = circuitry;
    this.moment = moment;
    this.corner = corner;
    this.focus = focus;
    this.ambient = this.celsiusIn(corner.place);
    this.live = base ? base.live : liveLinks(circuitry, corner);
    this.on = networksOn(circuitry, moment.on);
    this.alike = base ? base.alike : keptFigures(circuitry, corner);
  }

  /** What regulators take for themselves: to circuits in question they are the rest, in a question of the tree they are in it. */
  appetite(link: Link): End {
    const { focus, corner, circuitry } = this;
    const whole = focus.networks.length === 0 && focus.besides?.has(link.id) !== true;
    const lean = whole && !corner.follows ? corner.load : this.restAt([circuitry.nodeIndex.get(link.from)!]);
    return lean === 'typ' ? 'typ' : lean === 'low' ? 'low' : 'high';
  }

  /** The links' figures, put in once a corner where no circuits are singled out. */
  protected linksAlike(): readonly FittedLink[] {
    if (this.focus.leans !== undefined) return fitLinks(this, this.circuitry);
    return (this.alike.links ??= fitLinks(this, this.circuitry));
  }

  /** Whether a network is on in this moment. */
  isOn(network: number): boolean {
    return this.on[network] === 1;
  }

  /** Whether a link carries what hangs behind it: of several that lead to one node one does. */
  isLive(link: number): boolean {
    return this.live === undefined || this.live[link] === 1;
  }

  /** A network's figures in this corner. */
  protected fitted(number: number, on = this.isOn(number)): FittedNetwork {
    const { tuned, build } = this.corner;
    const inQuestion = (this.focus.leans ?? this.focus.has)[number] === 1;
    const fitted = inQuestion || build ? this.leaning(number, on, inQuestion) : this.resting(number, on);
    return tuned ? retuned(fitted, tuned.part, tuned.ohms) : fitted;
  }

  private resting(number: number, on: boolean): FittedNetwork {
    const kept = on ? this.alike.on : this.alike.off;
    return (kept[number] ??= this.leaning(number, on, false));
  }

  /** How what hangs on some nodes leans that is not in question. */
  private restAt(nodes: readonly number[]): Lean {
    const { corner } = this;
    if (corner.follows !== true) return corner.rest;
    this.apart ??= endsApart(corner, this.circuitry);
    return followingLean(corner, this.apart, nodes);
  }

  private leaning(number: number, on: boolean, inQuestion: boolean): FittedNetwork {
    const index = this.circuitry.networks[number]!;
    const { load, control, build } = this.corner;
    if (build) return fitNetwork(index, on, () => load, load, this.celsiusAt(index), build);
    const rest = this.restAt(index[on ? 'on' : 'off'].boundary);
    const controls = index.plan.side === 'control' && !this.focus.loads?.has(number);
    const lean = inQuestion ? (controls ? control : load) : rest;
    const pins = inQuestion ? control : rest;
    const { among } = this.focus;
    const inputs = index.plan.controls;
    if (inQuestion && (index.circuits.length > 1 || index.foreign) && (among || inputs)) {
      const leanOf = ({ circuit }: BranchPlan): AskedLean => (inputs?.has(circuit) ? control : lean);
      const asked = [...index.plan.on, ...index.plan.off].find((b) => among?.has(b.circuit) === true);
      const others = asked ? besidePin(leanOf(asked), rest) : rest;
      const leans = (b: BranchPlan): AskedLean => (among?.has(b.circuit) === false ? others : leanOf(b));
      return fitNetwork(index, on, leans, pins, this.celsiusAt(index));
    }
    // What reaches into several places has no one ambient to be kept by.
    const turned = this.corner.pushed && !inQuestion ? this.circuitry.feeders : undefined;
    if (index.places) return fitNetwork(index, on, (b) => turnedOver(lean, b, turned), pins, this.celsiusAt(index));
    return fit(index, on, lean, pins, ambientAt(this.corner, index.place), this.celsiusIn(index.place), turned);
  }

  /** Ambient of a place, °C. */
  celsiusIn(place: string | undefined): number {
    return celsiusOf(this.circuitry.project, this.corner, place);
  }

  /** Ambient of anything with a name, °C. */
  ambientOf(name: string): number {
    return this.celsiusIn(placeOf(this.circuitry.project, name));
  }

  private celsiusAt({ places, place }: NetworkIndex): (branch: BranchPlan) => number {
    const alike = this.celsiusIn(place);
    return places ? ({ circuit }) => this.celsiusIn(places.get(circuit)) : () => alike;
  }
}
