import { byPlace, diagnosticAt } from './diagnostic.js';
import { documentOf, type Document } from './document.js';
import { type Sort, takeIn } from './intake.js';
import { parse, type Report } from './parse.js';
import type { Diagnostic } from './place.js';
import { plainData } from './tree.js';

/** What came of reading a file: a document, unless its syntax is broken, and all that is wrong, in the order of the lines. */
export interface Reading {
  readonly document?: Document;
  readonly errors: readonly Diagnostic[];
}

/** More errors than this say nothing new. */
const mostErrors = 50;

/**
 * Reads a project file or profile: YAML 1.2 without aliases, anchors, tags and directives, one mapping, keys once.
 * Never throws for what is in the file; time and memory are bounded by the size and depth that are let in.
 */
export function readDocument(text: string | Uint8Array, file: string, sort?: Sort): Reading {
  const source = takeIn(text, file, sort);
  if ('refused' in source) return { errors: [source.refused] };
  const errors: Diagnostic[] = [];
  const report: Report = (from, to, says, expected) => {
    if (errors.length < mostErrors) errors.push(diagnosticAt(source, from, to, says, expected));
  };

  const parsed = parse(source, report);
  if (!parsed || errors.length > 0) return { errors: errors.sort(byPlace) };
  const data = plainData(parsed.contents, source.text, ({ from, to, says, expected }) =>
    report(from, to, says, expected),
  );
  if (typeof data !== 'object' || data === null || Array.isArray(data)) {
    const [from, to] = parsed.contents?.range ?? [0, 1];
    const end = source.text.indexOf('\n', from);
    report(
      from,
      end === -1 ? to : Math.min(to, end),
      `the file holds ${Array.isArray(data) ? 'a list' : 'a text'}, not keys with values`,
      'each line is a key, a colon, a space and a value',
    );
    return { errors };
  }
  return { document: documentOf(source, parsed.contents, data), errors: errors.sort(byPlace) };
}
