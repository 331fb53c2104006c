import { isAlias, isMap, isScalar, isSeq, type Node, type Pair, type Scalar } from 'yaml';
import { quote } from './visible.js';

/** Something in the tree that YAML allows and a project file does not. Offsets into the text. */
export interface Refusal {
  readonly from: number;
  readonly to: number;
  readonly says: string;
  readonly expected?: string;
}

const insteadOfAlias = 'write `like: other-load` for a load like another, or put shared figures under `parts`';

/**
 * Characters that a terminal, a page or a diff would obey instead of showing: no text of a project needs them.
 * Line ends and tabs are fine, and so are the marks that right-to-left scripts and emoji are written with.
 */
// eslint-disable-next-line no-control-regex
const obeyed =
  /[\u0000-\u0008\u000b\u000c\u000e-\u001f\u007f-\u009f\u2028-\u202e\u2066-\u2069\ufeff\ufffe\uffff]|\p{Surrogate}/u;

/**
 * Plain data of a tree: mappings without prototype, lists, text, numbers, booleans, null.
 * Whole numbers too large to be exact, and numbers that are not finite, stay text as they were written.
 * Everything refused on the way is handed to `refuse`.
 */
export function plainData(node: unknown, text: string, refuse: (refusal: Refusal) => void): unknown {
  if (isAlias(node)) {
    const [from, to] = span(node);
    refuse({
      from,
      to,
      says: `${quote('*' + node.source)} is an alias, which project files do not have`,
      expected: insteadOfAlias,
    });
    return null;
  }
  if (!isScalar(node) && !isMap(node) && !isSeq(node)) return null;
  refuseProperties(node, text, refuse);
  if (isScalar(node)) return plainScalar(node, refuse);
  if (isSeq(node)) return node.items.map((item) => plainData(item, text, refuse));

  // Without prototype a key like __proto__ is a key like any other.
  const data = Object.create(null) as Record<string, unknown>;
  const seen = new Set<string>();
  for (const pair of node.items) {
    const key = plainKey(pair, text, refuse);
    if (key === undefined) continue;
    if (seen.has(key)) {
      const [from, to] = span(pair.key);
      refuse({ from, to, says: `the key ${quote(key)} stands here a second time`, expected: 'each key once' });
      continue;
    }
    seen.add(key);
    // The merge key's value is nearly always an alias; one message is enough.
    data[key] = key === '<<' && isAlias(pair.value) ? null : plainData(pair.value, text, refuse);
  }
  return data;
}

function plainKey(pair: Pair, text: string, refuse: (refusal: Refusal) => void): string | undefined {
  const { key } = pair;
  const [from, to] = span(key ?? pair.value);
  if (isAlias(key)) {
    refuse({ from, to, says: 'an alias cannot be a key', expected: insteadOfAlias });
    return undefined;
  }
  if (!isScalar(key) || typeof key.value !== 'string' || (key.source === '' && key.type === 'PLAIN')) {
    refuse({ from, to, says: isScalar(key) ? 'a key is missing before this' : 'a list or mapping cannot be a key' });
    return undefined;
  }
  refuseProperties(key, text, refuse);
  if (obeyed.test(key.value)) refuse({ from, to, says: `the key ${quote(key.value)} holds a control character` });
  if (key.value === '<<') {
    refuse({ from, to, says: '`<<` is a merge key, which project files do not have', expected: insteadOfAlias });
    return isAlias(pair.value) ? undefined : key.value;
  }
  return key.value;
}

function plainScalar(node: Scalar, refuse: (refusal: Refusal) => void): unknown {
  const { value } = node;
  if (
    typeof value === 'number' &&
    !(Number.isSafeInteger(value) || (Number.isFinite(value) && !/^[-+]?\d+$/.test(node.source ?? '')))
  )
    return node.source ?? String(value);
  if (typeof value === 'string' && obeyed.test(value)) {
    const [from, to] = span(node);
    const code = obeyed.exec(value)![0].codePointAt(0)!.toString(16).toUpperCase().padStart(4, '0');
    refuse({ from, to, says: `this text holds a control character (U+${code})`, expected: 'leave it out' });
  }
  return value;
}

function refuseProperties(node: Node, text: string, refuse: (refusal: Refusal) => void): void {
  const [start] = span(node);
  const anchor = 'anchor' in node ? node.anchor : undefined;
  if (typeof anchor === 'string') {
    const from = Math.max(0, text.lastIndexOf(`&${anchor}`, start));
    refuse({
      from,
      to: from + anchor.length + 1,
      says: `${quote('&' + anchor)} is an anchor, which project files do not have`,
      expected: insteadOfAlias,
    });
  }
  if (node.tag !== undefined) {
    const last = Math.max(0, text.lastIndexOf('!', start));
    const from = text[last - 1] === '!' ? last - 1 : last;
    const tag = /^![^\s,[\]{}]*/.exec(text.slice(from, from + 100))?.[0] ?? '!';
    refuse({
      from,
      to: from + tag.length,
      says: `${quote(tag)} is a tag, which project files do not have`,
      expected: 'leave it out',
    });
  }
}

/** Where a node stands in the text, without what follows it. */
export function span(node: unknown): readonly [from: number, to: number] {
  const range = (node as Node | null | undefined)?.range;
  return range ? [range[0], Math.max(range[1], range[0])] : [0, 0];
}
