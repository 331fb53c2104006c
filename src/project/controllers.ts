/** Controllers, expanders and bare chips: their supply tree, their chip, what they draw themselves. */
import type { Profile } from '../catalogue/profile.js';
import { Figures, isMapping } from '../loads/figures.js';
import type { NetworkSketch } from '../loads/lowering.js';
import type { AccountPlan } from '../loads/account-plan.js';
import type { CircuitPlan } from '../loads/circuit-plan.js';
import { checkEntry } from '../source/check.js';
import { didYouMean, oneOf } from '../source/did-you-mean.js';
import type { Path } from '../source/place.js';
import type { Around } from './around.js';
import { boardFeed, chipFeed } from './controller-feed.js';
import { mapping } from './chip-setting.js';
import { unknownName } from './unknown-name.js';
import type { Chip } from './chip.js';
import { chipOf } from './chip.js';
import { heldOff } from './held-off.js';
import { ownDraw } from './own-draw.js';
import type { PinAccountPlan } from './pin-plan.js';
import type { SupplyWindow, TreeFact } from './tree-plan.js';
import { chipWindow, inletWindow } from './windows.js';

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

export function controller(
  around: Around,
  id: string,
  raw: unknown,
  path: Path,
  section: 'controller' | 'expander',
): Bench | undefined {
  const { tree, remarks } = around;
  if (!isMapping(raw)) return undefined;
  checkEntry(section, raw, path).forEach(remarks.problem);
  around.places.put(id, raw['place'], [...path, 'place']);
  const profiles = profilesOf(around, raw, path);
  if (profiles === undefined) return undefined;
  const { profile, chipProfile, isBoard } = profiles;
  const board = new Figures(id, path, [{ data: raw, path }], remarks).over(isBoard ? profile : undefined);
  const figures = isBoard ? board.over(chipProfile) : board.over(profile);

  const { rail, facts, networks } = isBoard
    ? boardFeed(around, id, raw, path, profile)
    : chipFeed(around, id, raw, path);
  if (rail === undefined) return undefined;

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
        { remarks, id },
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
    networks: [...networks, ...drawn.networks],
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

/** The profile that an entry names, and that of the chip on it. */
function profilesOf(
  around: Around,
  raw: Raw,
  path: Path,
): { readonly profile: Profile; readonly chipProfile: Profile; readonly isBoard: boolean } | undefined {
  const { catalogue, remarks } = around;
  const key = ['board', 'part', 'chip'].find((k) => typeof raw[k] === 'string');
  if (key === undefined) return undefined;
  const at: Path = [...path, key];
  const kinds = key === 'chip' ? (['chip', 'expander'] as const) : (['controller', 'chip', 'expander'] as const);
  const profile = found(around, String(raw[key]), at, kinds);
  if (profile === undefined) return undefined;
  const isBoard = profile.kind === 'controller';
  const chipProfile = isBoard ? catalogue.profile(String(profile['chip'])) : profile;
  if (chipProfile !== undefined) return { profile, chipProfile, isBoard };
  const says = `the profile \`${profile.id}\` has no chip that the catalogue knows`;
  remarks.problem({ path: at, on: 'value', says, expected: 'its `chip` is the id of a profile' });
  return undefined;
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
    unknownName({ remarks: around.remarks, id }, 'removable part', name, known, [...path, 'removed', k]);
    return false;
  });
}

const strings = (raw: unknown): string[] => (Array.isArray(raw) ? raw.map(String) : []);

function found(around: Around, name: string, path: Path, kinds: readonly Profile['kind'][]): Profile | undefined {
  const profile = around.catalogue.profile(name);
  if (profile && kinds.includes(profile.kind)) return profile;
  const known = kinds.flatMap((k) => around.catalogue.ids(k));
  const says = `no ${kinds[0]} \`${name}\` is in the catalogue`;
  around.remarks.problem({ path, on: 'value', says, expected: didYouMean(name, known, oneOf(known)) });
  return undefined;
}
