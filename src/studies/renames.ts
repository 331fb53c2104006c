/**
 * Entries that stand in a file under another name than before: the same figures and wiring, and only the name is new. A supply or
 * a controller has a name that others are wired to, so what is found in one round may make the next one find more.
 */
import { field } from '../catalogue/profile.js';
import { canonical, put } from './canonical.js';
import type { WirePair } from './wire-pairs.js';
import { wirePairs } from './wire-pairs.js';

/** Each round finds what only referred to names of the round before; no file nests its names so deep. */
const MOST_ROUNDS = 10;

/** Sections whose names others refer to. */
const SECTIONS = ['supplies', 'controllers', 'expanders', 'arrays', 'loads', 'incoming'] as const;

export interface Renamed {
  /** New names by old ones, in the order of the sections. */
  readonly names: ReadonlyMap<string, string>;
  /** Wires, whose ids have these names in them. */
  readonly wires: readonly WirePair[];
  /** The former data under the new names, wherever they stand. */
  readonly before: unknown;
}

export function renamedEntries(before: unknown, after: unknown): Renamed {
  const names = new Map<string, string>();
  let data = before;
  for (let round = 0; round < MOST_ROUNDS; round++) {
    const found = new Map(SECTIONS.flatMap((section) => [...renamedIn(data, after, section)]));
    if (found.size === 0) break;
    for (const [old, name] of found) names.set(old, name);
    data = called(data, found);
  }
  return { names, wires: wirePairs(before, data, after), before: data };
}

/** Of several that are alike the first goes with the first, in the order of the file. */
function renamedIn(before: unknown, after: unknown, section: string): ReadonlyMap<string, string> {
  const [was, is] = [entriesOf(before, section), entriesOf(after, section)];
  const fresh = new Map([...is].filter(([name]) => !was.has(name)));
  const renames = new Map<string, string>();
  // Those that are alike in all go first, so that none of them is taken for another one at the same pins.
  for (const likeness of section === 'loads' ? [canonical, atItsPins] : [canonical]) {
    const like = new Map<string, string[]>();
    for (const [name, body] of fresh) {
      const key = likeness(body);
      if (key !== undefined) put(like, key, name);
    }
    for (const [name, body] of was) {
      if (is.has(name) || renames.has(name)) continue;
      const found = like.get(likeness(body) ?? '')?.shift();
      if (found === undefined) continue;
      renames.set(name, found);
      fresh.delete(found);
    }
  }
  return renames;
}

/** A load of one part or type at the same pins is the same load, whatever else was done to it. */
function atItsPins(body: unknown): string | undefined {
  const pins = [body, field(body, 'driver')].flatMap((of) =>
    ['pin', 'pins', 'inputs', 'array'].map((key) => field(of, key)),
  );
  return pins.every((each) => each === undefined)
    ? undefined
    : canonical([field(body, 'part') ?? field(body, 'type'), pins]);
}

/** Ids of what was renamed, `old.coil`, as they are now. @param wires ids of wires, which may have any name in them */
export const renamedId =
  (renames: ReadonlyMap<string, string>, wires: ReadonlyMap<string, string> = new Map()) =>
  (id: string): string => {
    const wire = wires.get(id);
    if (wire !== undefined) return wire;
    const dot = id.indexOf('.');
    const owner = dot < 0 ? id : id.slice(0, dot);
    return (renames.get(owner) ?? owner) + id.slice(owner.length);
  };

function entriesOf(data: unknown, section: string): ReadonlyMap<string, unknown> {
  const entries = field(data, section);
  return new Map(
    typeof entries === 'object' && entries !== null
      ? Object.entries(entries).map(([name, body]) => [name, withoutNote(body)])
      : [],
  );
}

/** What a builder remarks about an entry makes it no other one. */
function withoutNote(body: unknown): unknown {
  if (typeof body !== 'object' || body === null || Array.isArray(body)) return body;
  return Object.fromEntries(Object.entries(body).filter(([key]) => key !== 'note'));
}

/** Keys whose values are words of the format, of the catalogue or of people, and no names of the file. */
const NO_NAMES = new Set('type part board chip extends by during state title note reason rule policy'.split(' '));

/** Data with every name of the file that is renamed, as a key of its section and wherever something refers to it. */
function called(data: unknown, names: ReadonlyMap<string, string>): unknown {
  const named = renamedId(names);
  const values = (value: unknown): unknown => {
    if (typeof value === 'string') return named(value);
    if (Array.isArray(value)) return value.map(values);
    return mapped(value, (key, each) => [key, NO_NAMES.has(key) ? each : values(each)]);
  };
  const keyed = (entries: unknown): unknown => mapped(entries, (key, each) => [names.get(key) ?? key, each]);
  return mapped(values(data), (section, entries) => {
    if ((SECTIONS as readonly string[]).includes(section)) return [section, keyed(entries)];
    // A mode says by name in which state supplies are, and a variant what it sets where.
    if (section === 'modes')
      return [
        section,
        mapped(entries, (mode, of) => [
          mode,
          mapped(of, (key, each) => [key, key === 'supplies' ? keyed(each) : each]),
        ]),
      ];
    if (section === 'variants')
      return [section, mapped(entries, (name, of) => [name, mapped(of, (path, each) => [pathOf(path, names), each])])];
    return [section, entries];
  });
}

/** `loads.horn.pin` under the new name of horn. */
function pathOf(path: string, names: ReadonlyMap<string, string>): string {
  const [section = '', name = '', ...rest] = path.split('.');
  return (SECTIONS as readonly string[]).includes(section) && names.has(name)
    ? [section, names.get(name), ...rest].join('.')
    : path;
}

function mapped(value: unknown, pair: (key: string, each: unknown) => readonly [string, unknown]): unknown {
  if (typeof value !== 'object' || value === null || Array.isArray(value)) return value;
  return Object.fromEntries(Object.entries(value).map(([key, each]) => pair(key, each)));
}
