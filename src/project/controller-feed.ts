/** How a controller is fed: a board through its own supply tree, a bare chip from a rail. */
import type { Profile } from '../catalogue/profile.js';
import { Figures, isMapping } from '../loads/figures.js';
import type { NetworkSketch } from '../loads/lowering.js';
import type { Path } from '../source/place.js';
import { addBoard } from './board-tree.js';
import { mapping } from './chip-setting.js';
import type { Around } from './around.js';
import { nodeNamed, nodeNames } from './names.js';
import { supply } from './supplies.js';
import type { TreeFact } from './tree-plan.js';
import { unknownName } from './unknown-name.js';

type Raw = Readonly<Record<string, unknown>>;

/** What feeds a chip. */
export interface Feed {
  /** The rail of its pins; undefined where none could be bound. */
  readonly rail: string | undefined;
  readonly facts: readonly TreeFact[];
  /** What the supplies draw that are spelled out in place. */
  readonly networks: readonly NetworkSketch[];
}

/** Puts a board's inlets, regulators and rails into the tree. */
export function boardFeed(around: Around, id: string, raw: Raw, path: Path, profile: Profile): Feed {
  const { tree, remarks } = around;
  const inlets = mapping(profile['inlets']);
  const parts = mapping(profile['parts']);
  const rails = mapping(profile['rails']);
  const networks: NetworkSketch[] = [];
  const known = [...Object.keys(inlets), ...Object.keys({ ...rails, ...mapping(raw['rails']) })];
  const powered = poweredBy(around, id, raw, path, known, networks);
  for (const [section, what, own] of [
    ['regulators', 'part', parts],
    ['rails', 'rail', rails],
  ] as const)
    for (const name of Object.keys(mapping(raw[section])))
      if (own[name] === undefined) unknownName({ remarks, id }, what, name, Object.keys(own), [...path, section, name]);
  const overriding = { parts: raw['regulators'] ?? {}, rails: raw['rails'] ?? {} };
  const made = addBoard(tree, {
    owner: id,
    path,
    figures: new Figures(id, path, [{ data: overriding, path }], remarks).over(profile),
    inlets,
    parts,
    rails,
    powered,
  });
  const rail = `${id}.${String(profile['chip-supply'])}`;
  const at: Path = [...path, 'powered'];
  const facts: TreeFact[] = [
    ...made.backFed.map(({ rail: node, part, forbidden }): TreeFact => ({
      kind: 'back-fed',
      about: part,
      path: at,
      with: { rail: node, ...(forbidden && { forbidden: 'yes' }) },
    })),
    ...made.joined.map(({ rail: node, from, other }): TreeFact => ({
      kind: 'joined-supplies',
      about: node,
      path: at,
      with: { from, other },
    })),
    ...(tree.alive(rail) ? [] : [{ kind: 'no-source', about: id, path, with: { rail } } satisfies TreeFact]),
  ];
  return { rail, facts, networks };
}

/** Binds the rail that a bare chip names. */
export function chipFeed({ tree, controllers, remarks, wires }: Around, id: string, raw: Raw, path: Path): Feed {
  const none: Feed = { rail: undefined, facts: [], networks: [] };
  if (raw['supply'] === undefined) {
    const expected = '`supply:` with the name of a supply or rail';
    remarks.problem({ path, on: 'key', says: `nothing supplies the chip \`${id}\``, expected });
    return none;
  }
  const bound = nodeNamed(nodeNames(tree), controllers, String(raw['supply']), [...path, 'supply']);
  if (!('problem' in bound)) return { ...none, rail: wires.through(bound.found, id) };
  remarks.problem(bound.problem);
  return none;
}

/** Inlets and rails of a board and what powers each: a supply by name, or one spelled out in place. */
function poweredBy(
  around: Around,
  id: string,
  raw: Raw,
  path: Path,
  known: readonly string[],
  networks: NetworkSketch[],
): ReadonlyMap<string, string> {
  const powered = new Map<string, string>();
  for (const [inlet, source] of Object.entries(mapping(raw['powered']))) {
    const at = [...path, 'powered', inlet];
    if (!known.includes(inlet)) {
      unknownName({ remarks: around.remarks, id }, 'inlet or rail', inlet, known, at);
    } else if (isMapping(source)) {
      const name = `${id}.${inlet}-supply`;
      networks.push(...supply(around, name, source, at));
      powered.set(inlet, around.wires.through(name, id, inlet));
    } else {
      const bound = nodeNamed(nodeNames(around.tree), around.controllers, String(source), at);
      if ('problem' in bound) around.remarks.problem(bound.problem);
      else powered.set(inlet, around.wires.through(bound.found, id, inlet));
    }
  }
  return powered;
}
