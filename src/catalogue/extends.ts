import { overlay } from './overlay.js';
import { type Fields, field } from './profile.js';

/** More steps than this are a slip, or an attack. */
const DEEPEST = 16;

/** A profile with everything it extends, or why there is none. */
export type Resolved =
  | { readonly fields: Fields }
  | { readonly missing: string; readonly by: string }
  | { readonly cycle: readonly string[] }
  | { readonly deeperThan: number };

/**
 * Takes over what a profile `extends`, step by step down to one that extends nothing; the nearer one wins.
 * Titles are not taken over: what is different has a name of its own.
 *
 * @param raw the profile as written, by id; undefined when there is none
 */
export function takeOver(id: string, raw: (id: string) => Fields | undefined): Resolved {
  const chain: Fields[] = [];
  const seen: string[] = [];
  for (let next: string | undefined = id; next !== undefined;) {
    if (seen.includes(next)) return { cycle: [...seen.slice(seen.indexOf(next)), next] };
    if (seen.length === DEEPEST) return { deeperThan: DEEPEST };
    const found = raw(next);
    if (!found) return { missing: next, by: seen.at(-1) ?? id };
    seen.push(next);
    chain.push(found);
    const below: unknown = field(found, 'extends');
    next = typeof below === 'string' ? below : undefined;
  }
  const { extends: _, ...fields } = chain.reduceRight<Fields>((below, above) => overlay(below, above), {});
  return { fields: { ...fields, id, title: field(chain[0], 'title') ?? id } };
}
