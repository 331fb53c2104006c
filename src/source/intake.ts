import { diagnosticAt, lineStarts, type Source } from './diagnostic.js';
import type { Diagnostic } from './place.js';

/** Largest project file that is read, in bytes. A large project has some 20 kB. */
export const largestFile = 1_000_000;

/** What a file is read as. */
export type Sort = 'project' | 'profile';

/** What the least file of a sort says. */
const LEAST: Readonly<Record<Sort, string>> = {
  project: 'the least is: ampledger: 1, and a title',
  profile: 'the least is: id, title and kind, and `extends` or figures with their documents',
};

/**
 * The text of a file, or why it cannot be one: too large, not text, or nothing in it.
 * A byte order mark is dropped.
 */
export function takeIn(
  input: string | Uint8Array,
  file: string,
  sort: Sort = 'project',
): Source | { readonly refused: Diagnostic } {
  const refuse = (says: string, expected?: string) => ({
    refused: { file, line: 1, column: 1, width: 1, says, ...(expected === undefined ? {} : { expected }) },
  });
  const bytes = sizeOf(input);
  if (bytes > largestFile)
    return refuse(
      `the file has ${(bytes / 1e6).toFixed(1)} MB, and no more than ${largestFile / 1e6} MB is read`,
      'is this the right file? A large project has some 20 kB',
    );
  if (
    typeof input !== 'string' &&
    ((input[0] === 0xff && input[1] === 0xfe) || (input[0] === 0xfe && input[1] === 0xff))
  )
    return refuse('the file is text in UTF-16', 'save it as UTF-8');

  const decoded = typeof input === 'string' ? input : new TextDecoder().decode(input);
  const text = decoded.startsWith('\ufeff') ? decoded.slice(1) : decoded;
  const source = { file, text, starts: lineStarts(text) };
  const broken = typeof input === 'string' ? -1 : firstInvalid(input, text);
  const odd = text.indexOf('\0') === -1 ? broken : text.indexOf('\0');
  if (odd !== -1) {
    const says = text.includes('\0') ? 'the file is not text: it holds zero bytes' : 'these bytes are not UTF-8';
    return { refused: diagnosticAt(source, odd, odd + 1, says, `a ${sort} file is plain text, saved as UTF-8`) };
  }
  if (!/(?:^|\n)[ \t\r]*[^ \t\r\n#]/.test(text)) return refuse('the file is empty', LEAST[sort]);
  return source;
}

/** Bytes of the input; of a text, as UTF-8. Stops counting where it is too large anyway. */
function sizeOf(input: string | Uint8Array): number {
  if (typeof input !== 'string') return input.byteLength;
  return input.length > largestFile ? input.length : new TextEncoder().encode(input).length;
}

/** Offset of the first character that stands for bytes that are not UTF-8, or -1. */
function firstInvalid(input: Uint8Array, text: string): number {
  try {
    new TextDecoder('utf-8', { fatal: true }).decode(input);
    return -1;
  } catch {
    return Math.max(0, text.indexOf('\ufffd'));
  }
}
