/** A board's own supply tree: inlets, fuses, diodes, regulators and rails, put into the project's tree. */
import type { Figures } from '../loads/figures.js';
import { isMapping } from '../loads/figures.js';
import { rating } from '../loads/limits.js';
import type { LimitPlan } from '../loads/account-plan.js';
import type { Path } from '../source/place.js';
import { linkOf } from './link-figures.js';
import type { Link } from './tree-plan.js';
import type { Tree } from './tree.js';

type Raw = Readonly<Record<string, unknown>>;

export interface BoardTree {
  readonly owner: string;
  readonly path: Path;
  readonly figures: Figures;
  readonly inlets: Raw;
  readonly parts: Raw;
  readonly rails: Raw;
  /** Inlet or rail → the node that powers it. */
  readonly powered: ReadonlyMap<string, string>;
}

/** Rail names that are fed twice, directly and through the board, or back-fed: for the rules. */
export interface BoardFacts {
  readonly backFed: readonly { readonly rail: string; readonly part: string; readonly forbidden: boolean }[];
  readonly joined: readonly { readonly rail: string; readonly from: string; readonly other: string }[];
}

export function addBoard(tree: Tree, board: BoardTree): BoardFacts {
  const { owner, path, powered } = board;
  const name = (local: string): string => `${owner}.${local}`;
  const backFed: { rail: string; part: string; forbidden: boolean }[] = [];
  const joined: { rail: string; from: string; other: string }[] = [];
  const settled = new Map<string, string>();

  for (const inlet of Object.keys(board.inlets)) {
    const figures = board.figures.within('inlets').within(inlet);
    tree.add({ id: name(inlet), kind: 'inlet', title: `inlet ${inlet} of ${owner}`, path, limits: limitList(figures) });
    const supply = powered.get(inlet);
    if (supply !== undefined)
      tree.link({
        id: `${name(inlet)}:wire`,
        kind: 'wire',
        title: `inlet ${inlet}`,
        from: supply,
        to: name(inlet),
        path,
        limits: [],
      });
    settled.set(inlet, name(inlet));
  }

  /** Node at which an inlet, part or rail gives its voltage; put into the tree when first asked for. */
  const outputOf = (local: string): string => {
    const known = settled.get(local);
    if (known !== undefined) return known;
    const isRail = local in board.rails;
    const node = isRail ? name(local) : `${name(local)}:out`;
    settled.set(local, node);
    if (isRail) addRail(local, node);
    else addPart(local, node);
    return node;
  };

  const addRail = (rail: string, node: string): void => {
    const figures = board.figures.within('rails').within(rail);
    tree.add({ id: node, kind: 'rail', title: `rail ${rail} of ${owner}`, path, limits: limitList(figures) });
    const raw = board.rails[rail];
    const sources = isMapping(raw)
      ? Array.isArray(raw['from'])
        ? raw['from'].map(String)
        : raw['from'] === undefined
          ? []
          : [String(raw['from'])]
      : [];
    const direct = powered.get(rail);
    // The first living source of a board's list feeds the rail: its own switch or diode disconnects the others.
    const living = sources.find((s) => tree.alive(outputOf(s)));
    if (direct !== undefined) {
      tree.link({ id: `${node}:wire`, kind: 'wire', title: `rail ${rail}`, from: direct, to: node, path, limits: [] });
      if (living !== undefined && living in board.parts) joined.push({ rail: node, from: direct, other: name(living) });
      else
        for (const s of sources)
          if (/regulator/.test(String(partType(board, s)))) {
            const forbidden = board.figures.within('parts').within(s).word('reverse') === 'not-allowed';
            backFed.push({ rail: node, part: name(s), forbidden });
          }
      return;
    }
    const wire = (source: string): Link => {
      const ends = { from: outputOf(source), to: node };
      return { id: `${node}:wire`, kind: 'wire', title: `rail ${rail}`, ...ends, path, limits: [] };
    };
    const source = living ?? sources[0];
    if (source === undefined) return;
    tree.link(wire(source));
    sources.slice(sources.indexOf(source) + 1).forEach((other) => tree.spare(wire(other)));
  };

  const addPart = (part: string, node: string): void => {
    const raw = board.parts[part];
    const from = isMapping(raw) && typeof raw['from'] === 'string' ? outputOf(raw['from']) : undefined;
    tree.add({ id: node, kind: 'joint', title: `out of ${part} of ${owner}`, path, limits: [] });
    if (from === undefined) return;
    const base = { id: name(part), title: `${part} of ${owner}`, from, to: node, path };
    tree.link(linkOf(board.figures.within('parts').within(part), String(partType(board, part)), base));
  };

  for (const rail of Object.keys(board.rails)) outputOf(rail);
  for (const part of Object.keys(board.parts)) outputOf(part);
  return { backFed, joined };
}

const partType = (board: BoardTree, part: string): unknown => {
  const raw = board.parts[part];
  return isMapping(raw) ? raw['type'] : undefined;
};

/** Rows `{ current, grade, cite }` of an inlet or rail. */
function limitList(figures: Figures): LimitPlan[] {
  return figures.rows('limits').flatMap((row) => {
    const limit = rating(row, 'current', 'current', { grade: 'operating' });
    const grade = row.word('grade');
    if (limit === undefined) return [];
    return [
      grade === 'absolute' || grade === 'operating' || grade === 'characterised' || grade === 'practice'
        ? { ...limit, grade }
        : limit,
    ];
  });
}
