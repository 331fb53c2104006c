/** What is different between two project files as they are written, and what each pin is used for. */
import type { Project } from '../project/project.js';
import { canonical } from './canonical.js';

/** One value that was set, changed or taken out; a side without it lacks the key. */
export interface Setting {
  /** Below the entry: `driver.pin`; empty when the entry itself is the value. */
  readonly path: string;
  readonly before?: unknown;
  readonly after?: unknown;
}

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

/** Keys that say what an entry hangs on. */
const HANGS_ON = new Set(
  'pin pins inputs array supply logic-supply coil-supply common signals from to control powered place'.split(' '),
);

/** @param before the former data, under the names that its entries have now @param renames new names by old ones */
export function rewiring(before: unknown, after: unknown, renames: ReadonlyMap<string, string>): readonly Rewired[] {
  const [was, is] = [mapping(before), mapping(after)];
  const others = [...new Set([...Object.keys(was), ...Object.keys(is)])].filter((key) => !NAMED.includes(key));
  return [
    ...NAMED.flatMap((section) => entries(section, mapping(was[section]), mapping(is[section]), renames)),
    ...others.flatMap((section): Rewired[] => {
      const settings = settingsOf(was[section], is[section], '');
      return settings.length === 0 ? [] : [{ section, name: '', change: wayOf(settings, section), settings }];
    }),
  ];
}

function entries(section: string, was: Mapping, is: Mapping, renames: ReadonlyMap<string, string>): readonly Rewired[] {
  const here = [...renames].filter(([, name]) => Object.hasOwn(is, name));
  const newNames = new Set(here.map(([, name]) => name));
  return [
    ...Object.keys(is)
      .filter((name) => !Object.hasOwn(was, name))
      .map((name): Rewired => ({ section, name, change: 'added', settings: settingsOf(undefined, is[name], '') })),
    ...here.map(([old, name]): Rewired => ({
      section,
      name,
      was: old,
      change: 'renamed',
      settings: settingsOf(was[name], is[name], ''),
    })),
    ...Object.keys(was).flatMap((name): Rewired[] => {
      if (newNames.has(name)) return [];
      if (!Object.hasOwn(is, name))
        return [{ section, name, change: 'removed', settings: settingsOf(was[name], undefined, '') }];
      const settings = settingsOf(was[name], is[name], '');
      return settings.length === 0 ? [] : [{ section, name, change: wayOf(settings, ''), settings }];
    }),
  ];
}

/** It moved when something that it hangs on is another one now. */
function wayOf(settings: readonly Setting[], section: string): Rewired['change'] {
  if (section !== '' && settings.every((s) => s.before === undefined)) return 'added';
  if (section !== '' && settings.every((s) => s.after === undefined)) return 'removed';
  const moved = settings.some(
    ({ path, before, after }) =>
      before !== undefined && after !== undefined && path.split('.').some((key) => HANGS_ON.has(key)),
  );
  return moved && section === '' ? 'moved' : 'changed';
}

/** The leaves that differ. Lists of one-line entries differ as whole entries, whatever their order. */
function settingsOf(before: unknown, after: unknown, path: string): readonly Setting[] {
  if (canonical(before) === canonical(after)) return [];
  if (isMapping(before ?? after) && isMapping(after ?? before)) {
    const [was, is] = [mapping(before), mapping(after)];
    return [...new Set([...Object.keys(was), ...Object.keys(is)])].flatMap((key) =>
      settingsOf(was[key], is[key], path === '' ? key : `${path}.${key}`),
    );
  }
  if (isListOfMappings(before ?? after) && isListOfMappings(after ?? before)) {
    const [was, is] = [listed(before), listed(after)];
    return [
      ...was
        .filter((each) => !is.some((other) => canonical(other) === canonical(each)))
        .map((b) => ({ path, before: b })),
      ...is
        .filter((each) => !was.some((other) => canonical(other) === canonical(each)))
        .map((a) => ({ path, after: a })),
    ];
  }
  return [{ path, ...(before !== undefined && { before }), ...(after !== undefined && { after }) }];
}

type Mapping = { readonly [key: string]: unknown };

const isMapping = (value: unknown): value is Mapping =>
  typeof value === 'object' && value !== null && !Array.isArray(value);

/** Without a prototype, so that an entry may be called as one of its members is. */
const EMPTY = Object.freeze(Object.create(null) as Mapping);

const mapping = (value: unknown): Mapping => (isMapping(value) ? value : EMPTY);

const isListOfMappings = (value: unknown): boolean => Array.isArray(value) && value.some(isMapping);

const listed = (value: unknown): readonly unknown[] => (Array.isArray(value) ? value : []);

/** Pins that something else hangs on than before. @param named what a name of the former is called in the latter */
export function repinned(
  before: Project | undefined,
  after: Project | undefined,
  named: (id: string) => string,
): readonly Rewired[] {
  const [was, is] = [pinsOf(before, named), pinsOf(after, (id) => id)];
  return [...new Set([...was.keys(), ...is.keys()])].flatMap((pin): Rewired[] => {
    const [b, a] = [was.get(pin)?.join(' and '), is.get(pin)?.join(' and ')];
    if (b === a) return [];
    const change = b === undefined ? 'added' : a === undefined ? 'removed' : 'changed';
    const setting: Setting = { path: '', ...(b !== undefined && { before: b }), ...(a !== undefined && { after: a }) };
    return [{ section: 'pins', name: pin, change, settings: [setting] }];
  });
}

function pinsOf(project: Project | undefined, named: (id: string) => string): ReadonlyMap<string, readonly string[]> {
  const users = new Map<string, Set<string>>();
  for (const { pin, by } of project?.uses ?? [])
    users.set(named(pin), (users.get(named(pin)) ?? new Set()).add(named(by)));
  return new Map([...users].map(([pin, by]) => [pin, [...by].sort()]));
}
