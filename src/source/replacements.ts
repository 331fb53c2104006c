/** What stands between two versions of a text, as stretches of the former that are replaced: no more than differs. */
import { lineStarts } from './diagnostic.js';

/** `text[from..to]` of the former version becomes `by`. */
export interface Replacement {
  readonly from: number;
  readonly to: number;
  readonly by: string;
}

/** Pairs of lines that are compared at the most; a change beyond that is one stretch. */
const MOST_PAIRS = 1_000_000;

/** In the order of the text, none touching the next. */
export function replacements(before: string, after: string): readonly Replacement[] {
  const [was, is] = [linesOf(before), linesOf(after)];
  let [start, wasEnd, isEnd] = [0, was.length, is.length];
  while (start < wasEnd && start < isEnd && was[start] === is[start]) start++;
  while (wasEnd > start && isEnd > start && was[wasEnd - 1] === is[isEnd - 1])
    [wasEnd, isEnd] = [wasEnd - 1, isEnd - 1];
  const kept = commonLines(was.slice(start, wasEnd), is.slice(start, isEnd));
  const found: Replacement[] = [];
  let [w, i, offset] = [start, start, was.slice(0, start).join('').length];
  for (const [nextWas, nextIs] of [
    ...kept.map(([a, b]) => [a + start, b + start] as const),
    [wasEnd, isEnd] as const,
  ]) {
    const [old, fresh] = [was.slice(w, nextWas).join(''), is.slice(i, nextIs).join('')];
    if (old !== fresh) found.push(trimmed(old, fresh, offset));
    offset += old.length + (was[nextWas]?.length ?? 0);
    [w, i] = [nextWas + 1, nextIs + 1];
  }
  return found;
}

/** With their ends. */
function linesOf(text: string): readonly string[] {
  const starts = lineStarts(text);
  return starts.map((from, k) => text.slice(from, starts[k + 1] ?? text.length));
}

/** The longest row of lines that both have in the same order, as pairs of indices. */
function commonLines(was: readonly string[], is: readonly string[]): readonly (readonly [number, number])[] {
  if (was.length * is.length > MOST_PAIRS) return [];
  // Of the lines from w and from i on, how many are common.
  const most = Array.from({ length: was.length + 1 }, () => new Uint32Array(is.length + 1));
  for (let w = was.length - 1; w >= 0; w--)
    for (let i = is.length - 1; i >= 0; i--)
      most[w]![i] = was[w] === is[i] ? most[w + 1]![i + 1]! + 1 : Math.max(most[w + 1]![i]!, most[w]![i + 1]!);
  const pairs: [number, number][] = [];
  for (let [w, i] = [0, 0]; w < was.length && i < is.length;) {
    if (was[w] === is[i]) pairs.push([w++, i++]);
    else if (most[w + 1]![i]! >= most[w]![i + 1]!) w++;
    else i++;
  }
  return pairs;
}

/** Without what is the same at either end; never half of a pair of surrogates or of a line end. */
function trimmed(old: string, fresh: string, offset: number): Replacement {
  const least = Math.min(old.length, fresh.length);
  let head = 0;
  while (head < least && old[head] === fresh[head]) head++;
  let tail = 0;
  while (tail < least - head && old[old.length - 1 - tail] === fresh[fresh.length - 1 - tail]) tail++;
  while (head > 0 && /[\uD800-\uDBFF\r]/.test(old[head - 1]!)) head--;
  while (tail > 0 && /[\uDC00-\uDFFF\n]/.test(old[old.length - tail]!)) tail--;
  return {
    from: offset + head,
    to: offset + old.length - tail,
    by: fresh.slice(head, fresh.length - tail),
  };
}
