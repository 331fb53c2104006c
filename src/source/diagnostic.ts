import { excerptAt } from './excerpt.js';
import type { Diagnostic } from './place.js';
export type { Diagnostic } from './place.js';
import { columns, visible } from './visible.js';

/** Where the lines of a text begin, for finding line and column of an offset. */
export type LineStarts = readonly number[];

export function lineStarts(text: string): LineStarts {
  const starts = [0];
  for (let at = text.indexOf('\n'); at !== -1; at = text.indexOf('\n', at + 1)) starts.push(at + 1);
  return starts;
}

/** Line and column, both from 1, of an offset. */
export function lineAndColumn(starts: LineStarts, offset: number): { line: number; column: number } {
  let [low, high] = [0, starts.length - 1];
  while (low < high) {
    const middle = (low + high + 1) >> 1;
    if (starts[middle]! <= offset) low = middle;
    else high = middle - 1;
  }
  return { line: low + 1, column: offset - starts[low]! + 1 };
}

/** A text that diagnostics point into. */
export interface Source {
  readonly file: string;
  readonly text: string;
  readonly starts: LineStarts;
}

/** A diagnostic about `text[from..to]`, fit to be shown; the mark ends with the first line. */
export function diagnosticAt(source: Source, from: number, to: number, says: string, expected?: string): Diagnostic {
  const { line, column } = lineAndColumn(source.starts, from);
  const lineEnd = source.starts[line] ?? source.text.length + 1;
  const width = Math.max(1, Math.min(to, lineEnd - 1) - from);
  const excerpt = excerptAt(source.text, from, width);
  const advice = expected === undefined ? {} : { expected: visible(expected) };
  return { file: source.file, line, column, width, says: visible(says), ...advice, excerpt };
}

/** Order of places: by line, then by column. */
export const byPlace = (a: Diagnostic, b: Diagnostic): number => a.line - b.line || a.column - b.column;

/** Widest line that the advice may make before it moves to a line of its own. */
const widest = 100;

/**
 * A diagnostic as plain text: place and sentence, the source line, the mark with the advice beside it.
 *
 *     seedling.yaml:41:47  unknown key `seires` in load `heartbeat`
 *       41 |   heartbeat: { part: led-green-5mm, pin: D13, seires: 330 Ω }
 *          |                                               ^^^^^^ did you mean `series`?
 */
export function renderDiagnostic(diagnostic: Diagnostic): string {
  const { file, line, column, says, expected, excerpt } = diagnostic;
  const head = `${visible(file)}:${line}:${column}  ${visible(says)}`;
  if (!excerpt) return expected ? `${head}\n  ${visible(expected)}` : head;
  const number = String(line).padStart(4);
  const gutter = `${' '.repeat(number.length)} |`;
  const lines = [head, `${number} | ${excerpt.text}`.trimEnd()];
  const mark = `${gutter} ${excerpt.marker}`;
  if (!expected) lines.push(mark);
  else if (columns(mark) + 1 + columns(expected) <= widest) lines.push(`${mark} ${visible(expected)}`);
  else lines.push(mark, `${gutter} ${visible(expected)}`);
  return lines.join('\n');
}
