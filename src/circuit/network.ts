/**
 * A network: a few inner nodes tied together and to nodes of known voltage by branches. Every branch's current rises with
 * the voltage across it, so the content of the network is convex and Newton's method, damped so that the slope along the
 * step never turns far past zero, always ends at the one solution.
 */
import type { Branch, Flow } from './branch.js';
import { branchFlow } from './branch.js';

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
 * @throws when it does not converge, which no network of monotone branches can cause
 */
export function solveNetwork(inner: number, edges: readonly Edge[], voltages: Float64Array | number[]): Flow[] {
  const flows: Flow[] = edges.map((e) => branchFlow(e.branch, voltages[e.from]! - voltages[e.to]!));
  if (inner === 0) return flows;
  const residual = new Float64Array(inner);
  const matrix = new Float64Array(inner * inner);
  const step = new Float64Array(inner);
  for (let round = 0; round < 200; round++) {
    let scale = 1e-18;
    residual.fill(0);
    matrix.fill(0);
    edges.forEach((e, k) => {
      const { current, conductance } = flows[k]!;
      // A node that nothing but blocked junctions hold has no slope; a trace of conductance keeps the matrix regular.
      const g = conductance + 1e-15;
      if (Math.abs(current) > scale) scale = Math.abs(current);
      if (e.from < inner) {
        residual[e.from]! += current;
        matrix[e.from * inner + e.from]! += g;
        if (e.to < inner) matrix[e.from * inner + e.to]! -= g;
      }
      if (e.to < inner) {
        residual[e.to]! -= current;
        matrix[e.to * inner + e.to]! += g;
        if (e.from < inner) matrix[e.to * inner + e.from]! -= g;
      }
    });
    let worst = 0;
    for (const r of residual) if (Math.abs(r) > worst) worst = Math.abs(r);
    if (worst <= 2e-15 * scale) return flows;
    for (let i = 0; i < inner; i++) step[i] = -residual[i]!;
    eliminate(matrix, step, inner);
    let slope = 0;
    let farthest = 0;
    for (let i = 0; i < inner; i++) {
      slope += residual[i]! * step[i]!;
      farthest = Math.max(farthest, Math.abs(step[i]!));
    }
    if (farthest < 1e-15 || (worst <= 1e-11 * scale && farthest < 1e-13)) return flows;
    let part = 1;
    for (let i = 0; i < inner; i++) voltages[i]! += step[i]!;
    for (let halving = 0; ; halving++) {
      edges.forEach((e, k) => (flows[k] = branchFlow(e.branch, voltages[e.from]! - voltages[e.to]!)));
      if (halving === 40 || Math.abs(slopeAlong(inner, edges, flows, step)) <= 0.9 * Math.abs(slope) || worst <= 1e-9 * scale) break;
      part /= 2;
      for (let i = 0; i < inner; i++) voltages[i]! -= part * step[i]!;
    }
  }
  throw new Error('a network of monotone branches did not converge');
}

function slopeAlong(inner: number, edges: readonly Edge[], flows: readonly Flow[], step: Float64Array): number {
  let slope = 0;
  edges.forEach((e, k) => {
    const current = flows[k]!.current;
    if (e.from < inner) slope += current * step[e.from]!;
    if (e.to < inner) slope -= current * step[e.to]!;
  });
  return slope;
}

/** Gaussian elimination in place; the matrix is symmetric and positive definite, so no pivoting is needed. */
function eliminate(matrix: Float64Array, vector: Float64Array, n: number): void {
  for (let k = 0; k < n; k++) {
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
