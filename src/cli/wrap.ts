/** Breaking a marked text into lines of a given width. */
import { neutral } from '../reports/neutral.js';
import type { Mark, Text } from '../reports/tree.js';
import { columns } from '../source/visible.js';

/** The stretches of one line, each in its role. */
export type Line = readonly Mark[];

/**
 * A text as a list of marks, harmless (see neutral). This is the only way from a tree to the terminal, so whatever a
 * report echoes from a project file has passed here.
 */
export const marks = (text: Text): Line =>
  (Array.isArray(text) ? (text as readonly (string | Mark)[]) : [text as string | Mark])
    .map((part) => (typeof part === 'string' ? { text: part } : part))
    .map((part) => ({ ...part, text: neutral(part.text) }))
    .filter((part) => part.text !== '');

export const textOf = (line: Line): string => line.map(({ text }) => text).join('');

/** A number and its unit are not torn apart: the space between them does not count as a place to break. */
const numberAndUnit =
  /(?<=[0-9.]) (?=(?:[pnµmkMG]?[VAWΩFHCsJ]|[mk]?Hz|[MG]Hz|K\/W|K|°C|%|Wh|mAh|Ah|h|min)(?![\p{L}\p{N}]))/gu;

/** The lines of `text`, none wider than `width` columns; a word that is wider than a line is cut. Never empty. */
export function wrap(text: Text, width: number): readonly Line[] {
  const line = marks(text);
  return breaks(textOf(line), Math.max(1, width)).map(([from, to]) => cut(line, from, to));
}

/** Where the lines of a plain text begin and end. */
function breaks(text: string, width: number): readonly (readonly [number, number])[] {
  const tied = text.replace(numberAndUnit, '\u00A0');
  const lines: [number, number][] = [];
  let open: [number, number] | undefined;
  for (const { 0: word, index } of tied.matchAll(/[^ ]+/g)) {
    const end = index + word.length;
    if (open && columns(tied.slice(open[0], end)) <= width) {
      open[1] = end;
      continue;
    }
    const pieces = chop(word, width).map(([from, to]): [number, number] => [index + from, index + to]);
    open = pieces.at(-1);
    lines.push(...pieces);
  }
  return lines.length > 0 ? lines : [[0, 0]];
}

/** A word in pieces of at most `width` columns. */
function chop(word: string, width: number): readonly (readonly [number, number])[] {
  const pieces: [number, number][] = [];
  let [from, at, taken] = [0, 0, 0];
  for (const character of word) {
    const more = columns(character);
    if (taken + more > width && at > from) {
      pieces.push([from, at]);
      [from, taken] = [at, 0];
    }
    taken += more;
    at += character.length;
  }
  return [...pieces, [from, at]];
}

/** The part of a line between two offsets, roles kept. */
function cut(line: Line, from: number, to: number): Line {
  let start = 0;
  return line.flatMap((part) => {
    const text = part.text.slice(Math.max(0, from - start), Math.max(0, to - start));
    start += part.text.length;
    return text === '' ? [] : [{ ...part, text }];
  });
}
