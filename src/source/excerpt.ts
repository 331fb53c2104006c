import { columns, visible } from './visible.js';

/** Characters of the line that are shown; more are cut off at both sides of the mark. */
const windowSize = 100;
/** How much of a long line stands before the mark. */
const before = 50;

/**
 * The line of `text` at `offset` with a mark under `width` characters of it.
 * A long line is cut to a window round the mark; what a terminal would obey is made visible; a tab becomes a space.
 */
export function excerptAt(text: string, offset: number, width: number): { text: string; marker: string } {
  const start = text.lastIndexOf('\n', offset - 1) + 1;
  // Never search a line of a million letters for its end: two windows are enough to know.
  const near = text.slice(offset, offset + windowSize);
  const endInNear = near.search(/\r?\n|\r$/);
  const end = offset + (endInNear === -1 ? near.length : endInNear);
  const goesOn = endInNear === -1 && end < text.length;
  // A line that fits is shown whole; of a longer one as much before the mark as the rest leaves room for.
  const from =
    end - start <= windowSize && !goesOn ? start : Math.max(start, Math.min(offset - before, end - windowSize));
  const to = Math.min(end, from + windowSize);
  const shown = text.slice(from, to);
  const [left, right] = [from > start ? '…' : '', to < end || goesOn ? '…' : ''];
  const mark = offset - from;
  const marked = shown.slice(mark, mark + width);
  return {
    text: left + plain(shown) + right,
    marker: ' '.repeat(columns(left + plain(shown.slice(0, mark)))) + '^'.repeat(Math.max(1, columns(plain(marked)))),
  };
}

const plain = (text: string): string => visible(text.replaceAll('\t', ' '));
