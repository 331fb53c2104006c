/** Controllers, expanders and bare chips: their supply tree, their chip, what they draw themselves. */
import type { Catalogue } from '../catalogue/catalogue.js';
import type { Profile } from '../catalogue/profile.js';
import { Figures, isMapping } from '../loads/figures.js';
import type { NetworkSketch } from '../loads/lowering.js';
import type { AccountPlan } from '../loads/account-plan.js';
import type { CircuitPlan } from '../loads/circuit-plan.js';
import { checkEntry } from '../source/check.js';
import { nearestSpelling } from '../source/nearest-spelling.js';
import type { Path } from '../source/place.js';
import { addBoard } from './board-tree.js';
import type { Chip } from './chip.js';
import { chipOf } from './chip.js';
import { heldOff } from './held-off.js';
import { nodeNamed, nodeNames } from './names.js';
import { ownDraw } from './own-draw.js';
import type { PinAccountPlan } from './pin-plan.js';
import type { SupplyWindow, TreeFact } from './tree-plan.js';
import type { Places } from './places.js';
import type { Gathered } from './remarks.js';
import { supply } from './supplies.js';
import type { SupplyStates } from './supply-states.js';
import type { Tree } from './tree.js';
import { chipWindow, inletWindow } from './windows.js';
import type { Wires } from './wires.js';

type Raw = Readonly<Record<string, unknown>>;

/** A controller or expander in the project. */
export interface Bench {
  readonly chip: Chip;
  readonly networks: readonly NetworkSketch[];
  readonly accounts: readonly AccountPlan[];
  readonly facts: readonly TreeFact[];
  /** Voltages at which its chip works, and that its inlets take; none where nothing feeds them. */
  readonly windows: readonly SupplyWindow[];
  /** The chip's own current, as its supply and ground pins see it. */
  readonly own: PinAccountPlan['own'];
  /** The circuit that it is while it is awake, where it ever sleeps. */
  readonly awake?: CircuitPlan;
  /** LEDs of the board that hang on a pin. */
  readonly pinLeds: readonly { readonly name: string; readonly pin: string; readonly figures: Figures }[];
  readonly entry: Raw;
  readonly path: Path;
}

export interface Around {
  readonly tree: Tree;
  readonly catalogue: Catalogue;
  readonly remarks: Gathered;
  /** Names of all controllers. */
  readonly controllers: readonly string[];
  readonly places: Places;
  /** There is one controller only. */
  readonly alone: boolean;
  readonly wires: Wires;
  readonly states: SupplyStates;
  /** The modes in which no firmware runs yet. */
  readonly starts: ReadonlySet<string>;
  /** The modes of the file share its time. */
  readonly shared: boolean;
  /** The controllers and expanders that sleep in some mode. */
  readonly sleepers: ReadonlySet<string>;
  /** All chips, as far as they are known yet. */
  readonly chips: ReadonlyMap<string, Chip>;
}

