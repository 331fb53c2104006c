/**
 * Supplies that others feed: a regulator, a fuse, a diode, a limiter, a switch or a divider between a source and a node of
 * its own, or several sources joined by diodes.
 */
import type { Catalogue } from '../catalogue/catalogue.js';
import { Figures, isMapping } from '../loads/figures.js';
import type { NetworkSketch } from '../loads/lowering.js';
import { GROUND } from '../loads/branch-plan.js';
import { checkEntry } from '../source/check.js';
import type { Path } from '../source/place.js';
import type { DerivedType } from './between.js';
import { betweenOf } from './between.js';
import { diode, linkOf, mostGiven } from './link-figures.js';
import { nodeNamed, nodeNames } from './names.js';
import type { Places } from './places.js';
import type { Gathered } from './remarks.js';
import { besideCurrent } from './supply-limits.js';
import type { Tree } from './tree.js';
import type { Wires } from './wires.js';

const TITLES: Readonly<Record<DerivedType, string>> = {
  'linear-regulator': 'regulator',
  'switching-regulator': 'regulator',
  diode: 'diode',
  fuse: 'fuse',
  limiter: 'limiter',
  switch: 'switch',
  divider: 'divider',
};

/** The figures of each type, beside those that all have. */
const FIGURES: Readonly<Record<DerivedType, readonly string[]>> = {
  'linear-regulator': ['voltage', 'dropout', 'quiescent', 'input', 'thermal-resistance', 'maximum-junction'],
  'switching-regulator': ['voltage', 'dropout', 'quiescent', 'input', 'efficiency', 'step'],
  diode: ['drop'],
  fuse: ['resistance', 'hold', 'trip'],
  limiter: ['resistance', 'drop'],
  switch: ['resistance', 'drop'],
  divider: ['upper', 'lower'],
};

/** Keys that only a supply has which another one feeds. */
export const BETWEEN_KEYS: readonly string[] = [...new Set(Object.values(FIGURES).flat())].filter(
  (key) => key !== 'voltage' && key !== 'resistance',
);
/** What every supply says that another one feeds, whatever stands between them. */
const COMMON = new Set([
  ...['from', 'type', 'part', 'place', 'note', 'current', 'peak-current', 'power', 'reverse'],
  ...['capacitance', 'input-capacitance', 'maximum-capacitance'],
]);

interface Surroundings {
  readonly tree: Tree;
  readonly catalogue: Catalogue;
  readonly remarks: Gathered;
  readonly places: Places;
  readonly wires: Wires;
  readonly controllers: readonly string[];
}

/** The names that an entry is fed from, with their places; none of one that is a source itself. */
export function feedsOf(raw: unknown, path: Path): readonly { readonly name: string; readonly path: Path }[] {
  const from = isMapping(raw) ? raw['from'] : undefined;
  if (typeof from === 'string') return [{ name: from, path: [...path, 'from'] }];
  return Array.isArray(from) ? from.map((name, k) => ({ name: String(name), path: [...path, 'from', k] })) : [];
}

/** Puts a supply that others feed into the tree. @returns what flows in it besides: through the lower half of a divider */
export function addDerived(around: Surroundings, id: string, raw: unknown, path: Path): readonly NetworkSketch[] {
  const { tree, remarks, places, wires } = around;
  if (!isMapping(raw)) return [];
  places.put(id, raw['place'], [...path, 'place']);
  checkEntry('supply', raw, path).forEach(remarks.problem);
  const own = new Figures(id, path, [{ data: raw, path }], remarks);
  const { type, profile } = betweenOf(raw, around.catalogue, remarks, path);
  const figures = own.over(profile);
  const sources = feedsOf(raw, path).flatMap(({ name, path: at }) => {
    const bound = nodeNamed(nodeNames(tree), around.controllers, name, at);
    if ('found' in bound) return [{ name: bound.found, node: wires.through(bound.found, id) }];
    remarks.problem(bound.problem);
    return [];
  });
  for (const key of Object.keys(raw))
    if (type !== undefined && !COMMON.has(key) && !allowed(type, sources.length).includes(key))
      remarks.problem({
        path: [...path, key],
        on: 'key',
        says: `\`${key}\` is no figure of a ${type}`,
        expected: `its figures are ${allowed(type, sources.length).join(', ')}`,
      });
  const [first] = sources;
  // The `power` of a clamp is its own heat, not what it hands on.
  const node = {
    id,
    kind: 'supply' as const,
    path,
    limits: [],
    ...besideCurrent(profile?.kind === 'clamp' ? own : figures),
  };
  if (first === undefined || type === undefined) {
    tree.add({ ...node, title: `supply ${id}`, volts: { min: 0, typ: 0, max: 0 } });
    return [];
  }
  if (isRegulator(type) && figures.figure('voltage', 'voltage') === undefined && !figures.says('voltage'))
    remarks.problem({
      path,
      on: 'key',
      says: `the regulator \`${id}\` has no voltage`,
      expected: '`voltage: 3.3 V ±2 %`, what it puts out',
    });
  if (sources.length > 1 && type === 'diode') {
    const limit = mostGiven(figures);
    tree.add({ ...node, title: `supply ${id}`, limits: limit ? [limit] : [], ...(!limit && { missing: asks(id) }) });
    for (const source of sources) join(tree, figures, id, source, id, path);
    return [];
  }
  let from = first.node;
  if (sources.length > 1) {
    from = `${id}:in`;
    tree.add({ id: from, kind: 'joint', title: `input of ${id}`, path, limits: [] });
    for (const source of sources) join(tree, figures, id, source, from, path);
  }
  tree.add({ ...node, title: `${TITLES[type]} ${id}` });
  const base = { id, title: `${TITLES[type]} ${id}`, from, to: id, path };
  if (type !== 'divider') {
    tree.link(linkOf(figures, type, base));
    return [];
  }
  const [upper, lower] = [figures.interval('upper', 'resistance'), figures.interval('lower', 'resistance')];
  if (upper === undefined || lower === undefined) {
    const missing = upper === undefined ? 'upper' : 'lower';
    if (!figures.says(missing))
      remarks.problem({
        path,
        on: 'key',
        says: `the divider \`${id}\` has no ${missing} resistor`,
        expected: '`upper: 10 kΩ` and `lower: 20 kΩ`',
      });
    return [];
  }
  tree.link({ ...base, kind: 'fuse', ohms: upper, limits: [], divides: lower });
  const branch = {
    from: id,
    to: GROUND,
    members: [{ kind: 'resistance' as const, part: `${id}.lower`, ohms: lower }],
    circuit: id,
  };
  return [{ id: `${id}.lower`, circuits: [], side: 'load', inner: [], hooks: [], on: [branch], off: [branch] }];
}

/** Several sources come with a diode each, whatever follows. */
const allowed = (type: DerivedType, sources: number): readonly string[] =>
  sources > 1 && type !== 'diode' ? [...FIGURES[type], 'drop'] : FIGURES[type];

const isRegulator = (type: DerivedType): boolean => type === 'linear-regulator' || type === 'switching-regulator';

const asks = (id: string) => ({
  figure: 'current',
  asks: `what current may the diodes of ${id} carry (its \`current\`)?`,
});

/** One of several sources of a node, over a diode of its own. */
function join(
  tree: Tree,
  figures: Figures,
  id: string,
  source: { readonly name: string; readonly node: string },
  to: string,
  path: Path,
): void {
  const base = { id: `${id}:${source.name}`, title: `diode from ${source.name} to ${id}`, from: source.node, to, path };
  const { missing: _, ...link } = diode(figures, base);
  tree.link({ ...link, limits: [], inner: true });
}
