/**
 * Changes written into a project's text: each is spliced in where the tree says, so that everything else stays byte for byte,
 * comments and spellings too. Printing the tree anew would lose both.
 */
import { isMap, isScalar, isSeq, parse, parseDocument, type Pair, type YAMLMap } from 'yaml';
import type { Path } from './place.js';
import { span } from './tree.js';

/** The value at a path, or undefined to take its key away. */
export interface TextChange {
  readonly path: Path;
  readonly value: unknown;
}

/** A text with changes made, one after the other. @param text of a document that was read without errors */
export const editedText = (text: string, changes: readonly TextChange[]): string => changes.reduce(edited, text);

function edited(text: string, { path, value }: TextChange): string {
  const root = parseDocument(text, { version: '1.2', schema: 'core', stringKeys: true, uniqueKeys: false }).contents;
  let node: unknown = root;
  for (const [depth, key] of path.entries()) {
    const last = depth === path.length - 1;
    if (isSeq(node)) {
      const item: unknown = node.items[Number(key)];
      if (item === undefined) return text;
      if (last) return splice(text, span(item), rendered(value));
      node = item;
      continue;
    }
    if (!isMap(node)) return text;
    const pair = node.items.find((p) => isScalar(p.key) && String(p.key.value) === String(key));
    if (pair === undefined)
      return value === undefined ? text : added(text, node, String(key), nested(path.slice(depth + 1), value), depth);
    if (last) return value === undefined ? removed(text, node, pair) : replaced(text, pair, value);
    // A key with nothing behind it, or with a plain value, cannot hold what is to come: its value is written anew.
    if (!isMap(pair.value) && !isSeq(pair.value))
      return value === undefined ? text : replaced(text, pair, nested(path.slice(depth + 1), value));
    node = pair.value;
  }
  return text;
}

/** A value behind the keys that are still missing. */
const nested = (path: Path, value: unknown): unknown =>
  path.reduceRight<unknown>((inner, key) => ({ [String(key)]: inner }), value);

const splice = (text: string, [from, to]: readonly [number, number], by: string): string =>
  text.slice(0, from) + by + text.slice(to);

/** Where the next line begins. */
function nextLine(text: string, at: number): number {
  const end = text.indexOf('\n', at);
  return end === -1 ? text.length : end + 1;
}

const lineStart = (text: string, at: number): number => text.lastIndexOf('\n', at - 1) + 1;

/** What a pair's value ends at; a key without a value ends at its colon. */
function endOf(text: string, pair: Pair): number {
  const [, end] = span(pair.value);
  const [, key] = span(pair.key);
  // A block ends behind its last line's content, whatever blank lines and comments follow.
  return end > key ? text.slice(0, end).trimEnd().length : text.indexOf(':', key) + 1;
}

function replaced(text: string, pair: Pair, value: unknown): string {
  const [, key] = span(pair.key);
  const colon = text.indexOf(':', key) + 1;
  const [from, to] = span(pair.value);
  const inline = to > from && !text.slice(colon, from).includes('\n');
  return inline
    ? splice(text, [from, to], rendered(value))
    : splice(text, [colon, endOf(text, pair)], ` ${rendered(value)}`);
}

function removed(text: string, map: YAMLMap, pair: Pair): string {
  const at = map.items.indexOf(pair);
  const [before, after] = [map.items[at - 1], map.items[at + 1]];
  const [from] = span(pair.key);
  if (!before && !after) return splice(text, map.flow ? span(map) : [from, endOf(text, pair)], '{}');
  if (map.flow) {
    if (after) return splice(text, [from, span(after.key)[0]], '');
    return splice(text, [endOf(text, before!), endOf(text, pair)], '');
  }
  return splice(text, [lineStart(text, from), nextLine(text, endOf(text, pair))], '');
}

function added(text: string, map: YAMLMap, key: string, value: unknown, depth: number): string {
  const name = rendered(key);
  const last = map.items.at(-1);
  const [from, to] = span(map);
  if (map.flow) {
    if (last === undefined) return splice(text, [from, to], `{ ${name}: ${rendered(value)} }`);
    const end = endOf(text, last);
    const comma = /^\s*,/.exec(text.slice(end, to));
    const at = end + (comma?.[0].length ?? 0);
    return splice(text, [at, at], `${comma ? '' : ','} ${name}: ${rendered(value)}`);
  }
  const eol = text.includes('\r\n') ? '\r\n' : '\n';
  const indent = text.slice(lineStart(text, span(map.items[0]!.key)[0]), span(map.items[0]!.key)[0]);
  const end = nextLine(text, endOf(text, last!));
  const lead = text[end - 1] === '\n' ? '' : eol;
  // A section of its own is written line by line, as people do.
  const lines =
    depth === 0 && isPlainMap(value)
      ? [`${name}:`, ...Object.entries(value).map(([k, v]) => `  ${rendered(k)}: ${rendered(v)}`)]
      : [`${indent}${name}: ${rendered(value)}`];
  return splice(text, [end, end], lead + lines.map((line) => line + eol).join(''));
}

const isPlainMap = (value: unknown): value is Readonly<Record<string, unknown>> =>
  typeof value === 'object' && value !== null && !Array.isArray(value) && Object.keys(value).length > 0;

/** A value on one line, as it may stand inside brackets. */
export function rendered(value: unknown): string {
  if (Array.isArray(value)) return `[${value.map(rendered).join(', ')}]`;
  if (typeof value === 'object' && value !== null) {
    const pairs = Object.entries(value).filter(([, v]) => v !== undefined);
    return pairs.length === 0 ? '{}' : `{ ${pairs.map(([k, v]) => `${rendered(k)}: ${rendered(v)}`).join(', ')} }`;
  }
  if (typeof value !== 'string') return String(value);
  return isPlain(value) ? value : JSON.stringify(value);
}

/** Whether a text may stand without quotes anywhere, and is read as the same text. */
function isPlain(text: string): boolean {
  if (!/^[\p{L}\p{N}][^\n\r\t#,[\]{}:&*!|>'"%@`]*(?: %|%)?$/u.test(text) || text.trim() !== text) return false;
  try {
    return parse(`[${text}]`, { version: '1.2', schema: 'core' })[0] === text;
  } catch {
    return false;
  }
}