export function controller(
  around: Around,
  id: string,
  raw: unknown,
  path: Path,
  section: 'controller' | 'expander',
): Bench | undefined {
  const { tree, catalogue, remarks } = around;
  if (!isMapping(raw)) return undefined;
  checkEntry(section, raw, path).forEach(remarks.problem);
  around.places.put(id, raw['place'], [...path, 'place']);
  const key = ['board', 'part', 'chip'].find((k) => typeof raw[k] === 'string');
  if (key === undefined) return undefined;
  const profile = found(
    around,
    String(raw[key]),
    [...path, key],
    key === 'chip' ? ['chip', 'expander'] : ['controller', 'chip', 'expander'],
  );
  if (profile === undefined) return undefined;
  const isBoard = profile.kind === 'controller';
  const chipProfile = isBoard ? catalogue.profile(String(profile['chip'])) : profile;
  if (chipProfile === undefined) {
    const says = `the profile \`${profile.id}\` has no chip that the catalogue knows`;
    remarks.problem({ path: [...path, key], on: 'value', says, expected: 'its `chip` is the id of a profile' });
    return undefined;
  }
  const board = new Figures(id, path, [{ data: raw, path }], remarks).over(isBoard ? profile : undefined);
  const figures = isBoard ? board.over(chipProfile) : board.over(profile);

  let rail: string | undefined;
  const facts: TreeFact[] = [];
  const divided: NetworkSketch[] = [];
  if (isBoard) {
    const inlets = Object.keys(mapping(profile['inlets']));
    const rails = Object.keys({ ...mapping(profile['rails']), ...mapping(raw['rails']) });
    const powered = poweredBy(around, id, raw, path, [...inlets, ...rails], divided);
    knownNames(around, id, raw, 'regulators', Object.keys(mapping(profile['parts'])), path);
    knownNames(around, id, raw, 'rails', Object.keys(mapping(profile['rails'])), path);
    const made = addBoard(tree, {
      owner: id,
      path,
      figures: new Figures(
        id,
        path,
        [{ data: { parts: raw['regulators'] ?? {}, rails: raw['rails'] ?? {} }, path }],
        remarks,
      ).over(profile),
      inlets: mapping(profile['inlets']),
      parts: mapping(profile['parts']),
      rails: { ...mapping(profile['rails']) },
      powered,
    });
    for (const { rail: node, part, forbidden } of made.backFed)
      facts.push({
        kind: 'back-fed',
        about: part,
        path: [...path, 'powered'],
        with: { rail: node, ...(forbidden && { forbidden: 'yes' }) },
      });
    for (const { rail: node, from, other } of made.joined)
      facts.push({ kind: 'joined-supplies', about: node, path: [...path, 'powered'], with: { from, other } });
    rail = `${id}.${String(profile['chip-supply'])}`;
  } else {
    const bound = nodeNamed(nodeNames(tree), around.controllers, String(raw['supply'] ?? ''), [...path, 'supply']);
    if (raw['supply'] === undefined)
      remarks.problem({
        path,
        on: 'key',
        says: `nothing supplies the chip \`${id}\``,
        expected: '`supply:` with the name of a supply or rail',
      });
    else if ('problem' in bound) remarks.problem(bound.problem);
    else rail = around.wires.through(bound.found, id);
  }
  if (rail === undefined) return undefined;
  if (isBoard && !tree.alive(rail)) facts.push({ kind: 'no-source', about: id, path, with: { rail } });

  const chip = chipOf({
    owner: id,
    alone: around.alone && section === 'controller',
    rail,
    window: tree.window(rail),
    path,
    profile: chipProfile,
    figures,
    ...(isBoard && { headers: mapping(profile['pins']) }),
    reserved: isBoard ? mapping(profile['reserved']) : {},
    inputOnly: isBoard ? strings(profile['input-only']) : [],
    ownLimits: raw['limits'],
    ambientHottest: around.places.hottest(id),
    ...(section === 'expander' && {
      heldOff: once(() => heldOff(figures, raw['control'], around.chips, around.controllers)),
    }),
    remarks,
  });
  for (const name of Object.keys(mapping(raw['pins'])))
    if (!chip.pins.has(name.toLowerCase()))
      unknownName(
        around,
        id,
        'pin',
        name,
        [...chip.pins.values()].map((p) => p.label),
        [...path, 'pins', name],
      );
  const drawn = ownDraw({
    id,
    rail,
    from: isBoard ? `${id}.${String(profile['draws-from'] ?? profile['chip-supply'])}` : rail,
    figures: board,
    isBoard,
    chipProfile,
    removed: removedOf(around, id, raw, path, mapping(profile['removable'])),
    ownDraws: isMapping(raw['draws']),
    sleeps: around.sleepers.has(id),
    remarks,
    path,
  });
  const inlets = (isBoard ? Object.keys(mapping(profile['inlets'])) : []).map((inlet) => ({
    node: `${id}.${inlet}`,
    figures: board.within('inlets').within(inlet),
  }));
  const leds = isBoard ? Object.entries(mapping(profile['pin-leds'])) : [];
  return {
    chip,
    ...drawn,
    networks: [...divided, ...drawn.networks],
    facts,
    windows: [
      ...chipWindow(figures, id, rail),
      ...inlets.flatMap((inlet) => inletWindow(inlet.figures, inlet.node)),
    ].filter(({ node }) => tree.alive(node)),
    pinLeds: leds.map(([name, led]) => ({
      name: `${id}.${name}`,
      pin: String(mapping(led)['pin']),
      figures: board.within('pin-leds').within(name),
    })),
    entry: raw,
    path,
  };
}

/** Asked once; a question that leads back to itself has no answer. */
function once<T>(ask: () => T | undefined): () => T | undefined {
  let [asked, found]: [boolean, T | undefined] = [false, undefined];
  return () => {
    if (asked) return found;
    asked = true;
    return (found = ask());
  };
}

/** The parts of the board's own draw that are taken off. */
function removedOf(around: Around, id: string, raw: Raw, path: Path, removable: Raw): readonly string[] {
  const known = Object.keys(removable);
  return strings(raw['removed']).filter((name, k) => {
    if (known.includes(name)) return true;
    unknownName(around, id, 'removable part', name, known, [...path, 'removed', k]);
    return false;
  });
}

const mapping = (raw: unknown): Raw => (isMapping(raw) ? raw : {});
const strings = (raw: unknown): string[] => (Array.isArray(raw) ? raw.map(String) : []);

function found(around: Around, name: string, path: Path, kinds: readonly Profile['kind'][]): Profile | undefined {
  const profile = around.catalogue.profile(name);
  if (profile && kinds.includes(profile.kind)) return profile;
  const known = kinds.flatMap((k) => around.catalogue.ids(k));
  const nearest = nearestSpelling(name, known);
  around.remarks.problem({
    path,
    on: 'value',
    says: `no ${kinds[0]} \`${name}\` is in the catalogue`,
    expected: nearest === undefined ? `one of ${known.slice(0, 8).join(', ')}` : `did you mean \`${nearest}\`?`,
  });
  return undefined;
}

/** Parts and rails that a project overrides have to be the board's. */
function knownNames(
  around: Around,
  id: string,
  raw: Raw,
  section: 'regulators' | 'rails',
  known: readonly string[],
  path: Path,
): void {
  for (const name of Object.keys(mapping(raw[section])))
    if (!known.includes(name))
      unknownName(around, id, section === 'rails' ? 'rail' : 'part', name, known, [...path, section, name]);
}

function unknownName(
  around: Around,
  id: string,
  what: string,
  name: string,
  known: readonly string[],
  path: Path,
): void {
  const nearest = nearestSpelling(name, known);
  const expected =
    nearest === undefined ? `one of ${known.slice(0, 8).join(', ') || 'none'}` : `did you mean \`${nearest}\`?`;
  around.remarks.problem({ path, on: 'key', says: `\`${id}\` has no ${what} \`${name}\``, expected });
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
      const nearest = nearestSpelling(inlet, known);
      around.remarks.problem({
        path: at,
        on: 'key',
        says: `\`${id}\` has no inlet or rail \`${inlet}\``,
        expected: nearest === undefined ? `one of ${known.join(', ')}` : `did you mean \`${nearest}\`?`,
      });
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
