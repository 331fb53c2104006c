/** The way to a value inside a document: keys of mappings and indices of lists. Keys are text, also `1` in `inputs`. */
export type Path = readonly (string | number)[];

/** A place in a file. Line and column count from 1; a column is one UTF-16 unit, a tab counts as one. */
export interface Place {
  readonly file: string;
  readonly line: number;
  readonly column: number;
}

/** A place with where it ends: just past its last character. */
export interface Extent extends Place {
  readonly endLine: number;
  readonly endColumn: number;
}

/** Something wrong at a path of the data, before it is known where in the text that is. */
export interface Problem {
  readonly path: Path;
  /** Whether the mark belongs under the key or under the value. */
  readonly on: 'key' | 'value';
  /** One plain sentence without full stop. */
  readonly says: string;
  /** What would be right, as a short advice: 'did you mean `series`?' */
  readonly expected?: string;
}

/** A problem with its place and the line it stands in, ready to be shown. Safe to print: nothing in it is a control character. */
export interface Diagnostic extends Place {
  /** How many columns of the line are meant, at least 1. */
  readonly width: number;
  readonly says: string;
  readonly expected?: string;
  /** The source line, or a window of it, and a line of spaces and `^` that fits under it. */
  readonly excerpt?: { readonly text: string; readonly marker: string };
}
