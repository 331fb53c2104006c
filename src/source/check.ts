/** The schema check of a project, in two steps: the frame, then each entry once its type is known. */
import { explain } from './explain.js';
import { known as load } from './generated/validators.js';
import type { Path, Problem } from './place.js';

const known = load();

/**
 * A sort of entry with keys of its own. `load` alone is a load of unknown type: it knows the keys of all types.
 * What begins with `part:` stands under `parts`: the figures of a thing, without the keys of its use.
 */
export type EntryKind =
  | 'load'
  | `load:${string}`
  | `driver:${string}`
  | 'clamp'
  | 'supply'
  | 'controller'
  | 'expander'
  | 'array'
  | `part:${string}`;

/**
 * Holds a whole project against the frame: sections, names, policy, modes, interlocks, and what each entry says it is
 * (`part`, `type`, `like`, `board`, `chip`). The rest of an entry is for {@link checkEntry}. Empty when nothing is wrong.
 */
export function checkFrame(data: unknown): Problem[] {
  return run('frame', { sort: 'project', data, path: [] });
}

/**
 * Holds one entry against the keys of its own type. What {@link checkFrame} has said is not said again; the `driver` and
 * `clamp` of a load are entries of their own.
 *
 * @param kind what the entry turned out to be: 'load:coil', 'driver:npn', 'part:load:coil'
 * @param path where it stands in the document
 */
export function checkEntry(kind: EntryKind, data: unknown, path: Path): Problem[] {
  const part = kind.startsWith('part:');
  const [sort = '', type] = (part ? kind.slice('part:'.length) : kind).split(':');
  const validator = `${part ? 'part' : 'entry'}-${sort}${type === undefined ? '' : `-${type}`}`;
  if (typeof data !== 'object' || data === null || Array.isArray(data)) return []; // the frame has said so
  if (!Object.hasOwn(known.validators, validator)) throw new Error(`no schema for a ${kind}`);
  return run(validator, { sort, ...(type === undefined ? {} : { type }), data, path });
}

/** Whether {@link checkEntry} knows a sort of entry. */
export function isEntryKind(kind: string): kind is EntryKind {
  const name = kind.startsWith('part:') ? kind : `entry:${kind}`;
  return Object.hasOwn(known.validators, name.replaceAll(':', '-'));
}

function run(name: string, subject: { sort: string; type?: string; data: unknown; path: Path }): Problem[] {
  const validator = known.validators[name]!;
  return validator(subject.data) ? [] : explain(validator.errors ?? [], { ...subject, known });
}
