/**
 * Wires between what feeds and what is fed. A wire is a link of the supply tree with a resistance; what hangs on its far
 * end is fed from a joint of its own there, so that coils, windows and drivers see what is left of the voltage.
 */
import type { Catalogue } from '../catalogue/catalogue.js';
import { isMapping } from '../loads/figures.js';
import { didYouMean } from '../source/did-you-mean.js';
import type { Path } from '../source/place.js';
import { nodeNamed, nodeNames } from './names.js';
import type { Places } from './places.js';
import { placeOf } from './places.js';
import type { TreeFact } from './tree-plan.js';
import type { Gathered } from './remarks.js';
import type { Tree } from './tree.js';
import type { WireFigures } from './wire-figures.js';
import { wireFigures } from './wire-figures.js';

type Raw = Readonly<Record<string, unknown>>;

/** The sections of a project whose entries a wire may lead to, those nearest to the source first. */
const SECTIONS = ['supplies', 'controllers', 'expanders', 'loads'] as const;
const GROUND_END = /^(?:(.+)\.)?ground$/i;

export interface Wires {
  /**
   * The node at which something is fed from a node: the far end of the wires there, or the node itself where none leads.
   *
   * @param owner a load, controller, expander or supply @param member its inlet or rail, where that is fed
   */
  through(node: string, owner: string, member?: string): string;
  /** Reports the wires that lead nowhere. @returns the supplies that a wire joins, and the wires that carry nothing */
  finish(): readonly TreeFact[];
}

interface Wire {
  readonly id: string;
  readonly path: Path;
  readonly from: string;
  /** Names of what it feeds, with their places; of a ground wire, what returns over it. */
  readonly ends: readonly { readonly name: string; readonly path: Path }[];
  /** The place that it says it lies in. */
  readonly place?: unknown;
  readonly ground: boolean;
  readonly figures: WireFigures;
  /** The joint at its far end, by the node at its near end. */
  readonly far: Map<string, string>;
  readonly used: Set<string>;
}

export function wiresOf(data: Raw, tree: Tree, places: Places, catalogue: Catalogue, remarks: Gathered): Wires {
  const owners = new Map(
    SECTIONS.flatMap((section, rank) => Object.keys(mapping(data[section])).map((name) => [name, rank] as const)),
  );
  const controllers = Object.keys(mapping(data['controllers']));
  const list = Array.isArray(data['wires']) ? data['wires'] : [];
  const all = list.flatMap(
    (raw: unknown, k) => wireFrom(raw, ['wires', k], owners, controllers, catalogue, remarks) ?? [],
  );
  const seen = new Set<string>();
  // One of a name that is taken leads nowhere: it would be fed from itself.
  const wires = all.filter(({ id, path }) => {
    const taken = seen.has(id) || owners.has(id);
    if (taken)
      remarks.problem({
        path,
        on: 'key',
        says: `the name \`${id}\` is taken already`,
        expected: 'a `name:` that nothing else has',
      });
    seen.add(id);
    return !taken;
  });

  const nodes = (): string[] => nodeNames(tree);
  const begins = (wire: Wire, node: string): boolean => {
    const bound = nodeNamed(nodes(), controllers, wire.from, [...wire.path, 'from']);
    return 'found' in bound && bound.found === node;
  };
  const endOf = (wire: Wire, node: string): string => {
    const known = wire.far.get(node);
    if (known !== undefined) return known;
    const id = wire.far.size === 0 ? wire.id : `${wire.id}-${wire.far.size + 1}`;
    wire.far.set(node, id);
    tree.add({ id, kind: 'joint', title: `end of wire ${id}`, path: wire.path, limits: [] });
    tree.link({ ...wire.figures, id, kind: 'cable', title: `wire ${id}`, from: node, to: id, path: wire.path });
    return id;
  };

  return {
    through(node, owner, member) {
      let at = node;
      for (const wire of wires) {
        const end = wire.ends.find(({ name }) => isEnd(name, owner, wire.ground ? undefined : member, controllers));
        if (end === undefined || (!wire.ground && !begins(wire, node))) continue;
        wire.used.add(end.name);
        if (wire.ground)
          remarks.assume(wire.id, `its drop is counted in what feeds ${owner} from ${node}`, [...wire.path]);
        at = endOf(wire, at);
      }
      return at;
    },
    finish() {
      const facts: TreeFact[] = [];
      for (const wire of wires) {
        locate(wire);
        const bound = nodeNamed(nodes(), controllers, wire.from, [...wire.path, 'from']);
        if (!wire.ground && 'problem' in bound) remarks.problem(bound.problem);
        for (const { name, path } of wire.ends) {
          if (wire.used.has(name)) continue;
          const other = tree.nodes.find((n) => n.id === name && n.volts !== undefined);
          if (other && 'found' in bound)
            facts.push({
              kind: 'joined-supplies',
              about: other.id,
              path,
              with: { from: other.id, other: bound.found, by: wire.id },
            });
          else if (!known(name)) remarks.problem(nowhere(name, path));
          else facts.push(idle(wire, name, path));
        }
      }
      return facts;
    },
  };

  /** A wire lies in the place it says, or in that of all its ends; one that leads into another place mostly lies outside. */
  function locate(wire: Wire): void {
    const ids = [wire.id, ...wire.far.values()];
    if (wire.place !== undefined) return ids.forEach((id) => places.put(id, wire.place, [...wire.path, 'place']));
    if (places.located.size === 0) return;
    const stand = new Set([wire.from, ...wire.ends.map((e) => e.name)].map((name) => placeOf(places, name)));
    const [only] = stand;
    const place = stand.size === 1 ? only : undefined;
    for (const id of ids) places.settle(id, place);
    if (stand.size > 1)
      remarks.assume(wire.id, 'lies in the project’s own ambient, since its ends stand in two places');
  }

  function known(name: string): boolean {
    return [...owners.keys(), ...nodes()].some((id) => isEnd(name, id, undefined, controllers));
  }

  function nowhere(name: string, path: Path) {
    const known = [...owners.keys(), ...nodes()];
    return {
      path,
      on: 'value' as const,
      says: `there is nothing \`${name}\` that a wire could lead to`,
      expected: didYouMean(name, known, 'a load, a controller or its inlet, a chip, or a supply'),
    };
  }
}

