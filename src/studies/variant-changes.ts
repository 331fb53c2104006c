/**
 * The `variants` of a file: named sets of changes, each a dotted path and the value it gets there. A path has to lead somewhere:
 * an entry that the file does not have is a slip of the pen, unless the variant sets the whole of it.
 */
import { isMapping } from '../loads/figures.js';
import { withChanges } from '../remedies/change.js';
import type { Change } from '../remedies/prove.js';
import { didYouMean } from '../source/did-you-mean.js';
import type { Path, Problem } from '../source/place.js';
import { quote, quoteList } from '../source/visible.js';

/** A change, and where the file says so. */
export interface VariantChange extends Change {
  readonly at: Path;
}

export interface Variant {
  readonly name: string;
  readonly path: Path;
  readonly note?: string;
  /** Whole entries before what is inside them. */
  readonly changes: readonly VariantChange[];
}

/** Sections whose entries have names, with what one of them is called. */
const ENTRIES: Readonly<Record<string, string>> = {
  places: 'place',
  parts: 'part',
  supplies: 'supply',
  controllers: 'controller',
  expanders: 'expander',
  arrays: 'array',
  loads: 'load',
  incoming: 'incoming voltage',
  modes: 'mode',
};

/** Keys that a path has at most; a project needs about eight. */
const DEEPEST = 20;
/** What is no part of the project that a variant could change. */
const FIXED = new Set(['ampledger', 'variants', 'catalogue']);

/** The variants of checked data, and every path of theirs that leads nowhere. */
export function variantsOf(data: unknown): {
  readonly variants: readonly Variant[];
  readonly problems: readonly Problem[];
} {
  const problems: Problem[] = [];
  const stated = isMapping(data) && isMapping(data['variants']) ? Object.entries(data['variants']) : [];
  const variants = stated.flatMap(([name, entry]): Variant[] => {
    if (!isMapping(entry)) return [];
    const path: Path = ['variants', name];
    const { note } = entry;
    const written = Object.entries(entry)
      .filter(([key]) => key !== 'note')
      // What is set whole comes before what is set inside it.
      .sort(([a], [b]) => dots(a) - dots(b));
    let changed = data;
    const changes = written.flatMap(([key, value]): VariantChange[] => {
      const at = [...path, key];
      const led = lead(changed, key, value);
      if ('says' in led) {
        problems.push({ path: at, on: 'key', ...led });
        return [];
      }
      const change = { path: led.path, value: value ?? undefined, at };
      changed = withChanges(changed, [change]);
      return [change];
    });
    return [{ name, path, ...(typeof note === 'string' && { note }), changes }];
  });
  return { variants, problems };
}

const dots = (key: string): number => key.split('.').length;

interface Lost {
  readonly says: string;
  readonly expected: string;
}

/** Follows a dotted path through the data. */
function lead(data: unknown, dotted: string, value: unknown): { readonly path: Path } | Lost {
  const words = dotted.split('.');
  if (words.length > DEEPEST || words.some((word) => word.trim() === ''))
    return { says: `${quote(dotted)} is no path`, expected: 'keys joined by dots, as in `loads.pump.supply`' };
  if (FIXED.has(words[0]!))
    return {
      says: `a variant cannot change ${quote(words[0]!)}`,
      expected: 'it changes the project: its supplies, loads, modes',
    };
  const path: (string | number)[] = [];
  let here: unknown = data;
  for (let k = 0; k < words.length;) {
    const last = (taken: number): boolean => k + taken === words.length;
    if (Array.isArray(here)) {
      const word = words[k]!;
      const index = /^\d+$/.test(word) ? Number(word) : -1;
      if (index < 0 || index >= here.length) return noItem(words.slice(0, k), word, here.length);
      if (value === null && last(1))
        return {
          says: `an entry of a list cannot be taken out by itself`,
          expected: `set the whole of ${quote(words.slice(0, k).join('.'))}`,
        };
      path.push(index);
      here = here[index];
      k += 1;
      continue;
    }
    if (here !== undefined && !isMapping(here))
      return {
        says: `${quote(words.slice(0, k).join('.'))} holds a plain value, with no ${quote(words[k]!)} inside`,
        expected: `set the whole of it, as a mapping`,
      };
    // A pin may be called `P0.15`: of two ways to read the dots, the longer key that is there.
    const taken = longestKey(here, words.slice(k));
    const key = words.slice(k, k + Math.max(taken, 1)).join('.');
    const isThere = taken > 0;
    const sort = k === 1 ? ENTRIES[words[0]!] : undefined;
    if (!isThere && value === null) return nothingThere(words.slice(0, k), key, here);
    if (!isThere && sort !== undefined && !last(1)) return noEntry(sort, key, here);
    path.push(key);
    here = isThere ? (here as Readonly<Record<string, unknown>>)[key] : undefined;
    k += Math.max(taken, 1);
  }
  return { path };
}

/** How many of the words make the longest key that a mapping has; 0 when it has none of them. */
function longestKey(here: unknown, words: readonly string[]): number {
  if (!isMapping(here)) return 0;
  for (let taken = words.length; taken > 0; taken--)
    if (Object.hasOwn(here, words.slice(0, taken).join('.'))) return taken;
  return 0;
}

/** The names of a mapping's keys. */
const keysOf = (here: unknown): readonly string[] => (isMapping(here) ? Object.keys(here) : []);

const noEntry = (sort: string, name: string, here: unknown): Lost => ({
  says: `there is no ${sort} ${quote(name)}`,
  expected: didYouMean(name, keysOf(here), `a new one is set as a whole`),
});

const nothingThere = (before: readonly string[], key: string, here: unknown): Lost => ({
  says: `there is no ${quote(key)}${before.length === 0 ? '' : ` in ${quote(before.join('.'))}`} to take out`,
  expected: didYouMean(
    key,
    keysOf(here),
    keysOf(here).length === 0 ? 'null takes out what the file has' : `it has ${quoteList(keysOf(here).slice(0, 8))}`,
  ),
});

const noItem = (before: readonly string[], word: string, length: number): Lost => ({
  says: `${quote(before.join('.'))} is a list, and ${quote(word)} is none of its entries`,
  expected: length === 0 ? 'it is empty: set the whole of it' : `they are numbered from 0 to ${length - 1}`,
});
