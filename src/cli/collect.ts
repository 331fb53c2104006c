/** Pieces of files, one after the other, into the text of a form: written as they come where the form allows it. */
import { added, type Form, growing, type Piece, type Whole } from '../reports/assembly.js';
import { openSpool } from './spool.js';

export type Chunk = string | Uint8Array;

export interface Collector {
  /** Takes what the next file adds; gives what can be written already. */
  readonly add: (piece: Piece) => string;
  /** What is left to write when all files are told. */
  readonly rest: () => Iterable<Chunk>;
}

/** @param live what can be written before the end is given by `add`, or else kept for the end as well */
export function collector(form: Form, live: boolean): Collector {
  const sections = form.sections.map((section) => ({ ...growing(section), spool: openSpool() }));
  const isLive = live && form.streams === true;
  let [begun, sums] = [false, [] as readonly number[]];
  const head = (): string => {
    if (begun || !isLive) return '';
    begun = true;
    return form.around(0, { filled: [], sums: [] });
  };
  return {
    add: ({ texts, sums: more }) => {
      sums = added(sums, more);
      let written = head();
      for (const [at, { next, spool }] of sections.entries()) {
        const text = next(texts[at] ?? '');
        if (at === 0 && isLive) written += text;
        else spool.write(text);
      }
      return written;
    },
    *rest() {
      yield head();
      const whole: Whole = { filled: sections.map(({ filled }) => filled()), sums };
      for (const [at, { spool }] of sections.entries()) {
        if (at > 0 || !isLive) yield form.around(at, whole);
        yield* spool.read();
      }
      yield form.around(sections.length, whole);
    },
  };
}
