/** Networks with their figures put in. */
import type { Filament } from '../circuit/filament.js';
import { filamentVoltage } from '../circuit/filament.js';
import type { Junction } from '../circuit/junction.js';
import { junctionVoltage } from '../circuit/junction.js';
import type { LinePoint } from '../circuit/lines.js';
import { lineVoltage } from '../circuit/lines.js';
import type { Edge } from '../circuit/network.js';
import type { Held } from '../loads/account-plan.js';
import type { BranchPlan, Member } from '../loads/branch-plan.js';

/** One member of a branch with its figures put in. */
export interface FittedMember {
  readonly member: Member;
  readonly ohms: number;
  readonly drop: number;
  readonly junction: Junction | undefined;
  /** Volts over amperes, in straight lines. */
  readonly curve: readonly LinePoint[] | undefined;
  readonly filament: Filament | undefined;
  /** Watts that it takes whatever it gets, and the current that a chopper holds with them. */
  readonly watts: number;
  readonly held: Held | undefined;
}

/** A member with those of its figures that it has; all have the same keys, which is read the fastest. */
export const fittedMember = (
  member: Member,
  { ohms = 0, drop = 0, junction, curve, filament, watts = 0, held }: Partial<Omit<FittedMember, 'member'>> = {},
): FittedMember => ({ member, ohms, drop, junction, curve, filament, watts, held });

/** Volts across a member that carries a current in amperes; none of what takes its current whatever it gets. */
export const voltsAcross = ({ ohms, drop, junction, curve, filament }: FittedMember, current: number): number =>
  ohms * current +
  (current > 0 ? drop + (curve ? lineVoltage(curve, current) : 0) : 0) +
  (junction === undefined ? 0 : junctionVoltage(junction, current)) +
  (filament === undefined ? 0 : filamentVoltage(filament, current));

/** A network with its figures put in; local nodes are the inner ones first, then those of the tree. */
export interface FittedNetwork {
  readonly edges: readonly Edge[];
  readonly members: readonly (readonly FittedMember[])[];
  readonly plans: readonly BranchPlan[];
  /** Tree node of each local node from `inner` on. */
  readonly boundary: readonly number[];
  readonly inner: number;
}
