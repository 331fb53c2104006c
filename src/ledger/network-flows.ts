/**
 * The flows of one network at the voltages of the tree's nodes, and their slopes against these: what a sweep of the supply
 * tree collects from it.
 */
import type { Edge } from '../circuit/network.js';
import { eliminate, settleNetwork } from '../circuit/network.js';
import type { FittedNetwork } from './fitted.js';
import { zeros } from './circuitry.js';

/** A network's solved currents; while the tree is swept, one sweep's voltages and currents are the next one's guess. */
export interface Flows {
  readonly fitted: FittedNetwork;
  /** Its own nodes' first, then those of the tree's. */
  readonly volts: number[];
  readonly currents: number[];
  readonly conductances: number[];
}

/** For each node the one that it moves with, where some do not move by themselves. */
export type Moving = readonly number[] | undefined;

/** A network about to be solved. @param near the same one in the same state, solved at other voltages: a guess */
export function unsolved(fitted: FittedNetwork, nodes: readonly number[], near?: Flows): Flows {
  const { inner, boundary, edges } = fitted;
  const volts = near?.volts.slice() ?? zeros(inner + boundary.length);
  if (near === undefined && inner > 0) {
    let middle = 0;
    for (const node of boundary) middle += nodes[node]! / boundary.length;
    volts.fill(middle, 0, inner);
  }
  // It was solved at no voltages yet.
  volts.fill(NaN, inner);
  return { fitted, volts, currents: near?.currents.slice() ?? zeros(edges.length), conductances: zeros(edges.length) };
}

/** Solves a network at given voltages of the tree's nodes; nothing is to do where none of its nodes moved. */
export function solved(flows: Flows, nodes: readonly number[], moving: Moving): Flows {
  const { fitted, volts, currents, conductances } = flows;
  const { inner, boundary, edges } = fitted;
  // Slopes change with what moves as one, too.
  let moved = moving !== undefined;
  for (let k = 0; k < boundary.length; k++) {
    const at = nodes[boundary[k]!]!;
    if (volts[inner + k] === at) continue;
    volts[inner + k] = at;
    moved = true;
  }
  if (!moved) return flows;
  settleNetwork({ inner, edges, voltages: volts, currents, conductances });
  if (inner === 1) followNode(fitted, moving, conductances);
  else if (inner > 1) follow(fitted, moving, conductances);
  return flows;
}

/**
 * Turns the conductances of a network's outer branches into slopes against the tree's nodes: the network's own nodes follow
 * the one that moves, so that a pin of 12 Ω with 470 Ω behind it answers like 482 Ω.
 */
function follow({ edges, boundary, inner }: FittedNetwork, moving: Moving, conductances: number[]): void {
  const movedBy = boundary.map((node) => mover(node, moving));
  const own = conductances.slice();
  for (const node of new Set(movedBy)) {
    const moves = (local: number): boolean => local >= inner && movedBy[local - inner] === node;
    const matrix = zeros(inner * inner);
    const shifts = zeros(inner);
    edges.forEach(({ from, to }, k) => {
      for (const [here, there] of [
        [from, to],
        [to, from],
      ] as const) {
        if (here >= inner) continue;
        matrix[here * inner + here]! += own[k]!;
        if (there < inner) matrix[here * inner + there]! -= own[k]!;
        else if (moves(there)) shifts[here]! += own[k]!;
      }
    });
    eliminate(matrix, shifts, inner);
    const shift = (local: number): number => (local < inner ? shifts[local]! : moves(local) ? 1 : 0);
    edges.forEach(({ from, to }, k) => {
      if (moves(from)) conductances[k] = own[k]! * (1 - shift(to));
      else if (moves(to)) conductances[k] = own[k]! * (1 - shift(from));
    });
  }
}

/** The same for a network with one node of its own: it follows by the share of its conductance that leads to what moves. */
function followNode({ edges, boundary }: FittedNetwork, moving: Moving, conductances: number[]): void {
  const own = conductances.slice();
  let whole = 0;
  for (let k = 0; k < edges.length; k++) if (outer(edges[k]!) > 0) whole += own[k]!;
  if (whole === 0) return;
  for (let k = 0; k < edges.length; k++) {
    const end = outer(edges[k]!);
    if (end === 0) continue;
    let together = 0;
    for (let j = 0; j < edges.length; j++) {
      const other = outer(edges[j]!);
      if (other > 0 && mover(boundary[other - 1]!, moving) === mover(boundary[end - 1]!, moving)) together += own[j]!;
    }
    conductances[k] = own[k]! * (1 - together / whole);
  }
}

/** The end in the tree of an edge at a network's one node; 0 when it does not touch that node. */
const outer = ({ from, to }: Edge): number => (from === 0 ? to : to === 0 ? from : 0);

/** The node that a node of the tree moves with. */
const mover = (node: number, moving: Moving): number => moving?.[node] ?? node;

/** Adds (or takes away) what a network draws from each node of the tree, and how that rises with the node's voltage. */
export function collect(
  { fitted, currents, conductances }: Flows,
  drawn: number[],
  slopes: number[],
  moving: Moving,
  sign: 1 | -1,
): void {
  const { edges, boundary, inner } = fitted;
  for (let k = 0; k < edges.length; k++) {
    const { from, to } = edges[k]!;
    const a = from < inner ? -1 : boundary[from - inner]!;
    const b = to < inner ? -1 : boundary[to - inner]!;
    // A pin that stands at its own rail moves with it.
    if (a === b) continue;
    if (a >= 0) drawn[a]! += sign * currents[k]!;
    if (b >= 0) drawn[b]! -= sign * currents[k]!;
    // What hangs between nodes that move as one is not moved at all.
    if (moving !== undefined && a >= 0 && b >= 0 && moving[a] === moving[b]) continue;
    if (a >= 0) slopes[a]! += sign * conductances[k]!;
    if (b >= 0) slopes[b]! += sign * conductances[k]!;
  }
}
