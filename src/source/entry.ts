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
