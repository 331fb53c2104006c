/** A table of a tree as Markdown: the same cells as in the terminal, without their roles. */
import { inline } from './markdown-text.js';
import type { Block, Text } from './tree.js';

const plain = (text: Text): string => {
  if (typeof text === 'string') return text;
  return 'text' in text ? text.text : text.map(plain).join('');
};

/** @param blocks a section of a tree, of which the tables are taken; nothing where there is none */
export function markdownTables(title: string, blocks: readonly Block[]): string {
  const tables = blocks.flatMap((block) => (block.block === 'table' ? [block] : []));
  if (tables.length === 0) return '';
  const line = (cells: readonly string[]): string => `| ${cells.join(' | ')} |`;
  return [
    `### ${title}`,
    ...tables.map(({ columns, rows }) =>
      [
        line(columns.map((c) => inline(c.title))),
        line(columns.map((c) => (c.align === 'right' ? '---:' : '---'))),
        ...rows.map((row) => line(row.map((cell) => inline(plain(cell))))),
      ].join('\n'),
    ),
  ].join('\n\n');
}
