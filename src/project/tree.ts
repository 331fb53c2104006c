/** The supply tree while it is built: nodes, links, and who is alive. */
import type { Interval } from '../quantity/interval.js';
import type { Link, TreeNode } from './project.js';

export interface Tree {
  readonly nodes: readonly TreeNode[];
  add(node: TreeNode): void;
  link(link: Link): void;
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
}

export function emptyTree(): Tree {
  const nodes = new Map<string, TreeNode>();
  const feeds = new Map<string, Link>();
  const window = (id: string): Interval => {
    const own = nodes.get(id)?.volts;
    if (own) return own;
    const link = feeds.get(id);
    return link === undefined ? { min: 0, typ: 0, max: 0 } : (link.volts ?? window(link.from));
  };
  const unsteady = (id: string): number | undefined => {
    const [node, link] = [nodes.get(id), feeds.get(id)];
    if (node?.unsteady) return node.volts?.max ?? (link && window(link.from).max);
    if (link === undefined) return undefined;
    const input = unsteady(link.from);
    if (input === undefined || link.volts === undefined) return input;
    // A linear regulator follows its input once that is low.
    const low = link.kind === 'linear-regulator' && window(link.from).min - (link.dropout?.max ?? 0) < link.volts.min;
    return low ? link.volts.max : undefined;
  };
  const alive = (id: string): boolean => {
    const link = feeds.get(id);
    return nodes.get(id)?.volts !== undefined || (link !== undefined && alive(link.from));
  };
  const sources = (id: string): readonly string[] => {
    const link = feeds.get(id);
    return link === undefined ? (nodes.get(id)?.volts === undefined ? [] : [id]) : sources(link.from);
  };
  const depth = (id: string): number => {
    const link = feeds.get(id);
    return link === undefined ? 0 : 1 + depth(link.from);
  };
  return {
    get nodes() {
      return [...nodes.values()];
    },
    add: (node) => void nodes.set(node.id, node),
    link: (link) => void feeds.set(link.to, link),
    has: (id) => nodes.has(id),
    alive,
    sources,
    window,
    unsteady,
    inOrder: () => [...feeds.values()].filter((l) => alive(l.from)).sort((a, b) => depth(a.to) - depth(b.to)),
  };
}
