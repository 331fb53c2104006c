/** What flows while a pin has let go: all that hangs on it solved as one network, the clamp to its supply in the place of its output. */
import type { Branch } from '../circuit/branch.js';
import { copperFactor } from '../circuit/copper.js';
import { junctionAt, junctionVoltage } from '../circuit/junction.js';
import type { LinePoint } from '../circuit/lines.js';
import { lineVoltage, withLines } from '../circuit/lines.js';
import { solveNetwork } from '../circuit/network.js';
import type { Reading, SolvedBranch } from '../loads/account-plan.js';
import type { BranchPlan, Member } from '../loads/branch-plan.js';
import { GROUND } from '../loads/branch-plan.js';

/** Ohms of leads and bonds, where nothing else on a way has any. */
const LEADS = 1e-3;

/** A pin with all that hangs on it while it has let go, the clamp to its supply in the place of its output. */
export interface Released {
  readonly pin: string;
  readonly rail: string;
  readonly circuit: string;
  readonly node: string;
  readonly inner: readonly string[];
  readonly ways: readonly BranchPlan[];
  readonly clamp: BranchPlan;
  /** Of a pin whose chip is dead: the nodes that are dead with it, which are taken at 0 V. */
  readonly dead?: ReadonlySet<string>;
}

/** What a corner tells that is needed here. */
export type Corner = Pick<Reading, 'typical' | 'ambientOf' | 'voltage'>;

/** A corner in which what is dead stands at 0 V. */
const deadIn = ({ dead }: Released, s: Corner): Corner =>
  dead === undefined
    ? s
    : {
        typical: s.typical,
        ambientOf: (name) => s.ambientOf(name),
        voltage: (node) => (dead.has(node) ? 0 : s.voltage(node)),
      };

/** What leads up to the pin loses least; what leads away, to ground or beside the clamp to the pin's own supply, takes least. */
function endOf(branch: BranchPlan, { clamp }: Released, { typical }: Corner): 'min' | 'typ' | 'max' {
  if (typical) return 'typ';
  const ends = [branch.from, branch.to];
  return branch !== clamp && (ends.includes(GROUND) || ends.includes(clamp.to)) ? 'max' : 'min';
}

interface Put {
  readonly member: Member;
  readonly ohms: number;
  readonly drop: number;
  readonly law?: Branch['junctions'][number];
  readonly curve?: readonly LinePoint[];
}

/** A member with its figure at an end of its range. */
function put(member: Member, end: 'min' | 'typ' | 'max', ambient: number): Put {
  const none = { member, ohms: 0, drop: 0 };
  switch (member.kind) {
    case 'resistance':
      return {
        ...none,
        ohms: member.ohms[end] * (member.copper === undefined ? 1 : copperFactor(ambient, member.copper)),
      };
    case 'pin':
      return { ...none, ohms: member.ohms[end] };
    case 'drop':
      return { ...none, drop: member.volts[end] };
    case 'junction':
      return { ...none, law: junctionAt(member.law[end], ambient) };
    case 'curve':
      return { ...none, curve: member.points.map(({ amps, volts }) => ({ amps, volts: volts[end] })) };
    case 'filament':
      return { ...none, ohms: member.volts / member.amps.max };
    case 'current':
    case 'power':
      return none;
    default:
      return member satisfies never;
  }
}

function branchOf(plan: BranchPlan, members: readonly Put[], end: 'min' | 'typ' | 'max'): Branch {
  const fixed = plan.members.find((m) => m.kind === 'current');
  const plain: Branch = {
    resistance: Math.max(
      members.reduce((sum, m) => sum + m.ohms, 0),
      LEADS,
    ),
    drop: members.reduce((sum, m) => sum + m.drop, 0),
    junctions: members.flatMap((m) => m.law ?? []),
    // A pin that has let go gives nobody a current: what takes one from it pulls it down.
    ...(fixed && { current: plan.to === GROUND ? 0 : fixed.amps[end === 'max' ? 'min' : end] }),
  };
  return withLines(
    plain,
    members.flatMap((m) => (m.curve ? [m.curve] : [])),
  );
}

/** What flows through the clamp in a corner, and how it comes there. */
export function pushed(released: Released, corner: Corner) {
  const s = deadIn(released, corner);
  const { inner, ways, clamp, node } = released;
  const plans = [...ways, clamp];
  const names = [...inner, ...new Set(plans.flatMap((p) => [p.from, p.to]).filter((n) => !inner.includes(n)))];
  const volts = names.map((n, k) => (k < inner.length ? s.voltage(clamp.to) : n === GROUND ? 0 : s.voltage(n)));
  const members = plans.map((p) =>
    p.members.map((m) => put(m, endOf(p, released, s), s.ambientOf(p === clamp ? released.pin : p.circuit))),
  );
  const edges = plans.map((p, k) => ({
    from: names.indexOf(p.from),
    to: names.indexOf(p.to),
    branch: branchOf(p, members[k]!, endOf(p, released, s)),
  }));
  const flows = solveNetwork(inner.length, edges, volts);
  const at = (name: string) => ({ node: name, volts: volts[names.indexOf(name)]! });
  const solved = plans.map((p, k): SolvedBranch => {
    const amps = flows[k]!.current;
    return {
      from: at(p.from),
      to: at(p.to),
      amps,
      members: members[k]!.map(({ member, ohms, drop, law, curve }) => ({
        member,
        volts:
          ohms * amps +
          (amps > 0 ? drop + (curve ? lineVoltage(curve, amps) : 0) : 0) +
          (law ? junctionVoltage(law, amps) : 0),
        ...(ohms > 0 && { ohms }),
      })),
    };
  });
  const { amps } = solved.at(-1)!;
  return { amps: Math.max(amps, 0), clamp: solved.at(-1)!, at: at(node).volts, ways: solved.slice(0, -1) };
}
