import { takeOver } from './extends.js';
import { type Fields, isFields, type Profile, type ProfileKind } from './profile.js';

/** Profiles by id. A look-up is synchronous, so that the core needs no files. */
export interface Catalogue {
  profile(id: string): Profile | undefined;
  /** All ids, or those of a kind. */
  ids(kind?: ProfileKind): readonly string[];
}

/** A catalogue that can show how its profiles were written. */
export interface WrittenCatalogue extends Catalogue {
  /** A profile as written, then those that it extends, the nearest first; empty when there is none of that id. */
  written(id: string): readonly Fields[];
}

/**
 * A catalogue over one JSON text a profile, parsed and completed when first asked for and then kept. What one call
 * returns, others share: nobody writes to it. Throws when the texts themselves are broken: a profile that extends
 * itself or nothing.
 *
 * @param texts JSON text by id
 * @param index what is there, so that a list needs no parsing
 */
export function catalogueOf(
  texts: { readonly [id: string]: string },
  index: readonly { readonly id: string; readonly kind: string }[],
): WrittenCatalogue {
  const parsed = new Map<string, Fields>();
  const complete = new Map<string, Profile>();

  function raw(id: string): Fields | undefined {
    const known = parsed.get(id);
    const text = Object.hasOwn(texts, id) ? texts[id] : undefined;
    if (known || text === undefined) return known;
    const data: unknown = JSON.parse(text);
    if (!isFields(data)) throw new Error(`The profile ${id} is no mapping.`);
    parsed.set(id, data);
    return data;
  }

  function profile(id: string): Profile | undefined {
    const known = complete.get(id);
    if (known || raw(id) === undefined) return known;
    const resolved = takeOver(id, raw);
    if ('cycle' in resolved) throw new Error(`Profiles extend each other: ${resolved.cycle.join(', ')}.`);
    if ('missing' in resolved)
      throw new Error(`The profile ${resolved.by} extends ${resolved.missing}, which is not there.`);
    if ('deeperThan' in resolved) throw new Error(`The profile ${id} extends more than ${resolved.deeperThan} others.`);
    const made = resolved.fields as Profile;
    complete.set(id, made);
    return made;
  }

  function written(id: string): readonly Fields[] {
    const own = raw(id);
    if (own === undefined || profile(id) === undefined) return [];
    const below = own['extends'];
    return [own, ...(typeof below === 'string' ? written(below) : [])];
  }

  return {
    profile,
    written,
    ids: (kind) => index.filter((entry) => kind === undefined || entry.kind === kind).map(({ id }) => id),
  };
}
