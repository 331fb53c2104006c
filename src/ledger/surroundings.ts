/** What stands around a node of the supply tree in a solution: what feeds it, what it feeds, what hangs beside it on the same losses. */
import { behind } from './reach.js';
import type { Circuitry } from './circuitry.js';
import type { Solution } from './solution.js';

export interface Surroundings {
  /** The numbers of the links on the way to it that its voltage answers to, from it upwards. */
  readonly path: readonly number[];
  /** The node they begin at; none where a regulator holds what it gives, whatever its input does. */
  readonly top: number | undefined;
  /** The ids of the node itself and all that it feeds. */
  readonly inside: ReadonlySet<string>;
  /** The same of the outermost link on the way that loses anything. */
  readonly around: ReadonlySet<string>;
  /** The numbers of networks that hang around it and not inside. */
  readonly beside: readonly number[];
  /** Regulators that take a current of their own there, on the way included. */
  readonly regulators: ReadonlySet<string>;
}

const known = new WeakMap<Circuitry, Map<string, Surroundings>>();

/** @param at a node's id */
export function surroundingsOf(s: Solution, at: string): Surroundings {
  const { path, top } = pathTo(s, s.circuitry.nodeIndex.get(at)!);
  const found = known.get(s.circuitry) ?? new Map<string, Surroundings>();
  known.set(s.circuitry, found);
  const key = `${at} ${path.join()} ${top}`;
  const told = found.get(key) ?? {
    path,
    top,
    ...standingAt(s.circuitry, at, top === undefined ? path.slice(0, -1) : path),
  };
  found.set(key, told);
  return told;
}

function pathTo(s: Solution, node: number): Pick<Surroundings, 'path' | 'top'> {
  const { links } = s.circuitry;
  const path: number[] = [];
  let top = node;
  for (;;) {
    const k = links.findIndex((l, n) => l.to === top && s.isLive(n));
    if (k < 0) return { path, top };
    path.push(k);
    if (s.regulates(links[k]!.link)) return { path, top: undefined };
    top = links[k]!.from;
  }
}

/** @param losing the links on the way that its voltage answers to the losses of */
function standingAt({ project, links, networks }: Circuitry, at: string, losing: readonly number[]) {
  const inside = behind(project.links, at);
  const outermost = losing.at(-1);
  const around = outermost === undefined ? new Set<string>() : behind(project.links, links[outermost]!.link.to);
  const touches = (n: number, nodes: ReadonlySet<string>): boolean =>
    [...networks[n]!.plan.on, ...networks[n]!.plan.off].some((b) => nodes.has(b.from) || nodes.has(b.to));
  const all = [...around].every((id) => inside.has(id));
  const beside = all ? [] : [...networks.keys()].filter((n) => touches(n, around) && !touches(n, inside));
  const regulators = links.flatMap(({ link }, k) => {
    const there = losing.includes(k) || (around.has(link.from) && !inside.has(link.from));
    return there && link.quiescent ? [link.id] : [];
  });
  return { inside, around, beside, regulators: new Set(regulators) };
}
