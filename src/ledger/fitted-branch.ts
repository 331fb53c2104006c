/** Branches with their figures put in, once for each way they lean and each temperature, and for each build. */
import type { Branch } from '../circuit/branch.js';
import { copperFactor } from '../circuit/copper.js';
import type { Junction } from '../circuit/junction.js';
import { junctionAt, junctionBetween } from '../circuit/junction.js';
import { withLines } from '../circuit/lines.js';
import type { Edge } from '../circuit/network.js';
import type { BranchPlan, JunctionSpread, Member, PinPassage } from '../loads/branch-plan.js';
import { hasPeaks, isFalling } from '../loads/branch-plan.js';
import { mostOf } from '../loads/held.js';
import type { Build } from './builds.js';
import { heldFigure, memberFigure, within } from './builds.js';
import { MOST_AT } from './collapse.js';
import type { Lean } from './corner.js';
import type { FittedMember } from './fitted.js';
import { fittedMember } from './fitted.js';
import { fitPower } from './fitted-power.js';
import { burden, heavier, heft, loss, spread } from './leaning.js';

/** A branch between the local nodes of its network, with what its figures depend on. */
export interface BranchIndex {
  readonly plan: BranchPlan;
  readonly from: number;
  readonly to: number;
  /** Lowest volts that the branch's feed stands at with nothing on it. */
  readonly standing: number;
  /**
   * Whether anything feeds it, where it takes its current from whatever voltage there is. On a rail that collapses under it,
   * it still takes its current, so that the books show what would be asked of the supply.
   */
  readonly fed: boolean;
  /** Its current rises as its voltage falls. */
  readonly falling: boolean;
  /** Something in it answers to the temperature, is a pin, or has peaks: otherwise it is the same without. */
  readonly warms: boolean;
  readonly pinned: boolean;
  readonly peaks: boolean;
  /** What was put in already, by temperature and lean. */
  readonly known: Map<number, Map<string, FittedBranch>>;
}

/** A branch with its figures put in. */
export interface FittedBranch {
  readonly edge: Edge;
  readonly members: readonly FittedMember[];
}

/** @param standing see `BranchIndex` @param fed the same */
export const branchIndex = (
  plan: BranchPlan,
  from: number,
  to: number,
  standing: number,
  fed: boolean,
): BranchIndex => ({
  plan,
  from,
  to,
  standing,
  fed,
  falling: isFalling(plan),
  warms: plan.members.some(
    (m) =>
      m.kind === 'junction' ||
      (m.kind === 'resistance' && m.copper !== undefined) ||
      (m.kind === 'power' && m.held !== undefined),
  ),
  pinned: plan.members.some((m) => m.kind === 'pin'),
  peaks: plan.members.some(hasPeaks),
  known: new Map(),
});

/** Leans that come to the same where nothing has peaks. */
const WITHOUT_PEAKS: { readonly [L in Lean]?: Lean } = {
  ...{ peak: 'high', second: 'high', stalled: 'starved' },
  ...{ calm: 'high', 'calm-starved': 'starved' },
};

/** A branch's figures as it leans, at an ambient in °C. @param pins how the output resistance of a pin leans */
export function fitBranch(index: BranchIndex, leans: Lean, pins: Lean, ambient: number): FittedBranch {
  const lean = index.peaks ? leans : (WITHOUT_PEAKS[leans] ?? leans);
  const celsius = index.warms ? ambient : 0;
  let known = index.known.get(celsius);
  if (known === undefined) index.known.set(celsius, (known = new Map()));
  const key = index.pinned ? `${lean} ${pins}` : lean;
  let fitted = known.get(key);
  if (fitted === undefined) {
    const { members } = index.plan;
    fitted = fittedBranch(
      index,
      members.map((m) => fitMember(m, lean, pins, celsius, index.falling)),
      lean,
    );
    known.set(key, fitted);
  }
  return fitted;
}

/** A branch's figures as a build has them, at an ambient in °C. @param lean says whether what has peaks is at them */
export function buildBranch(index: BranchIndex, lean: Lean, build: Build, celsius: number): FittedBranch {
  const { members, pin } = index.plan;
  return fittedBranch(
    index,
    members.map((m) => builtMember(m, pin, build, celsius, lean)),
    lean,
    build,
  );
}

function fittedBranch(
  { from, to, standing, fed }: BranchIndex,
  members: readonly FittedMember[],
  lean: Lean,
  build?: Build,
): FittedBranch {
  return { edge: { from, to, branch: sum(members, lean, standing, fed, build) }, members };
}

/** Whether it is the moment just before the peaks. */
const isCalm = (lean: Lean): boolean => lean === 'calm' || lean === 'calm-starved';

function draw({ amps, peak, second, before }: Extract<Member, { kind: 'current' }>, lean: Lean): number {
  if (before !== undefined && isCalm(lean)) return before;
  const more = lean === 'peak' || lean === 'stalled' ? peak : lean === 'second' ? second : undefined;
  return Math.max(more ?? 0, heavier(amps, lean));
}

/** A peak is the most that its figure has: what is uncertain of it is not told. */
function drawn(member: Member & { readonly kind: 'current' }, lean: Lean, build?: Build): number {
  const peaking = lean === 'peak' || lean === 'second' || lean === 'stalled';
  return build === undefined || (peaking && member.peak !== undefined)
    ? draw(member, lean)
    : within(
        isCalm(lean) && member.before !== undefined ? { ...member.amps, max: member.before } : member.amps,
        build.share(memberFigure(member, undefined)),
      );
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
      return fittedMember(member);
    case 'power':
      return fitPower(member, (figure) => heavier(figure, lean), celsius);
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
      return fittedMember(member);
    case 'power':
      return fitPower(member, (figure, what) => within(figure, build.share(heldFigure(member, what))), celsius);
    default:
      return member satisfies never;
  }
}

/** A junction at a share of its spread, at a temperature in °C. */
export function builtJunction({ min, typ, max }: JunctionSpread, share: number, celsius: number): Junction {
  const [from, to, way] = share < 0.5 ? [min, typ, 2 * share] : [typ, max, 2 * share - 1];
  return junctionBetween(junctionAt(from, celsius), junctionAt(to, celsius), way);
}

function sum(members: readonly FittedMember[], lean: Lean, standing: number, fed: boolean, build?: Build): Branch {
  const junctions = members.flatMap((m) => m.junction ?? []);
  const filament = members.find((m) => m.filament)?.filament;
  const fixed = members.find(({ member: { kind } }) => kind === 'current' || kind === 'power');
  const drawing = fixed?.member;
  const plain: Branch = {
    resistance: members.reduce((total, m) => total + m.ohms, 0),
    drop: members.reduce((total, m) => total + m.drop, 0),
    junctions,
    filament,
    current: drawing?.kind === 'current' ? (fed ? drawn(drawing, lean, build) : 0) : undefined,
    power:
      drawing?.kind === 'power'
        ? { watts: fed ? fixed!.watts : 0, least: MOST_AT * standing, most: mostOf(fixed!.held) }
        : undefined,
    beyond: undefined,
  };
  return withLines(
    plain,
    members.flatMap((m) => (m.curve ? [m.curve] : [])),
  );
}
