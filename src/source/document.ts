import { isMap, isScalar, isSeq, type Pair, type YAMLMap } from 'yaml';
export type { Diagnostic, Extent, Path, Problem } from './place.js';
import { diagnosticAt, lineAndColumn, type Source } from './diagnostic.js';
import type { Diagnostic, Extent, Path, Problem } from './place.js';
import { span } from './tree.js';

/** A file that was read: its data, and where each piece of it stands. */
export interface Document {
  readonly file: string;
  readonly text: string;
  /** Plain values; mappings have no prototype. Hold it against `checkFrame` before use. */
  readonly data: unknown;
  /**
   * Where a key with its value stands, or a value alone; for a path that the file does not have, the key of the nearest one
   * above it that it has.
   */
  place(path: Path, on?: 'key' | 'value'): Extent;
  /** The stretch of text of a key or value, as offsets, or undefined when the file does not have it. For edits. */
  span(path: Path, on?: 'key' | 'value'): readonly [from: number, to: number] | undefined;
  /** A plain value as its author wrote it (`0x1F`, `1e3`), or undefined where there is none. */
  source(path: Path): string | undefined;
  /** A problem with its place, line and mark. */
  diagnostic(problem: Problem): Diagnostic;
}

/** What a path leads to: a pair of a mapping (with its key), or a node of a list. */
interface Found {
  readonly key?: unknown;
  readonly value: unknown;
}

/** A document over a parsed tree. */
export function documentOf(source: Source, root: unknown, data: unknown): Document {
  const pairs = new WeakMap<YAMLMap, Map<string, Pair>>();
  const pairsOf = (map: YAMLMap): Map<string, Pair> => {
    let known = pairs.get(map);
    if (!known) {
      known = new Map();
      // The first of two equal keys counts, as in the data.
      for (const pair of map.items)
        if (isScalar(pair.key) && !known.has(String(pair.key.value))) known.set(String(pair.key.value), pair);
      pairs.set(map, known);
    }
    return known;
  };
  const step = (node: unknown, key: string | number): Found | undefined => {
    if (isMap(node)) {
      const pair = pairsOf(node).get(String(key));
      return pair && { key: pair.key, value: pair.value };
    }
    const item = isSeq(node) && Number.isInteger(Number(key)) ? node.items[Number(key)] : undefined;
    return item === undefined ? undefined : { value: item };
  };
  /** The end of the path, or the last step that exists. */
  const follow = (path: Path): { found: Found; whole: boolean } => {
    let found: Found = { value: root };
    for (const key of path) {
      const next = step(found.value, key);
      if (!next) return { found, whole: false };
      found = next;
    }
    return { found, whole: true };
  };
  const spanOf = (found: Found, on: 'key' | 'value') => {
    const node = on === 'key' || isEmpty(found.value) ? (found.key ?? found.value) : found.value;
    return span(node);
  };
  const placed = (path: Path, on: 'key' | 'value') => {
    const { found, whole } = follow(path);
    return spanOf(found, whole ? on : 'key');
  };

  /** What is there ends with its value, what is not with the key above it, and without a key with the first line. */
  const endOf = (found: Found, whole: boolean, to: number): number => {
    if (!whole) return found.key === undefined ? textEnd(source.text, source.starts[1] ?? source.text.length) : to;
    // A block goes on over blank lines and comments to whatever comes next: it ends where its text does.
    return isEmpty(found.value) ? to : Math.max(to, textEnd(source.text, span(found.value)[1]));
  };

  return {
    file: source.file,
    text: source.text,
    data,
    place(path, on = 'key') {
      const { found, whole } = follow(path);
      const [from, to] = spanOf(found, whole ? on : 'key');
      const { line: endLine, column: endColumn } = lineAndColumn(source.starts, endOf(found, whole, to));
      return { file: source.file, ...lineAndColumn(source.starts, from), endLine, endColumn };
    },
    span(path, on = 'value') {
      const { found, whole } = follow(path);
      return whole ? spanOf(found, on) : undefined;
    },
    source(path) {
      const { found, whole } = follow(path);
      return whole && isScalar(found.value) ? (found.value.source ?? undefined) : undefined;
    },
    diagnostic({ path, on, says, expected }) {
      const [from, to] = placed(path, on);
      return diagnosticAt(source, from, to, says, expected);
    },
  };
}

/** Where the text before an offset ends, white space left out. */
function textEnd(text: string, offset: number): number {
  let end = offset;
  while (end > 0 && /\s/.test(text[end - 1]!)) end--;
  return end;
}

/** A value that the text leaves out: nothing is there to put a mark under. */
const isEmpty = (node: unknown): boolean =>
  node === null || node === undefined || (isScalar(node) && node.source === '' && node.type === 'PLAIN');
