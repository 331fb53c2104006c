/**
 * A page of docs/rules/ for a terminal. It reads no more of Markdown than such a page has: headings, paragraphs, tables, and
 * blocks of code, which stay as they are so that they can be copied.
 */
import { type Block, heading, mark, paragraph, table, type Tree } from './tree.js';

/** Running text and tables as a tree, code as text. */
export type PagePart = Tree | string;

/** The parts of a page, in its order. @param markdown as `tools/rules.mjs` writes it */
export const ruleParts = (markdown: string): readonly PagePart[] =>
  markdown.split(/^```(.*)$\n?/m).flatMap((text, index): PagePart[] => {
    // Text, language, code, an empty language: again and again.
    if (index % 4 === 2) return [text];
    return index % 4 === 0 && text.trim() !== ''
      ? [
          text
            .trim()
            .split(/\n{2,}/)
            .map((part) => [blockOf(part)]),
        ]
      : [];
  });

function blockOf(text: string): Block {
  const [, level, title] = /^(#+) (.*)$/s.exec(text) ?? [];
  if (title !== undefined) return heading(mark('strong', level === '#' ? plain(title) : `— ${plain(title)}`));
  if (!text.startsWith('|')) return paragraph(plain(text));
  const [head = [], , ...rows] = text.split('\n').map(cellsOf);
  return table(
    head.map((name) => ({ title: name, align: 'left' })),
    rows,
  );
}

const cellsOf = (row: string): readonly string[] =>
  row
    .split(/(?<!\\)\|/)
    .slice(1, -1)
    .map((cell) => plain(cell.trim()));

/** Without emphasis, marks of code and targets of links. */
const plain = (text: string): string =>
  text
    .replace(/\[([^\]]*)\]\([^)]*\)/g, '$1')
    .replace(/\*\*?([^*]+)\*\*?/g, '$1')
    .replaceAll('`', '')
    .replaceAll('\\|', '|');
