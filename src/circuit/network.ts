/**
 * A network: a few inner nodes tied together and to nodes of known voltage by branches. Every branch's current rises with
 * the voltage across it, so the content of the network is convex and Newton's method, damped so that the slope along the
 * step never turns far past zero, always ends at the one solution.
 */
import type { Branch, Flow } from './branch.js';
import { branchConductance, branchCurrent } from './branch.js';

/** A double holds its number to this share of it. */
const LAST_BITS = 4e-16;

/** Amperes, a few electrons a second. */
const NO_CURRENT = 1e-18;

const NO_SOLUTION = 'a network has no solution: a fixed current has no way to flow, or a figure is no number';

/** A branch between two nodes; nodes 0…inner−1 are the unknown ones, the others are given. */
export interface Edge {
  readonly from: number;
  readonly to: number;
  readonly branch: Branch;
}

/**
 * Solves for the inner nodes' voltages by Kirchhoff's current law.
 *
 * @param inner how many nodes, numbered from 0, are unknown
 * @param edges the branches
 * @param voltages volts by node: the given nodes set, the inner ones a first guess; the inner ones are overwritten
 * @returns the flow through each edge, in the order of `edges`
 * @throws when a fixed current has no way to flow or a figure is no number: nothing else keeps it from coming to rest
 */
export function solveNetwork(inner: number, edges: readonly Edge[], voltages: Float64Array | number[]): Flow[] {
  const currents = new Array<number>(edges.length).fill(0);
  const conductances = new Array<number>(edges.length).fill(0);
  settleNetwork({ inner, edges, voltages, currents, conductances });
  return currents.map((current, k) => ({ current, conductance: conductances[k]! }));
}

/** A network with what it is being solved for, in arrays that are kept. */
export interface Settling {
  /** How many nodes, numbered from 0, are unknown. */
  readonly inner: number;
  readonly edges: readonly Edge[];
  /** Volts by node: the given nodes set, the inner ones a first guess; the inner ones are overwritten. */
  readonly voltages: Float64Array | number[];
  /** Amperes by edge: guesses that are overwritten, 0 where there is none. */
  readonly currents: number[];
  /** Siemens by edge, overwritten. */
  readonly conductances: number[];
}

/** The same as `solveNetwork`, for those who keep arrays for it. */
export function settleNetwork(net: Settling): void {
  flow(net);
  if (net.inner === 0) return;
  const passive = net.edges.every(answers);
  if (net.inner === 1 && passive) {
    solveNode(net);
    return;
  }
  descend(net, passive);
  if (passive) drawIn(net);
}

/** Newton's method from where the nodes stand and what flows there. @param passive no branch takes a current of its own */
function descend(net: Settling, passive: boolean): void {
  const { inner, edges, voltages, currents, conductances } = net;
  const residual = new Array<number>(inner).fill(0);
  const matrix = new Array<number>(inner * inner).fill(0);
  const step = new Array<number>(inner).fill(0);
  let rounding = false;
  for (let round = 0; round < 400; round++) {
    let scale = 0;
    residual.fill(0);
    matrix.fill(0);
    for (let k = 0; k < edges.length; k++) {
      const { from, to } = edges[k]!;
      const current = currents[k]!;
      const g = conductances[k]!;
      if (Math.abs(current) > scale) scale = Math.abs(current);
      if (from < inner) {
        residual[from]! += current;
        matrix[from * inner + from]! += g;
        if (to < inner) matrix[from * inner + to]! -= g;
      }
      if (to < inner) {
        residual[to]! -= current;
        matrix[to * inner + to]! += g;
        if (from < inner) matrix[to * inner + from]! -= g;
      }
    }
    let worst = 0;
    for (let i = 0; i < inner; i++) worst = Math.max(worst, Math.abs(residual[i]!));
    if (worst <= Math.max(2e-15 * scale, NO_CURRENT)) return;
    for (let i = 0; i < inner; i++) step[i] = -residual[i]!;
    eliminate(matrix, step, inner);
    let slope = 0;
    let farthest = 0;
    let reach = 1;
    for (let i = 0; i < voltages.length; i++) reach = Math.max(reach, Math.abs(voltages[i]!));
    for (let i = 0; i < inner; i++) {
      slope += residual[i]! * step[i]!;
      farthest = Math.max(farthest, Math.abs(step[i]!));
    }
    if (worst <= 1e-11 * scale && farthest < 1e-13) return;
    // When no node would move by more than the last bits of the voltages, what is left is rounding or has no way to flow.
    rounding = worst <= 1e-9 * scale + 1e-10;
    if (farthest <= LAST_BITS * reach) break;
    // What only leaks has so little slope that a whole step would lead kilovolts away, where a double rounds off amperes.
    if (passive && farthest > FAR * reach) {
      const share = (FAR * reach) / farthest;
      for (let i = 0; i < inner; i++) step[i]! *= share;
      slope *= share;
    }
    let part = 1;
    for (let i = 0; i < inner; i++) voltages[i]! += step[i]!;
    for (let halving = 0; ; halving++) {
      flow(net);
      if (halving === 40 || slopeAlong(net, step) <= -0.9 * slope || worst <= 1e-9 * scale) break;
      part /= 2;
      for (let i = 0; i < inner; i++) voltages[i]! -= part * step[i]!;
    }
  }
  if (rounding) return;
  throw new Error(NO_SOLUTION);
}

