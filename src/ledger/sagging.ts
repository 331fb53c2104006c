/** What the nodes of the supply tree answer when a circuit is switched: to first order, about a whole solution. */
import { zeros } from './circuitry.js';
import { kept } from './kept.js';
import { together } from './moments.js';
import type { Solution } from './solution.js';
import { answersOf } from './tree-leans.js';

export interface Sagging {
  /** Volts by which each circuit, switched on, moves the nodes; of those on one pin the first has all of it. */
  readonly by: readonly (readonly Sag[])[];
  /** The nodes that any circuit moves. */
  readonly nodes: readonly number[];
}

interface Sag {
  readonly node: number;
  readonly volts: number;
}

const known = new WeakMap<Solution, Sagging>();

export function saggingOf(s: Solution): Sagging {
  const found = known.get(s) ?? sagging(s);
  known.set(s, found);
  return found;
}

/** Volts that are rounding. */
const NOTHING = 1e-9;
/** Beyond collapse, where what takes a constant power outweighs the ohms, there is nothing to answer by. */
const LEAST_SHARE = 0.05;

function sagging(s: Solution): Sagging {
  const { project, networksOf, nodeIndex, count } = s.circuitry;
  const unit = kept((node: number) => unitOf(s, node));
  const by = together(project).map((set, c): readonly Sag[] => {
    if (set[0] !== c || set.some((k) => project.circuits[k]!.always)) return [];
    const more = zeros(count);
    for (const n of new Set(set.flatMap((k) => networksOf[k]!)))
      for (const on of [true, false])
        for (const { node, amps } of s.drawOf(n, on)) more[nodeIndex.get(node) ?? 0]! += on ? amps : -amps;
    const moved = zeros(count);
    for (let node = 1; node < count; node++) {
      const amps = more[node]!;
      if (amps !== 0) unit(node).forEach((volts, k) => (moved[k]! += volts * amps));
    }
    return moved.flatMap((volts, node) => (Math.abs(volts) > NOTHING ? [{ node, volts }] : []));
  });
  return { by, nodes: [...new Set(by.flatMap((sags) => sags.map(({ node }) => node)))] };
}

/** Volts by which every node moves for an ampere that is drawn from a node. */
function unitOf(s: Solution, node: number): readonly number[] {
  const { links, count } = s.circuitry;
  const rises = answersOf(s);
  const drawn = zeros(count);
  const volts = zeros(count);
  drawn[node] = 1;
  const share = (k: number): number => Math.max(1 + s.ohmsOf(links[k]!.link) * rises[links[k]!.to]!, LEAST_SHARE);
  for (let k = links.length - 1; k >= 0; k--) {
    const { link, from, to } = links[k]!;
    if (!s.isLive(k) || drawn[to] === 0) continue;
    const regulated = link.kind === 'switching-regulator' ? s.gainOf(k) : 1;
    drawn[from]! += drawn[to]! * (s.regulates(link) ? regulated : 1 / share(k));
  }
  for (let k = 0; k < links.length; k++) {
    const { link, from, to } = links[k]!;
    if (s.isLive(k) && !s.regulates(link)) volts[to] = (volts[from]! - s.ohmsOf(link) * drawn[to]!) / share(k);
  }
  return volts;
}
