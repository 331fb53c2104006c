/**
 * How a report of many files is put together from what each file adds, so that nobody has to hold all reports at once. A
 * form has sections (SARIF: errors, files, results); what a file adds is a piece: a text for each of them. What
 * stands around the sections may need totals, and those are known when the last file is told.
 */

/** What one file adds. */
export interface Piece {
  /** One a section; an empty one adds nothing. */
  readonly texts: readonly string[];
  /** What is added up over the files. */
  readonly sums?: readonly number[];
}

/** What is known of all files when the last one is told. */
export interface Whole {
  /** Of each section, whether anything stands in it. */
  readonly filled: readonly boolean[];
  readonly sums: readonly number[];
}

export interface Section {
  /** Between two texts. */
  readonly joint: string;
  /** Before the first text, if there is one. */
  readonly first?: string;
  /** The same text twice stands there once: a file may be named twice. */
  readonly once?: true;
}

export interface Form {
  readonly sections: readonly Section[];
  /** What stands before section `at`, or after the last one where `at` is their number. */
  readonly around: (at: number, whole: Whole) => string;
  /** What stands before the first section is the same whatever follows: it may go out before all is known. */
  readonly streams?: true;
}

/** One section as it grows: gives what is to be written for the next text. */
export function growing({ joint, first = '', once }: Section): {
  readonly next: (text: string) => string;
  readonly filled: () => boolean;
} {
  const seen = new Set<string>();
  let filled = false;
  return {
    next: (text) => {
      if (text === '' || seen.has(text)) return '';
      if (once) seen.add(text);
      const written = (filled ? joint : first) + text;
      filled = true;
      return written;
    },
    filled: () => filled,
  };
}

/** `sums` added to `to`, number by number. */
export const added = (to: readonly number[], sums: readonly number[] = []): readonly number[] =>
  sums.map((sum, at) => sum + (to[at] ?? 0));

/** The whole text at once, for a few files. */
export function assembled(form: Form, pieces: readonly Piece[]): string {
  const sections = form.sections.map((section, at) => {
    const { next, filled } = growing(section);
    const text = pieces.map(({ texts }) => next(texts[at] ?? '')).join('');
    return { text, filled: filled() };
  });
  const whole: Whole = {
    filled: sections.map(({ filled }) => filled),
    sums: pieces.reduce<readonly number[]>((sums, piece) => added(sums, piece.sums), []),
  };
  return sections.map(({ text }, at) => form.around(at, whole) + text).join('') + form.around(sections.length, whole);
}
