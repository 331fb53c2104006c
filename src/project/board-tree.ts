/** A board's own supply tree: inlets, fuses, diodes, regulators and rails, put into the project's tree. */
import type { Figures } from '../loads/figures.js';
import { isMapping } from '../loads/figures.js';
import { junctionSpread } from '../loads/laws.js';
import { rating } from '../loads/limits.js';
import type { LimitPlan } from '../loads/plan.js';
import type { Interval } from '../quantity/interval.js';
import { exactly } from '../quantity/interval.js';
import type { Point } from '../quantity/points.js';
import { interpolate } from '../quantity/points.js';
import { closed } from '../quantity/quantity.js';
import type { Path } from '../source/place.js';
import type { Link } from './project.js';
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
  readonly backFed: readonly { readonly rail: string; readonly part: string }[];
  readonly joined: readonly { readonly rail: string; readonly from: string; readonly other: string }[];
}

/** A regulator's input when nobody says so, volts (rule 8 of the format). */
const USUAL_INPUT = { low: 5.5, high: 15 };

export function addBoard(tree: Tree, board: BoardTree): BoardFacts {
  const { owner, path, powered } = board;
  const name = (local: string): string => `${owner}.${local}`;
  const backFed: { rail: string; part: string }[] = [];
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
          if (/regulator/.test(String(partType(board, s)))) backFed.push({ rail: node, part: name(s) });
      return;
    }
    const source = living ?? sources[0];
    if (source !== undefined)
      tree.link({
        id: `${node}:wire`,
        kind: 'wire',
        title: `rail ${rail}`,
        from: outputOf(source),
        to: node,
        path,
        limits: [],
      });
  };

  const addPart = (part: string, node: string): void => {
    const raw = board.parts[part];
    const from = isMapping(raw) && typeof raw['from'] === 'string' ? outputOf(raw['from']) : undefined;
    tree.add({ id: node, kind: 'joint', title: `out of ${part} of ${owner}`, path, limits: [] });
    if (from === undefined) return;
    tree.link(
      partLink(
        board.figures.within('parts').within(part),
        name(part),
        String(partType(board, part)),
        from,
        node,
        path,
        owner,
      ),
    );
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

function partLink(
  figures: Figures,
  id: string,
  type: string,
  from: string,
  to: string,
  path: Path,
  owner: string,
): Link {
  const short = id.slice(owner.length + 1);
  const base = { id, from, to, path, title: `${short} of ${owner}`, limits: [] };
  switch (type) {
    case 'fuse':
      return {
        ...base,
        kind: 'fuse',
        ohms: figures.interval('resistance', 'resistance') ?? exactly(0.1),
        ...fuseLimit(figures, id),
      };
    case 'diode': {
      const curve = figures.curve('forward-voltage', 'voltage', 'current');
      const limit = rating(figures, 'maximum-current', 'current');
      const law = curve && junctionSpread(curve, { ideality: 1.5 });
      return {
        ...base,
        ...(law ? { kind: 'diode', law } : { kind: 'wire' }),
        ...(limit
          ? { limits: [limit] }
          : { missing: { figure: 'maximum-current', asks: `what current may ${id} carry?` } }),
        ...(curve && { origin: curve.origin }),
      };
    }
    case 'linear-regulator':
    case 'switching-regulator':
      return regulator(figures, base, type);
    default:
      return { ...base, kind: 'wire' };
  }
}

/** A resettable fuse holds less the warmer it is. */
function fuseLimit(figures: Figures, id: string): Pick<Link, 'limits'> | Pick<Link, 'limits' | 'missing'> {
  const hold = figures.curve('hold', 'current', 'temperature');
  if (hold === undefined) return { limits: [], missing: { figure: 'hold', asks: `what current does ${id} hold?` } };
  const at23 = hold.points.find((p) => p.at >= 20) ?? hold.points[0]!;
  return {
    limits: [
      {
        value: (s) => Math.max(interpolate(hold.points, s.ambient).value.min, 0),
        stated: `${at23.quantity.stated} at ${at23.at} °C`,
        grade: 'operating',
        isFunction: true,
        margin: 'current',
        origin: hold.origin,
        condition: 'hold current at the ambient',
      },
    ],
  };
}

function regulator(figures: Figures, base: Omit<Link, 'kind'>, kind: 'linear-regulator' | 'switching-regulator'): Link {
  const voltage = figures.figure('voltage', 'voltage');
  const volts = voltage ? closed(voltage.quantity) : exactly(0);
  const limit = rating(figures, 'current', 'current', { grade: 'operating' });
  const quiescent = figures.figure('quiescent', 'current');
  const dropout = figures.curve('dropout', 'voltage', 'current', { min: () => 0 });
  const shape = {
    ...base,
    kind,
    volts,
    quiescent: quiescent ? closed(quiescent.quantity, { min: () => 0, max: (x) => 1.5 * x }) : exactly(0),
    limits: limit ? [limit] : [],
    ...(!limit && { missing: { figure: 'current', asks: `what current may ${base.id} give (its \`current\`)?` } }),
    ...(voltage && { origin: voltage.origin }),
  };
  if (kind === 'switching-regulator') {
    const efficiency = figures.curve('efficiency', 'ratio', 'current');
    return {
      ...shape,
      efficiency: efficiency ? hull(efficiency.points) : { min: 0.75, typ: 0.85, max: 0.95 },
      ...inputLimit(figures, undefined),
    };
  }
  const thermal = figures.figure('thermal-resistance', 'thermal-resistance');
  const junction = rating(figures, 'maximum-junction', 'temperature', { margin: 'temperature' });
  const usual = volts.typ >= 5 || (dropout && hull(dropout.points).max >= 1) ? USUAL_INPUT.high : USUAL_INPUT.low;
  return {
    ...shape,
    ...(dropout && { dropout: hull(dropout.points) }),
    ...inputLimit(figures, usual),
    ...(thermal &&
      junction && { heat: { thermal: closed(thermal.quantity), limit: junction, origin: thermal.origin } }),
  };
}

/** Highest input voltage: the upper end of the window where one is stated. */
function inputLimit(figures: Figures, usual: number | undefined): Pick<Link, 'input'> {
  const stated = figures.figure('input', 'voltage');
  if (stated) {
    const limit: LimitPlan = {
      value: closed(stated.quantity).max,
      stated: stated.quantity.stated,
      grade: 'operating',
      margin: 'none',
      origin: stated.origin,
    };
    return { input: limit };
  }
  if (usual === undefined) return {};
  figures.assume(`highest input voltage: ${usual} V, since nobody states it`);
  const range = exactly(usual);
  return {
    input: {
      value: usual,
      stated: `${usual} V, assumed`,
      grade: 'practice',
      margin: 'none',
      range,
      origin: { document: 'common practice, no source', basis: 'practice' },
    },
  };
}

/** All that lies between a figure's points, their middle typical. */
function hull(points: readonly Point[]): Interval {
  const ends = points.map((p) => p.value);
  return {
    min: Math.min(...ends.map((v) => v.min)),
    typ: ends.reduce((sum, v) => sum + v.typ, 0) / ends.length,
    max: Math.max(...ends.map((v) => v.max)),
  };
}
