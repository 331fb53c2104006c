/**
 * Solutions of a project, each solved once and kept. A question about a few circuits starts from the solution in which they
 * lean like all the others: its voltages are nearly right, so that screening many corners costs a few branches each, and
 * only the corner that wins is swept to rest.
 */
import type { Project } from '../project/project.js';
import type { Circuitry } from './circuitry.js';
import { circuitry } from './circuitry.js';
import type { Corner } from './corner.js';
import { atEnd, cornerKey } from './corner.js';
import type { Moment } from './solution.js';
import { Solution } from './solution.js';

/** One solution asked for: a moment, a corner, and the circuits the corner is about. */
export interface Candidate {
  readonly moment: Moment;
  readonly corner: Corner;
  /** 1 for each circuit in question; all zero: the corner leans everything like `rest`. */
  readonly focus: Uint8Array;
}

export interface Solver {
  readonly circuitry: Circuitry;
  /** No circuit in question. */
  readonly nobody: Uint8Array;
  /** Nearly right: networks in question solved at the voltages of the solution without a question. */
  estimate(candidate: Candidate): Solution;
  /** Swept to rest. */
  exact(candidate: Candidate): Solution;
}

export function solver(project: Project): Solver {
  const built = circuitry(project);
  const nobody = new Uint8Array(project.circuits.length);
  const bases = new Map<string, Solution>();
  const estimates = new Map<string, Solution>();
  const settled = new Map<string, Solution>();
  const bits = (a: Uint8Array): string => String.fromCharCode(...a);
  const key = (c: Candidate): string => `${c.moment.mode}|${bits(c.moment.on)}|${cornerKey(c.corner)}|${bits(c.focus)}`;

  const base = ({ moment, corner }: Candidate): Solution => {
    const plain: Corner = { ...corner, load: corner.rest, control: corner.rest };
    const name = `${bits(moment.on)}|${cornerKey(plain)}`;
    let solution = bases.get(name);
    if (solution === undefined) {
      solution = new Solution(built, moment, plain, nobody, startVolts(built, plain)).settle();
      bases.set(name, solution);
    }
    return solution;
  };

  const estimate = (candidate: Candidate): Solution => {
    const name = key(candidate);
    let solution = estimates.get(name);
    if (solution === undefined) {
      const { moment, corner, focus } = candidate;
      solution = new Solution(built, moment, corner, focus, base(candidate).volts);
      estimates.set(name, solution);
    }
    return solution;
  };

  const exact = (candidate: Candidate): Solution => {
    const name = key(candidate);
    let solution = settled.get(name);
    if (solution === undefined) {
      const { moment, corner, focus } = candidate;
      solution = new Solution(built, moment, corner, focus, base(candidate).volts.slice()).settle();
      settled.set(name, solution);
    }
    return solution;
  };
  return { circuitry: built, nobody, estimate, exact };
}

/** A first guess: supplies at their voltage, regulators at their set point, the rest as their feed. */
function startVolts(built: Circuitry, corner: Corner): Float64Array {
  const volts = new Float64Array(built.nodes.length);
  const { project, nodeIndex } = built;
  for (const node of project.nodes) {
    if (node.volts === undefined) continue;
    const end = corner.apart?.ids.has(node.id) ? corner.apart.end : corner.sources;
    volts[nodeIndex.get(node.id)!] = atEnd(node.volts, end);
  }
  for (const link of project.links) {
    const input = volts[nodeIndex.get(link.from)!]!;
    const set = link.volts === undefined ? input : Math.min(link.volts.typ, link.kind === 'switching-regulator' ? Infinity : input);
    volts[nodeIndex.get(link.to)!] = input > 0 ? set : 0;
  }
  return volts;
}
