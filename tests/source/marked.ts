import type { Diagnostic } from '../../src/source/place.js';

/** A diagnostic in one line for tables: place, the text that is marked, what is said. */
export function marked({ line, column, excerpt, says }: Diagnostic): string {
  const from = excerpt?.marker.indexOf('^') ?? 0;
  const under = excerpt ? [...excerpt.text].slice(from, excerpt.marker.length).join('') : '';
  return `${line}:${column} [${under}] ${says}`;
}
