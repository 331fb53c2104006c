/** A tree laid out for a terminal. Loaded only where one is printed: chalk and cli-table3 cost as much as an audit. */
import { Chalk, type ChalkInstance, supportsColor } from 'chalk';
import type { Block, Heading, List, Role, Text, Tree } from '../reports/tree.js';
import { tableLines } from './print-table.js';
import { columns } from '../source/visible.js';
import { type Line, textOf, wrap } from './wrap.js';

export interface Page {
  /** Columns; no line is wider. */
  readonly width: number;
  readonly colour: boolean;
}

/** Text in a role's look. */
export type Paint = (line: Line) => string;

const looks = (chalk: ChalkInstance): { readonly [role in Role]: ChalkInstance } => ({
  breach: chalk.red.bold,
  strain: chalk.yellow.bold,
  unproven: chalk.magenta.bold,
  thin: chalk.cyan.bold,
  note: chalk.blue,
  sound: chalk.green.bold,
  strong: chalk.bold,
  quiet: chalk.dim,
});

function painter(colour: boolean): Paint {
  const look = looks(new Chalk({ level: colour ? (supportsColor ? supportsColor.level : 1) : 0 }));
  return (line) => line.map(({ text, role }) => (role ? look[role](text) : text)).join('');
}

/** The tree as text, ending in a line end. */
export function print(tree: Tree, { width, colour }: Page): string {
  const paint = painter(colour);
  const sections = tree.map((blocks) => blocks.flatMap((block) => blockLines(block, width, paint)));
  const lines = sections.flatMap((section, index) => (index === 0 ? section : ['', ...section]));
  return lines.map((line) => line.trimEnd() + '\n').join('');
}

const painted = (text: Text, width: number, paint: Paint): readonly string[] => wrap(text, width).map(paint);

function blockLines(block: Block, width: number, paint: Paint): readonly string[] {
  switch (block.block) {
    case 'heading':
      return headingLines(block, width, paint);
    case 'paragraph':
      return painted(block.text, width, paint);
    case 'table':
      return tableLines(block, width, paint);
    case 'list':
      return listLines(block, width, paint);
  }
}

/** Left and right on one line where they fit, else one under the other, each at its edge. */
function headingLines({ left, right }: Heading, width: number, paint: Paint): readonly string[] {
  const starts = wrap(left, width);
  const ends = wrap(right, width);
  const [start = [], end = []] = [starts[0], ends[0]];
  const room = width - columns(textOf(start)) - columns(textOf(end));
  if (starts.length === 1 && ends.length === 1 && room >= 2) return [paint(start) + ' '.repeat(room) + paint(end)];
  const atRight = ends.map((line) => ' '.repeat(width - columns(textOf(line))) + paint(line));
  return [...(textOf(start) === '' ? [] : starts.map(paint)), ...(textOf(end) === '' ? [] : atRight)];
}

/** Marks in a margin as wide as the widest of them, what belongs to each beside it; words stand off a little more. */
function listLines({ items, marks, loose, margin: least }: List, width: number, paint: Paint): readonly string[] {
  const heads = items.map(({ mark }) => wrap(mark, width)[0] ?? []);
  const margin = Math.max(least, ...heads.map((head) => columns(textOf(head))));
  const gap = heads.some((head) => /[\p{L}\p{N}]$/u.test(textOf(head))) ? 2 : 1;
  return items.flatMap(({ blocks }, index) => {
    const head = heads[index] ?? [];
    const blank = ' '.repeat(margin - columns(textOf(head)));
    const first = (marks === 'right' ? blank + paint(head) : paint(head) + blank) + ' '.repeat(gap);
    const lines = blocks.flatMap((block) => blockLines(block, Math.max(1, width - margin - gap), paint));
    const hung = (lines.length > 0 ? lines : ['']).map(
      (line, at) => (at === 0 ? first : ' '.repeat(margin + gap)) + line,
    );
    return loose && index > 0 ? ['', ...hung] : hung;
  });
}
