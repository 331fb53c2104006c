/**
 * A branch: what hangs in series between two nodes. Resistances and constant drops add up; junctions bend. Its current is
 * a monotone function of the voltage across it, so that every network of branches has exactly one solution.
 */
import type { Junction } from './junction.js';
import { softLog } from './junction.js';

/** The electrical content of a branch, all its members summed. */
export interface Branch {
  /** Total series resistance, ohms; above zero unless `current` is set or a junction has a resistance of its own. */
  readonly resistance: number;
  /** Total of constant drops that oppose the current, volts: nothing flows below it. */
  readonly drop: number;
  readonly junctions: readonly Junction[];
  /** A branch that draws a fixed current whatever the voltage, amperes: its ends must be able to give it. */
  readonly current?: number;
}

/** Current through a branch and its slope. */
export interface Flow {
  /** Amperes, positive from the branch's first node to its second. */
  readonly current: number;
  /** Conductance di/dv at that point, siemens. */
  readonly conductance: number;
}

const NOTHING: Flow = { current: 0, conductance: 0 };

/** Rounding alone parts two nodes by so many volts: that near to where a branch begins to conduct it has the slope beyond. */
const BEND = 1e-13;

/**
 * Current through a branch at a voltage in volts, to the last bits of a double. A junction or a drop blocks the other way.
 *
 * With junctions, u = R·i + Σ a·ln(1 + i/Is) is solved for x = ln i: the equation is convex and rising in x, so Newton's
 * method started at an upper bound comes down to the root without overshooting.
 *
 * @param guess a current that is nearly right, amperes, to start from; 0 when there is none
 */
export function branchFlow(branch: Branch, voltage: number, guess = 0): Flow {
  if (branch.current !== undefined) return { current: branch.current, conductance: 0 };
  const u = voltage - branch.drop;
  if (branch.junctions.length === 0) {
    if (branch.drop > 0 && u <= 0) return u <= -BEND ? NOTHING : { current: 0, conductance: 1 / branch.resistance };
    return { current: u / branch.resistance, conductance: 1 / branch.resistance };
  }
  if (u <= -BEND) return NOTHING;
  let resistance = branch.resistance;
  let slopes = 0;
  let weighted = 0;
  for (const j of branch.junctions) {
    resistance += j.series;
    slopes += j.slope;
    weighted += j.slope * j.logSaturation;
  }
  // Between nothing and that no charge moves, and doubles run out of digits.
  if (u < 1e-30) return { current: 0, conductance: slopeAt(0, resistance, branch.junctions) };
  // Neither the resistance alone nor the junctions alone can let more through than this.
  const most = Math.min(Math.log(u / resistance), (u + weighted) / slopes);
  let x = guess > 0 ? Math.min(most, Math.log(guess)) : most;
  let current = Math.exp(x);
  for (let step = 0; step < 60; step++) {
    let value = resistance * current - u;
    let slope = resistance * current;
    for (const j of branch.junctions) {
      const y = x - j.logSaturation;
      value += j.slope * softLog(y);
      slope += j.slope / (1 + Math.exp(-y));
    }
    const dx = value / slope;
    // From a guess below the root the first step flies beyond it, and may fly far.
    x = Math.min(x - dx, most);
    current = Math.exp(x);
    if (Math.abs(dx) < 1e-14) break;
    // Quadratic convergence: after a step of 1e-8 the next one is below the resolution of a double.
    if (Math.abs(dx) < 1e-8 && step > 0) break;
  }
  return { current, conductance: slopeAt(current, resistance, branch.junctions) };
}

/** Conductance at a current, siemens: each junction adds a/(i + Is) to the resistance. */
function slopeAt(current: number, resistance: number, junctions: readonly Junction[]): number {
  let impedance = resistance;
  for (const j of junctions) impedance += j.slope / (current + Math.exp(j.logSaturation));
  return 1 / impedance;
}

/**
 * How a branch bends where it carries a current in amperes with a conductance in siemens: d²i/dv², A/V². Half of it times
 * the square of the way is what the tangent leaves out.
 */
export function bendAt(branch: Branch, current: number, conductance: number): number {
  let bend = 0;
  for (const j of branch.junctions) bend += j.slope / (current + Math.exp(j.logSaturation)) ** 2;
  return conductance ** 3 * bend;
}