const mapping = (raw: unknown): Raw => (isMapping(raw) ? raw : {});

/** Whether a name of the file means an owner, or its inlet or rail; with one controller its name may be left off. */
function isEnd(name: string, owner: string, member: string | undefined, controllers: readonly string[]): boolean {
  const low = name.toLowerCase();
  const own = owner.toLowerCase();
  if (low === own) return true;
  if (member === undefined) return controllers.length === 1 && own === `${controllers[0]!.toLowerCase()}.${low}`;
  const inlet = member.toLowerCase();
  return low === `${own}.${inlet}` || (controllers.length === 1 && controllers[0] === owner && low === inlet);
}

/** A wire to what something else feeds carries nothing: a variant may feed it from there. */
const idle = (wire: Wire, name: string, path: Path): TreeFact => ({
  kind: 'idle-wire',
  about: wire.id,
  path,
  with: { to: name, ...(wire.ground ? {} : { from: wire.from }) },
});

/** What a wire of the file is called: by its name, or by its ends. */
export const wireId = (raw: Raw): string =>
  typeof raw['name'] === 'string'
    ? raw['name']
    : [raw['from'], ...(Array.isArray(raw['to']) ? (raw['to'] as readonly unknown[]) : [raw['to']])]
        .map(String)
        .join('-');

function wireFrom(
  raw: unknown,
  path: Path,
  owners: ReadonlyMap<string, number>,
  controllers: readonly string[],
  catalogue: Catalogue,
  remarks: Gathered,
): Wire | undefined {
  if (!isMapping(raw) || raw['from'] === undefined || raw['to'] === undefined) return undefined;
  const from = String(raw['from']);
  const listed: readonly unknown[] = Array.isArray(raw['to']) ? raw['to'] : [raw['to']];
  const to = listed.map((name, k) => ({
    name: String(name),
    path: Array.isArray(raw['to']) ? [...path, 'to', k] : [...path, 'to'],
  }));
  const id = wireId(raw);
  const ends = [{ name: from, path: [...path, 'from'] }, ...to];
  const ground = ends.every(({ name }) => GROUND_END.test(name));
  if (!ground && ends.some(({ name }) => GROUND_END.test(name))) {
    remarks.problem({
      path,
      on: 'key',
      says: `the wire \`${id}\` joins a ground with what is none`,
      expected: 'both ends at a ground, as in `from: pump.ground, to: main.ground`, or neither',
    });
    return undefined;
  }
  const figures = wireFigures(raw, id, path, ground, catalogue, remarks);
  if (figures === undefined) return undefined;
  const common = {
    id,
    path,
    from,
    place: raw['place'],
    ground,
    figures,
    far: new Map<string, string>(),
    used: new Set<string>(),
  };
  if (!ground) return { ...common, ends: to };
  const ownerOf = (name: string): string => GROUND_END.exec(name)?.[1] ?? controllers[0] ?? name;
  const grounds = ends.map((e) => ({ ...e, name: ownerOf(e.name) }));
  const lost = grounds.find(({ name }) => !owners.has(name));
  if (lost) {
    remarks.problem({
      path: lost.path,
      on: 'value',
      says: `there is nothing \`${lost.name}\` that could have a ground`,
      expected: 'the ground of a supply, a controller, a chip or a load, as in `main.ground`',
    });
    return undefined;
  }
  // The end that is farther from the sources is the one whose current returns over it.
  const [first, ...others] = grounds;
  const rank = (end: { readonly name: string }): number => owners.get(end.name)!;
  return { ...common, ends: others.every((end) => rank(end) < rank(first!)) ? [first!] : others };
}
