/**
 * How the others lean where a supply stands apart: what hangs on it takes it there. Where only a regulator or a diode of one
 * supply stands apart, what hangs behind it pulls down what stands before it as well, and gains nothing.
 */
import type { Circuitry } from './circuitry.js';
import type { AskedLean, Corner, End, Lean } from './corner.js';
import { opposite } from './corner.js';

/** The end at which the supply of each node of the tree stands apart from the others, by number; none where it does not. */
export function endsApart({ apart }: Corner, { project, nodeIndex, links }: Circuitry): readonly (End | undefined)[] {
  const ends: (End | undefined)[] = [];
  for (const { id, volts } of project.nodes) if (volts) ends[nodeIndex.get(id)!] = apart?.get(id);
  for (const { from, to } of links) ends[to] = ends[from];
  return ends;
}

/** How something leans that hangs on some nodes: what draws most pulls a rail down. Ground is node 0. */
export function followingLean(corner: Corner, ends: readonly (End | undefined)[], nodes: readonly number[]): Lean {
  const own = new Set(nodes.flatMap((node) => (node === 0 ? [] : [ends[node]])));
  const [end] = own;
  if (own.size !== 1 || end === undefined) return corner.rest;
  return end === 'low' && corner.rest === 'peak' ? 'peak' : opposite(end);
}

/** How what hangs on a pin beside something in question leans: it takes from what the pin gives. */
export function besidePin(asked: AskedLean, rest: Lean): Lean {
  switch (asked) {
    case 'starved':
    case 'stalled':
    case 'calm-starved':
      return 'high';
    case 'high':
    case 'peak':
    case 'second':
    case 'calm':
    case 'flooded':
    case 'warm':
      return 'low';
    default:
      return rest;
  }
}
