/** What the nodes of the supply tree stand at in a corner before anything is drawn from them: where sweeps start from. */
import { figureOf, within } from './builds.js';
import type { Circuitry } from './circuitry.js';
import { zeros } from './circuitry.js';
import type { Corner } from './corner.js';
import { atEnd, opposite } from './corner.js';

/** @returns volts by node number: supplies at their voltage, regulators at their set point, the rest as what feeds it */
export function unloaded(built: Circuitry, corner: Corner): number[] {
  const volts = zeros(built.count);
  const { project, nodeIndex, links, joined } = built;
  for (const node of project.nodes) {
    if (node.volts === undefined) continue;
    const usual = node.outside ? opposite(corner.sources) : corner.sources;
    volts[nodeIndex.get(node.id)!] = corner.build
      ? within(node.volts, corner.build.share(figureOf(node.id, 'volts')))
      : atEnd(node.volts, corner.apart?.get(node.id) ?? usual);
  }
  for (const { link, from } of links) {
    const feed = corner.feeds?.get(link.to);
    if (feed?.link === link.id) raise(built, volts, from, feed.atLeast);
  }
  const several = new Set(joined.map((j) => j.node));
  for (const { link, from, to } of links) {
    const input = volts[from]!;
    const set =
      link.volts === undefined
        ? input
        : Math.min(link.volts.typ, link.kind === 'switching-regulator' ? Infinity : input);
    const output = input > 0 ? set : 0;
    volts[to] = several.has(to) ? Math.max(volts[to]!, output) : output;
  }
  return volts;
}

/** A source that is to feed a node stands no lower than the others can. */
function raise(built: Circuitry, volts: number[], node: number, atLeast: number): void {
  const { links, project, nodeIndex } = built;
  const before = links.find((l) => l.to === node);
  if (before !== undefined) {
    if (before.link.volts === undefined) raise(built, volts, before.from, atLeast);
    return;
  }
  const most = Math.max(
    ...project.nodes.flatMap((n) => (n.volts && nodeIndex.get(n.id) === node ? [n.volts.max] : [])),
  );
  volts[node] = Math.min(Math.max(volts[node]!, atLeast), most);
}
