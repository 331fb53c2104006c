/**
 * A branch: what hangs in series between two nodes. Resistances and constant drops add up; junctions bend. Its current is
 * a monotone function of the voltage across it, so that every network of branches has exactly one solution.
 */
import type { Filament } from './filament.js';
import { RERATING, filamentSlope, filamentVoltage } from './filament.js';
import type { Junction } from './junction.js';

/** The electrical content of a branch, all its members summed. */
export interface Branch {
  /** Total series resistance, ohms; above zero unless `current` is set or a junction has a resistance of its own. */
  readonly resistance: number;
  /** Total of constant drops that oppose the current, volts: nothing flows below it. */
  readonly drop: number;
  readonly junctions: readonly Junction[];
  /** A lamp, which conducts either way. */
  readonly filament?: Filament | undefined;
  /** A load that takes so many watts from whatever reaches it, and its current rises as its voltage falls. */
  readonly power?: ConstantPower | undefined;
  /** A branch that draws a fixed current whatever the voltage, amperes: its ends must be able to give it. */
  readonly current?: number | undefined;
  /** So far it holds; what carries more amperes than `upTo` is `next`. The two meet there. */
  readonly beyond?: { readonly upTo: number; readonly next: Branch } | undefined;
}

/**
 * A constant power, watts. Such a branch is not monotone: it may stand only between nodes of known voltage, never in a
 * network with nodes of its own.
 */
export interface ConstantPower {
  readonly watts: number;
  /**
   * Volts between the branch's ends below which it takes no more current: a source with resistance gives the most at half
   * its voltage, and what asks for more makes it collapse.
   */
  readonly least: number;
  /** Amperes that it takes at the most, however low its voltage: a chopper passes on no more than its windings carry. */
  readonly most?: number | undefined;
}

/** Current through a branch and its slope. */
export interface Flow {
  /** Amperes, positive from the branch's first node to its second. */
  readonly current: number;
  /** Conductance di/dv at that point, siemens. */
  readonly conductance: number;
}

/** Rounding alone parts two nodes by so many volts: that near to where a branch begins to conduct it has the slope beyond. */
const BEND = 1e-13;

/** Where ln i is that far above ln Is, a double no longer tells ln(1 + i/Is) from their difference. */
const FAR = 36;

/** Current through a branch at a voltage in volts, and its slope. @param guess see `branchCurrent` */
export function branchFlow(branch: Branch, voltage: number, guess = 0): Flow {
  const current = branchCurrent(branch, voltage, guess);
  return { current, conductance: branchConductance(branch, voltage, current) };
}

/**
 * Current through a branch in amperes at a voltage in volts, to the last bits of a double. A junction or a drop blocks the
 * other way.
 *
 * @param guess a current that is nearly right, amperes, to start from; 0 when there is none
 */
export function branchCurrent(branch: Branch, voltage: number, guess = 0): number {
  if (branch.current !== undefined) return branch.current;
  const { beyond } = branch;
  if (beyond === undefined) return pieceCurrent(branch, voltage, guess);
  const current = pieceCurrent(branch, voltage, Math.min(guess, beyond.upTo));
  return current <= beyond.upTo ? current : Math.max(branchCurrent(beyond.next, voltage, guess), beyond.upTo);
}

/** The same of one piece of a branch. */
function pieceCurrent(branch: Branch, voltage: number, guess: number): number {
  if (branch.power !== undefined) return powerCurrent(branch, branch.power, voltage);
  const u = voltage - branch.drop;
  if (branch.filament !== undefined) return filamentCurrent(branch, branch.filament, u, guess);
  if (branch.junctions.length === 0) return branch.drop > 0 && u <= 0 ? 0 : u / branch.resistance;
  // Between nothing and that no charge moves, and doubles run out of digits.
  return u < 1e-30 ? 0 : bentCurrent(branch, u, guess);
}

/** The same with a filament: without anything that blocks it conducts either way. */
function filamentCurrent(branch: Branch, filament: Filament, u: number, guess: number): number {
  const blocks = branch.junctions.length > 0 || branch.drop > 0;
  if (Math.abs(u) < 1e-30 || (blocks && u < 0)) return 0;
  if (branch.resistance === 0 && branch.junctions.length === 0)
    return Math.sign(u) * filament.amps * (Math.abs(u) / filament.volts) ** RERATING;
  return Math.sign(u) * bentCurrent(branch, Math.abs(u), Math.abs(guess));
}

/** Lowest volts, less the drop, at which a constant power still takes what it asks for. */
const leastFor = ({ resistance, drop }: Branch, { watts, least, most }: ConstantPower): number =>
  Math.max(
    least - drop,
    2 * Math.sqrt(watts * resistance),
    // I = P / (U − R · I) is `most` at this U.
    most === undefined || most === 0 ? 0 : watts / most + resistance * most,
  );

