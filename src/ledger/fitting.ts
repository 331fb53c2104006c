/** Each network's branches with their figures put in, once for each lean and ambient that is asked for. */
import type { Branch } from '../circuit/branch.js';
import { copperFactor } from '../circuit/copper.js';
import type { Junction } from '../circuit/junction.js';
import { junctionAt, junctionBetween } from '../circuit/junction.js';
import { withLines } from '../circuit/lines.js';
import type { BranchPlan, JunctionSpread, Member, PinPassage } from '../loads/plan.js';
import { isFalling } from '../loads/plan.js';
import type { Build } from './builds.js';
import { memberFigure, within } from './builds.js';
import type { NetworkIndex } from './circuitry.js';
import type { Ambient, AskedLean, Lean } from './corner.js';
import type { FittedMember, FittedNetwork } from './fitted.js';
import { fittedMember } from './fitted.js';
import { burden, heavier, heft, leaning, loss, spread } from './leaning.js';

const LEANS: readonly AskedLean[] = [
  ...(['low', 'typ', 'high', 'peak', 'second', 'starved', 'stalled', 'flooded', 'warm'] as const),
  ...(['raised', 'lowered', 'pressed', 'loaded', 'braked'] as const),
];
const AMBIENTS = ['cold', 'typ', 'hot'] as const;

/** The network in a state with its figures put in for a lean, a lean of the pins and an ambient; made once, then kept. */
export function fit(
  network: NetworkIndex,
  on: boolean,
  lean: AskedLean,
  pins: AskedLean,
  ambient: Ambient,
  celsius: number,
): FittedNetwork {
  const state = on ? network.on : network.off;
  const key = (LEANS.indexOf(lean) * LEANS.length + LEANS.indexOf(pins)) * 3 + AMBIENTS.indexOf(ambient);
  let fitted = state.fitted.get(key);
  if (fitted === undefined) {
    fitted = fitNetwork(
      network,
      on,
      () => lean,
      pins,
      () => celsius,
    );
    state.fitted.set(key, fitted);
  }
  return fitted;
}

/** The same where its circuits lean each its own way: a load in question beside others on the same pin. */
export function fitNetwork(
  network: NetworkIndex,
  on: boolean,
  leanOf: (branch: BranchPlan) => AskedLean,
  pins: AskedLean,
  celsiusOf: (branch: BranchPlan) => number,
  build?: Build,
): FittedNetwork {
  const state = on ? network.on : network.off;
  const inner = new Set(network.plan.inner);
  const leans = state.plans.map((p) => leaning(leanOf(p), p, on, inner));
  const members = state.plans.map((p, k) => {
    const celsius = celsiusOf(p);
    if (build) return p.members.map((m) => builtMember(m, p.pin, build, celsius, leans[k]!));
    const ofPin = leaning(pins, p, on, inner);
    return p.members.map((m) => fitMember(m, leans[k]!, ofPin, celsius, isFalling(p)));
  });
  return {
    plans: state.plans,
    members,
    boundary: state.boundary,
    inner: network.plan.inner.length,
    edges: state.plans.map((p, k) => ({
      from: state.local.get(p.from)!,
      to: state.local.get(p.to)!,
      branch: sum(members[k]!, leans[k]!, network.standing.get(p.from), isFed(p, network), build),
    })),
  };
}

/** A fitted network with one resistance at another value, ohms; the network itself where it does not have the part. */
export function retuned(fitted: FittedNetwork, part: string, ohms: number): FittedNetwork {
  const b = fitted.members.findIndex((members) => members.some((m) => m.member.part === part));
  if (b < 0) return fitted;
  const old = fitted.members[b]!.find((m) => m.member.part === part)!;
  const { branch, ...ends } = fitted.edges[b]!;
  const edge = { ...ends, branch: { ...branch, resistance: branch.resistance + ohms - old.ohms } };
  const members = fitted.members[b]!.map((m) => (m === old ? { ...m, ohms } : m));
  return { ...fitted, edges: fitted.edges.with(b, edge), members: fitted.members.with(b, members) };
}

/**
 * Whether anything feeds a branch that takes its current from whatever voltage there is. On a rail that collapses under it,
 * it still takes its current, so that the books show what would be asked of the supply.
 */
const isFed = (plan: BranchPlan, network: NetworkIndex): boolean =>
  plan.from !== plan.to && !network.dead.has(plan.from);

function draw({ amps, peak, second }: Extract<Member, { kind: 'current' }>, lean: Lean): number {
  const more = lean === 'peak' || lean === 'stalled' ? peak : lean === 'second' ? second : undefined;
  return Math.max(more ?? 0, heavier(amps, lean));
}

/** A peak is the most that its figure has: what is uncertain of it is not told. */
function drawn(member: Member & { readonly kind: 'current' }, lean: Lean, build?: Build): number {
  const peaking = lean === 'peak' || lean === 'second' || lean === 'stalled';
  return build === undefined || (peaking && member.peak !== undefined)
    ? draw(member, lean)
    : within(member.amps, build.share(memberFigure(member, undefined)));
}

