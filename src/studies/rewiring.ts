/** What is different between two project files as they are written, entry by entry. */
import type { Renamed } from './renames.js';
import type { Mapping, Setting } from './settings.js';
import { isMapping, listed, mapping, settingsOf } from './settings.js';
import type { WirePair } from './wire-pairs.js';
import { endsOf } from './wire-pairs.js';

export interface Rewired {
  /** The section of the file, or `pins`. */
  readonly section: string;
  /** The entry in it; of a section that is one value, nothing. */
  readonly name: string;
  /** `moved`: it hangs on something else than before. */
  readonly change: 'added' | 'removed' | 'renamed' | 'moved' | 'changed';
  readonly was?: string;
  readonly settings: readonly Setting[];
}

/** Sections whose entries have names; loads first, for they are what changes are about. */
const NAMED = [
  'loads',
  'supplies',
  'controllers',
  'expanders',
  'arrays',
  'incoming',
  'parts',
  'modes',
  'places',
  'variants',
];

/** Sections that are lists, and what an entry of them is known by. */
const LISTED: { readonly [section: string]: (entry: Mapping) => string } = {
  waivers: ({ rule, about }) => `${String(rule)} of ${String(about)}`,
  measured: ({ of, mode }) => (mode === undefined ? String(of) : `${String(of)}, ${String(mode)}`),
};

/** Told entry by entry, or the same in every file. */
const NO_VALUES = new Set([...NAMED, ...Object.keys(LISTED), 'wires', 'ampledger']);

/** Keys that say what an entry hangs on. */
const HANGS_ON = new Set(
  'pin pins inputs array supply logic-supply coil-supply common signals from to control powered place'.split(' '),
);

export function rewiring({ before, names, wires }: Renamed, after: unknown): readonly Rewired[] {
  const [was, is] = [mapping(before), mapping(after)];
  const values = [...new Set([...Object.keys(was), ...Object.keys(is)])].filter((key) => !NO_VALUES.has(key));
  return [
    ...NAMED.flatMap((section) => rewiredEntries(section, entriesOf(was[section]), entriesOf(is[section]), names)),
    ...wires.flatMap(rewiredWire),
    ...Object.entries(LISTED).flatMap(([section, nameOf]) =>
      rewiredEntries(section, byName(was[section], nameOf), byName(is[section], nameOf), new Map()),
    ),
    ...values.flatMap((section): Rewired[] => {
      const settings = settingsOf(was[section], is[section]);
      return settings.length === 0 ? [] : [{ section, name: '', change: wayOfValue(settings), settings }];
    }),
  ];
}

type Entries = ReadonlyMap<string, unknown>;

const entriesOf = (section: unknown): Entries => new Map(Object.entries(mapping(section)));

/** The entries of a list by what they are known by; of several the second has a number. */
function byName(list: unknown, nameOf: (entry: Mapping) => string): Entries {
  const counts = new Map<string, number>();
  return new Map(
    listed(list).map((entry) => {
      const name = isMapping(entry) ? nameOf(entry) : String(entry);
      const count = (counts.get(name) ?? 0) + 1;
      counts.set(name, count);
      return [count === 1 ? name : `${name} (${count})`, entry];
    }),
  );
}

/** @param names new names by old ones, of all sections */
function rewiredEntries(section: string, was: Entries, is: Entries, names: ReadonlyMap<string, string>): Rewired[] {
  const renamed = [...names].filter(([, name]) => is.has(name) && was.has(name));
  const newNames = new Set(renamed.map(([, name]) => name));
  const one = (name: string, change?: Rewired['change'], old?: string): Rewired[] => {
    const settings = settingsOf(was.get(name), is.get(name));
    if (settings.length === 0 && change === undefined) return [];
    return [{ section, name, ...(old !== undefined && { was: old }), change: change ?? wayOf(settings), settings }];
  };
  return [
    ...[...is.keys()].filter((name) => !was.has(name)).flatMap((name) => one(name, 'added')),
    ...renamed.flatMap(([old, name]) => one(name, 'renamed', old)),
    ...[...was.keys()]
      .filter((name) => !newNames.has(name))
      .flatMap((name) => one(name, is.has(name) ? undefined : 'removed')),
  ];
}

/** A wire has a new name when the file gave it one or gives it one: what its ends are called is told of them. */
function rewiredWire({ was, is }: WirePair): readonly Rewired[] {
  const name = (is ?? was)!.id;
  const settings = settingsOf(bare(was?.wire), bare(is?.wire));
  const isNamed = [was, is].some((each) => each?.wire['name'] !== undefined);
  const old = was && is && isNamed && was.id !== is.id ? was.id : undefined;
  if (settings.length === 0 && old === undefined) return [];
  const change = !was ? 'added' : !is ? 'removed' : old === undefined ? wayOf(settings) : 'renamed';
  return [{ section: 'wires', name, change, ...(old !== undefined && { was: old }), settings }];
}

const bare = (wire: Mapping | undefined): Mapping | undefined =>
  wire && Object.fromEntries(Object.entries(wire).filter(([key]) => key !== 'name'));

/** It moved when something that it hangs on is another one now, and not merely one more or less. */
const wayOf = (settings: readonly Setting[]): Rewired['change'] =>
  settings.some(
    ({ path, before, after }) =>
      before !== undefined &&
      after !== undefined &&
      path.split('.').some((key) => HANGS_ON.has(key)) &&
      !(path === 'to' && endsOf(before).some((end) => endsOf(after).includes(end))),
  )
    ? 'moved'
    : 'changed';

function wayOfValue(settings: readonly Setting[]): Rewired['change'] {
  if (settings.every((s) => s.before === undefined)) return 'added';
  return settings.every((s) => s.after === undefined) ? 'removed' : 'changed';
}
