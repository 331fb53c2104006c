import type { Path } from './place.js';
import { quote } from './visible.js';

/** Sections of a project, and what one of their entries is called. */
const sections: Readonly<Record<string, string>> = {
  parts: 'part',
  supplies: 'supply',
  controllers: 'controller',
  expanders: 'expander',
  arrays: 'array',
  loads: 'load',
  incoming: 'incoming voltage',
  modes: 'mode',
  interlocks: 'interlock',
  wires: 'wire',
  places: 'place',
  variants: 'variant',
};

/** Mappings whose keys are names of the author's own, not words of the format. */
const named = new Set([
  'inputs',
  'contacts',
  'pins',
  'rails',
  'regulators',
  'powered',
  'signals',
  'control',
  'documents',
]);

/** The sort of entry that a path of a project leads into, and the rest of the way inside it. */
export function entryAt(path: Path): { readonly sort: string; readonly rest: Path } {
  const [section, name, ...rest] = path;
  const sort = typeof section === 'string' && Object.hasOwn(sections, section) ? sections[section] : undefined;
  if (sort === undefined || name === undefined) return { sort: 'project', rest: path };
  // A driver, a clamp and a supply spelled out in place are entries of their own.
  if (sort === 'load' && (rest[0] === 'driver' || rest[0] === 'clamp')) return { sort: rest[0], rest: rest.slice(1) };
  if (sort === 'controller' && rest[0] === 'powered' && rest.length > 1) return { sort: 'supply', rest: rest.slice(2) };
  return { sort, rest };
}

/** What stands at a path, in words: load `heartbeat`; `series` of load `heartbeat`; interlock 2; the top level. */
export function describe(path: Path): string {
  const [section, name, ...rest] = path;
  if (path.length === 0) return 'the top level';
  const sort = typeof section === 'string' && Object.hasOwn(sections, section) ? sections[section] : undefined;
  if (sort === undefined || name === undefined) return way(path);
  const entry = typeof name === 'number' ? `${sort} ${name + 1}` : `${sort} ${quote(name)}`;
  return rest.length === 0 ? entry : `${way(rest)} of ${entry}`;
}

/** The same with its preposition: in load `heartbeat`, at the top level. */
export const within = (path: Path): string => `${path.length === 0 ? 'at' : 'in'} ${describe(path)}`;

/** A path as one word, `inputs.4`; in a list the number of the entry, from 1. */
function way(path: Path): string {
  const numbered = path.findLastIndex((step) => typeof step === 'number');
  if (numbered === -1) return quote(path.join('.'));
  const row = `entry ${Number(path[numbered]) + 1} of ${quote(path.slice(0, numbered).join('.'))}`;
  return numbered === path.length - 1 ? row : `${quote(path.slice(numbered + 1).join('.'))} in ${row}`;
}

/** Names of the rows of later.ts that a place inside an entry falls under, the narrowest first. */
export function scopesOf(sort: string, type: string | undefined, rest: Path): readonly string[] {
  const steps = rest.map((step, index) =>
    typeof step === 'number' || named.has(String(rest[index - 1])) ? '*' : step,
  );
  const inside = steps.map((step) => `/${step}`).join('');
  return type === undefined ? [sort + inside] : [`${sort}:${type}${inside}`, sort + inside];
}