/** P = I · (U − R · I): the smaller of its two solutions, at which the load gets the higher voltage. */
function powerCurrent(branch: Branch, power: ConstantPower, voltage: number): number {
  const u = Math.max(voltage - branch.drop, leastFor(branch, power));
  if (u <= 0) return 0;
  return (2 * power.watts) / (u + Math.sqrt(Math.max(u * u - 4 * power.watts * branch.resistance, 0)));
}

/**
 * The same with junctions, where u volts are left for them: u = R·i + Σ a·ln(1 + i/Is) is solved for x = ln i. The equation
 * is convex and rising in x, so Newton's method started at an upper bound comes down to the root without overshooting.
 */
function bentCurrent(branch: Branch, u: number, guess: number): number {
  const { junctions } = branch;
  let resistance = branch.resistance;
  let slopes = 0;
  let weighted = 0;
  // Loops by number: this is where an audit spends its time, and before it is compiled an iterator costs more than the sum.
  for (let k = 0; k < junctions.length; k++) {
    const { series, slope, logSaturation } = junctions[k]!;
    resistance += series;
    slopes += slope;
    weighted += slope * logSaturation;
  }
  // Neither the resistance alone nor the junctions alone can let more through than this.
  const { filament } = branch;
  const logAmps = filament ? Math.log(filament.amps) : 0;
  const most = Math.min(
    Math.log(u / resistance),
    (u + weighted) / slopes,
    filament ? logAmps + RERATING * Math.log(u / filament.volts) : Infinity,
  );
  let x = guess > 0 ? Math.min(most, Math.log(guess)) : most;
  let current = Math.exp(x);
  for (let step = 0; step < 60; step++) {
    let value = resistance * current - u;
    let slope = resistance * current;
    if (filament) {
      const volts = filament.volts * Math.exp((x - logAmps) / RERATING);
      value += volts;
      slope += volts / RERATING;
    }
    for (let k = 0; k < junctions.length; k++) {
      const j = junctions[k]!;
      const y = x - j.logSaturation;
      if (y > FAR) {
        value += j.slope * y;
        slope += j.slope;
        continue;
      }
      const ratio = Math.exp(y);
      value += j.slope * Math.log1p(ratio);
      slope += (j.slope * ratio) / (1 + ratio);
    }
    const dx = value / slope;
    // From a guess below the root the first step flies beyond it, and may fly far.
    x = Math.min(x - dx, most);
    current = Math.exp(x);
    if (Math.abs(dx) < 1e-14) break;
    // Quadratic convergence: after a step of 1e-8 the next one is below the resolution of a double.
    if (Math.abs(dx) < 1e-8 && step > 0) break;
  }
  return current;
}

/** Conductance of a branch in siemens at a voltage in volts, where it carries a current in amperes. */
export function branchConductance(branch: Branch, voltage: number, current: number): number {
  if (branch.current !== undefined) return 0;
  if (branch.beyond && current > branch.beyond.upTo) return branchConductance(branch.beyond.next, voltage, current);
  if (branch.power !== undefined) return powerConductance(branch, branch.power, voltage, current);
  const { junctions } = branch;
  const blocks = junctions.length > 0 || branch.drop > 0;
  if (blocks && voltage - branch.drop <= -BEND) return 0;
  let impedance = branch.resistance + (branch.filament ? filamentSlope(branch.filament, current) : 0);
  for (let k = 0; k < junctions.length; k++) {
    const j = junctions[k]!;
    impedance += j.series + j.slope / (current + Math.exp(j.logSaturation));
  }
  return 1 / impedance;
}

function powerConductance(branch: Branch, power: ConstantPower, voltage: number, current: number): number {
  const u = voltage - branch.drop;
  return u > leastFor(branch, power) ? -current / (u - 2 * branch.resistance * current) : 0;
}

/**
 * How a branch bends where it carries a current in amperes with a conductance in siemens: d²i/dv², A/V². Half of it times
 * the square of the way is what the tangent leaves out.
 */
export function bendAt(branch: Branch, current: number, conductance: number): number {
  // Without resistance on its way: I = P / U, its slope -P / U², its bend 2 P / U³.
  if (branch.power !== undefined) return current > 0 ? (2 * conductance ** 2) / current : 0;
  let bend = 0;
  if (branch.filament && current !== 0)
    bend += (filamentVoltage(branch.filament, Math.abs(current)) * (1 / RERATING) * (1 / RERATING - 1)) / current ** 2;
  for (const j of branch.junctions) bend += j.slope / (current + Math.exp(j.logSaturation)) ** 2;
  return conductance ** 3 * bend;
}
