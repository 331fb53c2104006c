/** The supply tree while it is built: nodes, links, and who is alive. */
import type { Interval } from '../quantity/interval.js';
import type { Link, TreeNode } from './tree-plan.js';

export interface Tree {
  readonly nodes: readonly TreeNode[];
  add(node: TreeNode): void;
  link(link: Link): void;
  /** What a board joins to its rail in the place of the link that feeds it, once that is dead. */
  spare(link: Link): void;
  has(id: string): boolean;
  /** Whether a supply feeds a node. */
  alive(id: string): boolean;
  /** The supplies that feed a node. */
  sources(id: string): readonly string[];
  /** Volts of a node as stated along its feed, drops left out: for choosing rows and defaults, never for sums. */
  window(id: string): Interval;
  /** Highest volts of a node whose voltage wanders: that of a battery or an unregulated adapter, with nothing between that keeps it. */
  unsteady(id: string): number | undefined;
  /** Links, upstream first. */
  inOrder(): readonly Link[];
  /** The spare links whose source lives, in the order in which a board takes them. */
  spares(): readonly Link[];
}

export function emptyTree(): Tree {
  const nodes = new Map<string, TreeNode>();
  /** What leads to a node: one link, or several that are joined by diodes. */
  const feeds = new Map<string, Link[]>();
  const spares: Link[] = [];
  const leading = (id: string): readonly Link[] => feeds.get(id) ?? [];
  const caches: Map<string, unknown>[] = [];
  /** Answers are kept until the tree grows: where many nodes have several feeds, ways to them are without number. */
  const kept = <T>(find: (id: string) => T): ((id: string) => T) => {
    const known = new Map<string, T>();
    caches.push(known);
    return (id) => {
      if (!known.has(id)) known.set(id, find(id));
      return known.get(id)!;
    };
  };
  const grow = (): void => caches.forEach((known) => known.clear());

  const window = kept((id): Interval => {
    const own = nodes.get(id)?.volts;
    if (own) return own;
    // Of several the highest feeds the node.
    return leading(id).reduce<Interval>(
      (most, link) => {
        const { min, typ, max } = link.volts ?? window(link.from);
        return { min: Math.max(most.min, min), typ: Math.max(most.typ, typ), max: Math.max(most.max, max) };
      },
      { min: 0, typ: 0, max: 0 },
    );
  });
  const unsteady = kept((id): number | undefined => {
    const node = nodes.get(id);
    if (node?.unsteady) return node.volts?.max ?? window(id).max;
    const inputs = leading(id).flatMap((link) => unsteadyBehind(link) ?? []);
    return inputs.length > 0 ? Math.max(...inputs) : undefined;
  });
  const unsteadyBehind = (link: Link): number | undefined => {
    const input = unsteady(link.from);
    if (input === undefined || link.volts === undefined) return input;
    // A linear regulator follows its input once that is low.
    const most = Math.max(0, ...(link.dropout ?? []).map((p) => p.value.max));
    const low = link.kind === 'linear-regulator' && window(link.from).min - most < link.volts.min;
    return low ? link.volts.max : undefined;
  };
  const alive = kept(
    (id): boolean => nodes.get(id)?.volts !== undefined || leading(id).some((link) => alive(link.from)),
  );
  const sources = kept((id): readonly string[] => {
    const links = leading(id);
    if (links.length === 0) return nodes.get(id)?.volts === undefined ? [] : [id];
    return [...new Set(links.flatMap((link) => sources(link.from)))];
  });
  const depth = kept((id): number => leading(id).reduce((most, link) => Math.max(most, 1 + depth(link.from)), 0));
  return {
    get nodes() {
      return [...nodes.values()];
    },
    add: (node) => {
      nodes.set(node.id, node);
      grow();
    },
    link: (link) => {
      feeds.set(link.to, [...leading(link.to), link]);
      grow();
    },
    spare: (link) => void spares.push(link),
    spares: () => spares.filter((link) => alive(link.from)),
    has: (id) => nodes.has(id),
    alive,
    sources,
    window,
    unsteady,
    inOrder: () =>
      [...feeds.values()]
        .flat()
        .filter((l) => alive(l.from))
        .sort((a, b) => depth(a.to) - depth(b.to)),
  };
}
