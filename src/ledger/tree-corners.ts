/** The corners of the supply tree: everything in it leans one way, supplies and regulators stand at an end. */
import { isFalling } from '../loads/branch-plan.js';
import type { Project } from '../project/project.js';
import type { Link } from '../project/tree-plan.js';
import type { Corner, End, Lean } from './corner.js';
import { opposite } from './corner.js';
import type { Solver } from './solver.js';

/** Everything leans one way, supplies and regulators' outputs at an end, at the coldest and the hottest ambient. */
const corners = (lean: Lean, sources: End, outputs: End, apart?: Corner['apart']): Corner[] =>
  (['cold', 'hot'] as const).map((ambient) => ({
    ambient,
    sources,
    outputs,
    losses: sources === 'high' ? 'low' : 'high',
    load: lean,
    control: lean,
    rest: lean,
    ...(apart && { apart }),
  }));

/**
 * The corners of the tree. Currents rise with the supplies, but a switching regulator takes the more the lower its input is:
 * with other loads on a high supply, it wants the losses before it high. A linear one is hottest with a high input and, by what hangs on it, a low or a high output.
 */
export function cornerSets(regulated: boolean, losing: readonly Link[] | undefined) {
  const stands = (end: End): Corner['apart'] => new Map((losing ?? []).map((link) => [link.id, end]));
  const both = (lean: Lean): Corner[] => [
    ...corners(lean, 'high', 'high'),
    ...(regulated ? corners(lean, 'high', 'low') : []),
    ...(losing ? [...corners(lean, 'high', 'high', stands('low')), ...corners(lean, 'low', 'high')] : []),
  ];
  const least = [
    ...corners('low', 'low', 'low'),
    ...(regulated ? corners('low', 'low', 'high') : []),
    ...(losing ? [...corners('low', 'low', 'low', stands('high')), ...corners('low', 'high', 'low')] : []),
  ];
  return {
    high: both('high'),
    low: least,
    // What a regulator needs over its output rises with its current, and so with its own output.
    light: [...corners('low', 'high', 'high'), ...(regulated ? corners('low', 'high', 'low') : [])],
    heavy: [...corners('high', 'low', 'low'), ...(regulated ? corners('high', 'low', 'high') : [])],
    stalled: corners('peak', 'low', 'low'),
  };
}

export type CornerSets = ReturnType<typeof cornerSets>;

/** Where the search for the most and the least of a current begins; where less volts may mean more of it, from either end. */
export function startsOf(falling: boolean) {
  const from = (lean: Lean, sources: End): Corner[] => [
    ...corners(lean, sources, sources),
    ...(falling ? corners(lean, opposite(sources), sources) : []),
  ];
  return {
    high: from('high', 'high'),
    peak: from('peak', 'high'),
    second: from('second', 'high'),
    least: from('low', 'low'),
    warm: corners('high', 'high', 'low'),
  };
}

/** What hangs beside an account on the same losses leans the other way: it lets the rail be, or pulls it down. */
export const opposed = (sets: CornerSets): CornerSets => {
  const turned = (corners: readonly Corner[]): Corner[] => corners.map(turnedRest);
  return {
    ...sets,
    high: turned(sets.high),
    low: turned(sets.low),
  };
};
export const turnedRest = (c: Corner): Corner => ({ ...c, rest: c.rest === 'low' ? 'high' : 'low' });

/** A regulator behind another one is hottest with its own output low and the other one's high. */
export const withOwnOutput = (sets: CornerSets, { id }: Link): CornerSets => ({
  ...sets,
  high: [...sets.high, ...corners('high', 'high', 'high', new Map([[id, 'low']]))],
  low: [...sets.low, ...corners('low', 'low', 'low', new Map([[id, 'high']]))],
});

/** Whether another regulator feeds this one. */
export function isCascaded(links: readonly Link[], regulator: Link): boolean {
  const feed = links.find((l) => l.to === regulator.from);
  return feed !== undefined && (feed.volts !== undefined || isCascaded(links, feed));
}

/** The nodes that something hangs on whose current rises as their voltage falls: a switching regulator, a constant power. */
export function fallingAt({ links, networks }: Project): ReadonlySet<string> {
  return new Set([
    ...links.flatMap((l) => (l.kind === 'switching-regulator' ? [l.from] : [])),
    ...networks.flatMap((n) => [...n.on, ...n.off].filter(isFalling).map((b) => b.from)),
  ]);
}

/** The fuses, diodes and cables that these are fed over, as far as nothing else hangs on them. */
export function lossesBefore(links: readonly Link[], nodes: ReadonlySet<string>): Link[] {
  const feeds = new Map(links.map((l) => [l.to, l]));
  const branches = (node: string): boolean => links.filter((l) => l.from === node).length > 1;
  const found = [...nodes].flatMap((node) => {
    const losses: Link[] = [];
    for (let before = feeds.get(node); before; before = feeds.get(before.from)) {
      if (before.volts !== undefined || (losses.length > 0 && branches(before.to))) break;
      if (before.kind !== 'wire') losses.push(before);
    }
    return losses;
  });
  return [...new Set(found)];
}

/** Whether anything draws from a node that a regulator feeds. */
export function drawsBehindRegulator({ circuitry: { project } }: Solver): boolean {
  const behind = new Set<string>();
  for (const link of project.links) if (link.volts !== undefined || behind.has(link.from)) behind.add(link.to);
  return project.networks.some((n) => [...n.on, ...n.off].some((p) => behind.has(p.from) || behind.has(p.to)));
}