function fitMember(member: Member, lean: Lean, pins: Lean, celsius: number, falling: boolean): FittedMember {
  switch (member.kind) {
    case 'resistance': {
      const ohms = (member.load ? burden : loss)(member.ohms, lean, falling) * shareLeft(member, lean);
      return fittedMember(member, {
        ohms: member.copper === undefined ? ohms : ohms * copperFactor(celsius, member.copper),
      });
    }
    case 'pin':
      return fittedMember(member, { ohms: loss(member.ohms, pins) });
    case 'drop':
      return fittedMember(member, { drop: (member.load ? burden : loss)(member.volts, lean, falling) });
    case 'junction':
      return fittedMember(member, { junction: junctionAt((member.load ? heft : spread)(member.law, lean), celsius) });
    case 'curve': {
      const curve = member.points.map(({ amps, volts }) => ({ amps, volts: loss(volts, lean, falling) }));
      return fittedMember(member, { curve });
    }
    case 'current':
    case 'power':
      return fittedMember(member);
    case 'filament':
      return fitFilament(member, lean);
    default:
      return member satisfies never;
  }
}

/** Leads keep a bridged resistor from being nothing at all. */
const BRIDGED = 1e-6;

/** How much of a resistor counts while the capacitor across it charges. */
function shareLeft(member: Member, lean: Lean): number {
  if (member.kind !== 'resistance' || member.bypass === undefined) return 1;
  const { acting, second } = member.bypass;
  return lean === 'peak' ? BRIDGED : lean === 'stalled' ? acting : lean === 'second' ? second : 1;
}

/** A filament hot, cold at the moment it is switched on, or by what that comes to over a second. */
function fitFilament(member: Extract<Member, { kind: 'filament' }>, lean: Lean): FittedMember {
  const { volts, cold } = member;
  const amps = heavier(member.amps, lean);
  if (cold && (lean === 'peak' || lean === 'stalled'))
    return fittedMember(member, { ohms: volts / (amps * cold.peak) });
  const times = cold && lean === 'second' ? cold.second : 1;
  return fittedMember(member, { filament: { volts, amps: amps * times } });
}

/** A member with its figure as a build has it. @param lean says whether filaments are cold */
function builtMember(
  member: Member,
  pin: PinPassage | undefined,
  build: Build,
  celsius: number,
  lean: Lean,
): FittedMember {
  const share = build.share(memberFigure(member, pin));
  switch (member.kind) {
    case 'resistance':
    case 'pin': {
      const copper = member.kind === 'resistance' && member.copper !== undefined;
      return fittedMember(member, {
        ohms:
          within(member.ohms, share) * (copper ? copperFactor(celsius, member.copper) : 1) * shareLeft(member, lean),
      });
    }
    case 'drop':
      return fittedMember(member, { drop: within(member.volts, share) });
    case 'junction':
      return fittedMember(member, { junction: builtJunction(member.law, share, celsius) });
    case 'curve':
      return fittedMember(member, {
        curve: member.points.map(({ amps, volts }) => ({ amps, volts: within(volts, share) })),
      });
    case 'filament': {
      const amps = within(member.amps, share);
      return fitFilament({ ...member, amps: { min: amps, typ: amps, max: amps } }, lean);
    }
    case 'current':
    case 'power':
      return fittedMember(member);
    default:
      return member satisfies never;
  }
}

/** A junction at a share of its spread, at a temperature in °C. */
export function builtJunction({ min, typ, max }: JunctionSpread, share: number, celsius: number): Junction {
  const [from, to, way] = share < 0.5 ? [min, typ, 2 * share] : [typ, max, 2 * share - 1];
  return junctionBetween(junctionAt(from, celsius), junctionAt(to, celsius), way);
}

const takenPower = (member: Member & { readonly kind: 'power' }, lean: Lean, build?: Build): number =>
  build ? within(member.watts, build.share(memberFigure(member, undefined))) : heavier(member.watts, lean);

/** @param standing lowest volts that the branch's feed stands at with nothing on it */
function sum(
  members: readonly FittedMember[],
  lean: Lean,
  standing: number | undefined,
  fed: boolean,
  build?: Build,
): Branch {
  const junctions = members.flatMap((m) => m.junction ?? []);
  const filament = members.find((m) => m.filament)?.filament;
  const fixed = members.find(({ member: { kind } }) => kind === 'current' || kind === 'power')?.member;
  const plain: Branch = {
    resistance: members.reduce((total, m) => total + m.ohms, 0),
    drop: members.reduce((total, m) => total + m.drop, 0),
    junctions,
    filament,
    current: fixed?.kind === 'current' ? (fed ? drawn(fixed, lean, build) : 0) : undefined,
    power:
      fixed?.kind === 'power'
        ? { watts: fed ? takenPower(fixed, lean, build) : 0, least: (standing ?? 0) / 2 }
        : undefined,
    beyond: undefined,
  };
  return withLines(
    plain,
    members.flatMap((m) => (m.curve ? [m.curve] : [])),
  );
}
