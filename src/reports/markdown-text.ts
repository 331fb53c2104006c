/** Text of strangers in Markdown: it shows as it is, and is neither markup nor a link, a mention or a formula. */
import { neutral } from './neutral.js';

/** Breaks a word that a hosting site would make something of, without being seen. */
const BREAK = '&#8203;';

/** Running text, fit for a paragraph, an item of a list or a cell of a table. */
export const inline = (text: string): string =>
  markup(neutral(text).replace(/[\\`*_[\]|~]/g, '\\$&'))
    .replace(/\$/g, '<span>$</span>')
    // At the start of a line it could be a heading, a rule, an item.
    .replace(/^[-+#=]/, '\\$&')
    .replace(/^(\d+)([.)])(?=\s|$)/, '$1\\$2');

/** Text between tags of HTML, where Markdown is not read. */
export const html = (text: string): string => markup(neutral(text));

const markup = (text: string): string =>
  text
    .trim()
    .replace(/&/g, '&amp;')
    .replace(/</g, '&lt;')
    .replace(/>/g, '&gt;')
    // Addresses, mentions, numbers of issues and pictures between colons.
    .replace(/:(?=\/\/)|:(?=[\w+-]+:)|@|#(?=\d)|www(?=\.)|(?:mailto|xmpp):/gi, `$&${BREAK}`);

/** A name as code. */
export const code = (text: string): string => '`' + (neutral(text).replaceAll('`', "'").trim() || ' ') + '`';

/** The same in a cell of a table, where a bar would end the cell. */
export const cellCode = (text: string): string => code(text).replaceAll('|', '\\|');

/** Something that opens when it is asked for. @param summary text, @param content Markdown that is harmless already */
export const folded = (summary: string, content: readonly string[]): string =>
  `<details><summary>${html(summary)}</summary>\n\n${content.join('\n')}\n\n</details>`;
