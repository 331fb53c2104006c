/**
 * A text for people, before it has a width or a colour: sections of blocks, whose parts may be marked with a role.
 * A view builds it, a printer lays it out; neither knows the other.
 */
import type { Verdict } from './report.js';

/** What a stretch of text is, so that a printer can choose how it looks. */
export type Role = Verdict | 'strong' | 'quiet';

export interface Mark {
  readonly text: string;
  readonly role?: Role;
}

export type Text = string | Mark | readonly (string | Mark)[];

/** One line: something at the left edge, something at the right. */
export interface Heading {
  readonly block: 'heading';
  readonly left: Text;
  readonly right: Text;
}

export interface Paragraph {
  readonly block: 'paragraph';
  readonly text: Text;
}

export interface Column {
  readonly title: string;
  readonly align: 'left' | 'right';
  /** The first to go when the page is too narrow for the whole table. */
  readonly spare?: true;
}

export interface Table {
  readonly block: 'table';
  readonly columns: readonly Column[];
  readonly rows: readonly (readonly Text[])[];
}

export interface Item {
  /** What hangs in the margin: a number, a bullet, a word. */
  readonly mark: Text;
  readonly blocks: readonly Block[];
}

export interface List {
  readonly block: 'list';
  readonly items: readonly Item[];
  /** Marks stand against the text they belong to, so that equals signs line up. */
  readonly marks: 'left' | 'right';
  /** A blank line between items. */
  readonly loose: boolean;
  /** Columns that the margin has at least, so that lists under each other line up. */
  readonly margin: number;
}

export type Block = Heading | Paragraph | Table | List;

/** Sections, each set off from the next by a blank line. */
export type Tree = readonly (readonly Block[])[];

/** `text` in a role. */
export const mark = (role: Role, text: string): Mark => ({ text, role });

/** A line with `left` at the left edge and `right` at the right one. */
export const heading = (left: Text, right: Text = ''): Heading => ({ block: 'heading', left, right });

/** Running text. */
export const paragraph = (text: Text): Paragraph => ({ block: 'paragraph', text });

/** A table; every row has as many cells as there are columns. */
export const table = (columns: readonly Column[], rows: readonly (readonly Text[])[]): Table => ({
  block: 'table',
  columns,
  rows,
});

/** One item of a list: a mark in the margin and what belongs to it. A bare text is a paragraph. */
export const item = (mark: Text, ...blocks: readonly (Block | string)[]): Item => ({
  mark,
  blocks: blocks.map((block) => (typeof block === 'string' ? paragraph(block) : block)),
});

/** A list of items with their marks in the margin. */
export const list = (
  items: readonly Item[],
  { marks = 'left', loose = false, margin = 0 }: Partial<Pick<List, 'marks' | 'loose' | 'margin'>> = {},
): List => ({ block: 'list', items, marks, loose, margin });