/** A step leads no further than so many times the highest voltage. */
const FAR = 10;

/**
 * Brings inner nodes that nothing holds to the nearest of the given voltages. Where no branch takes a current of its own
 * nodes stand between these: drawn together, no branch has more across it than before, so that a solution stays one.
 */
function drawIn(net: Settling): void {
  const { inner, voltages } = net;
  let [low, high] = [Infinity, -Infinity];
  for (let k = inner; k < voltages.length; k++) {
    low = Math.min(low, voltages[k]!);
    high = Math.max(high, voltages[k]!);
  }
  let isMoved = false;
  for (let i = 0; i < inner; i++) {
    const within = Math.min(Math.max(voltages[i]!, low), high);
    isMoved ||= Math.abs(within - voltages[i]!) > ASTRAY;
    if (Math.abs(within - voltages[i]!) > ASTRAY) voltages[i] = within;
  }
  if (isMoved) flow(net);
}

/** Volts by which rounding alone does not lead a node astray. */
const ASTRAY = 1e-9;

/** Whether a branch's current answers to the voltage across it. */
const answers = ({ branch }: Edge): boolean => branch.current === undefined;

/** What flows through each edge at given voltages. The currents that were there are guesses. */
function flow({ edges, voltages, currents, conductances }: Settling): void {
  for (let k = 0; k < edges.length; k++) {
    const { from, to, branch } = edges[k]!;
    const across = voltages[from]! - voltages[to]!;
    const current = branchCurrent(branch, across, currents[k]);
    currents[k] = current;
    conductances[k] = branchConductance(branch, across, current);
  }
}

/** Amperes that a node may be out of balance by, as a share of the largest current at it. */
const BALANCED = 1e-13;

/**
 * One unknown node: what leaves it rises with its voltage, so the root lies between the given voltages. Newton's method,
 * and halving where a step would leave what is known to hold the root.
 */
function solveNode(net: Settling): void {
  const { edges, voltages, currents, conductances } = net;
  let low = Infinity;
  let high = -Infinity;
  for (let k = 1; k < voltages.length; k++) {
    low = Math.min(low, voltages[k]!);
    high = Math.max(high, voltages[k]!);
  }
  for (let round = 0; round < 200; round++) {
    let leaving = 0;
    let slope = 0;
    let scale = 0;
    for (let k = 0; k < edges.length; k++) {
      const current = currents[k]!;
      const { from, to } = edges[k]!;
      if (from === to || (from !== 0 && to !== 0)) continue;
      leaving += from === 0 ? current : -current;
      slope += conductances[k]!;
      scale = Math.max(scale, Math.abs(current));
    }
    if (Number.isNaN(leaving)) break;
    if (Math.abs(leaving) <= Math.max(BALANCED * scale, NO_CURRENT)) return;
    const at = voltages[0]!;
    if (leaving > 0) high = Math.min(high, at);
    else low = Math.max(low, at);
    let next = at - leaving / slope;
    if (!(next > low && next < high)) next = (low + high) / 2;
    if (Math.abs(next - at) <= LAST_BITS * Math.max(1, Math.abs(at))) return;
    voltages[0] = next;
    flow(net);
  }
  throw new Error(NO_SOLUTION);
}

function slopeAlong({ inner, edges, currents }: Settling, step: readonly number[]): number {
  let slope = 0;
  for (let k = 0; k < edges.length; k++) {
    const { from, to } = edges[k]!;
    const current = currents[k]!;
    if (from < inner) slope += current * step[from]!;
    if (to < inner) slope -= current * step[to]!;
  }
  return slope;
}

/**
 * Gaussian elimination in place; the matrix is symmetric and positive, so no pivoting is needed. Nodes that only blocked
 * junctions tie to the rest have no slope left: the last of them stays where it is and carries the others.
 */
export function eliminate(matrix: number[], vector: number[], n: number): void {
  for (let k = 0; k < n; k++) {
    if (!(matrix[k * n + k]! > 0)) {
      for (let j = 0; j < n; j++) matrix[k * n + j] = matrix[j * n + k] = 0;
      matrix[k * n + k] = 1;
      vector[k] = 0;
      continue;
    }
    for (let i = k + 1; i < n; i++) {
      const factor = matrix[i * n + k]! / matrix[k * n + k]!;
      if (factor === 0) continue;
      for (let j = k; j < n; j++) matrix[i * n + j]! -= factor * matrix[k * n + j]!;
      vector[i]! -= factor * vector[k]!;
    }
  }
  for (let i = n - 1; i >= 0; i--) {
    let sum = vector[i]!;
    for (let j = i + 1; j < n; j++) sum -= matrix[i * n + j]! * vector[j]!;
    vector[i] = sum / matrix[i * n + i]!;
  }
}
