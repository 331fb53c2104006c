/** A table laid out with cli-table3: no frame, a rule under the heads. */
import Table from 'cli-table3';
import type { Column, Table as TableBlock, Text } from '../reports/tree.js';
import type { Paint } from './print.js';
import { columns as columnsOf } from '../source/visible.js';
import { marks, textOf, wrap } from './wrap.js';

const gap = 2;
/** A column is not made narrower than this for the sake of the page. */
const narrowest = 4;
/** Words give way to figures, which wrap badly, until their column is this narrow. */
const narrowestWords = 12;

const frameless = {
  top: '',
  'top-mid': '',
  'top-left': '',
  'top-right': '',
  bottom: '',
  'bottom-mid': '',
  'bottom-left': '',
  'bottom-right': '',
  left: '',
  'left-mid': '',
  right: '',
  'right-mid': '',
  mid: '─',
  'mid-mid': ' '.repeat(gap),
  middle: ' '.repeat(gap),
};

/** The lines of a table, none wider than `width`: spare columns go first, then the widest column wraps. */
export function tableLines({ columns, rows }: TableBlock, width: number, paint: Paint): readonly string[] {
  const natural = columns.map((column, at) =>
    Math.max(...[column.title, ...rows.map((row) => row[at] ?? '')].map((cell) => columnsOf(textOf(marks(cell))))),
  );
  const kept = fitting(columns, natural, width);
  const widths = shrunk(
    kept.map((at) => natural[at] ?? 0),
    kept.map((at) => columns[at]?.align === 'left'),
    width,
  );
  const cell = (text: Text, at: number): string =>
    wrap(text, widths[at] ?? 1)
      .map(paint)
      .join('\n');
  const table = new Table({
    head: kept.map((column, at) => cell({ text: columns[column]?.title ?? '', role: 'quiet' }, at)),
    colWidths: [...widths],
    colAligns: kept.map((at) => columns[at]?.align ?? 'left'),
    chars: frameless,
    style: { head: [], border: [], compact: true, 'padding-left': 0, 'padding-right': 0 },
  });
  for (const row of rows) table.push(kept.map((column, at) => cell(row[column] ?? '', at)));
  return table.toString().split('\n');
}

const total = (widths: readonly number[]): number =>
  widths.reduce((sum, width) => sum + width, 0) + gap * Math.max(0, widths.length - 1);

/** The columns to show, by position: spare ones are dropped, the last first, until the rest fits. */
function fitting(columns: readonly Column[], natural: readonly number[], width: number): readonly number[] {
  const kept = columns.map((_, at) => at);
  while (total(kept.map((at) => natural[at] ?? 0)) > width) {
    const spare = kept.findLastIndex((at) => columns[at]?.spare);
    if (spare < 0) break;
    kept.splice(spare, 1);
  }
  return kept;
}

/** Widths that fit, taken column by column from whichever is the widest: words first. */
function shrunk(natural: readonly number[], isWords: readonly boolean[], width: number): readonly number[] {
  const widths = natural.map((each) => Math.max(1, each));
  for (let over = total(widths) - width; over > 0; over -= 1) {
    const words = widths.map((each, at) => (isWords[at] && each > narrowestWords ? each : 0));
    const widest = words.some((each) => each > 0)
      ? words.indexOf(Math.max(...words))
      : widths.indexOf(Math.max(...widths));
    if ((widths[widest] ?? 0) <= narrowest) break;
    widths[widest] = (widths[widest] ?? 0) - 1;
  }
  return widths;
}
