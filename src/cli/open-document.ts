/** One file from its name to a checked document, with the folders of own profiles that it asks for. */
import * as ampledger from '../index.js';
import type { UnreadReport } from '../reports/report.js';
import { type Diagnostic, renderDiagnostic } from '../source/diagnostic.js';
import { largestFile } from '../source/intake.js';
import { readInput } from './input.js';

/** A file that could not be audited: for programs, and the same in lines for people. */
export interface Refused {
  readonly unread: UnreadReport;
  readonly said: readonly string[];
}

/** A checked document, or what keeps it from being one. */
export type Opened = { readonly document: ampledger.WithFolders } | Refused;

/** Reads and checks `file`, as given on the command line. */
export async function openDocument(file: string): Promise<Opened> {
  const input = await readInput(file, largestFile);
  if ('problem' in input) return unreadable(file, input.problem);
  const read = readDocument(input.bytes, file);
  if ('unread' in read) return read;
  const names = ampledger.foldersOf(read.document);
  if (names.length === 0) return read;
  const { readFolders } = await import('./read-folders.js');
  return { document: ampledger.withFolders(read.document, readFolders(file, names)) };
}

/** The document of a text, still without its folders. */
export function readDocument(bytes: Uint8Array, file: string): Opened {
  const { document, errors } = ampledger.read(bytes, file);
  return document && errors.length === 0 ? { document } : refused(file, errors);
}

/** What stands for a file that has no text to read. */
export function unreadable(file: string, problem: string): Refused {
  const error = { file, line: 1, column: 1, width: 1, says: problem };
  return { unread: unread(file, [error]), said: [`${file === '-' ? 'standard input' : file}: ${problem}`] };
}

/** What stands for a file whose text is at fault. */
export function refused(file: string, errors: readonly Diagnostic[]): Refused {
  const count = errors.length === 1 ? 'One error' : `${errors.length} errors`;
  return {
    unread: unread(file, errors),
    said: [...errors.flatMap((error) => [renderDiagnostic(error), '']), `${count}: ${file} was not audited.`],
  };
}

const unread = (file: string, errors: readonly Diagnostic[]): UnreadReport => ({
  ampledger: 1,
  file,
  verdict: 'unread',
  // Without the marker's width, which only a printer needs.
  errors: errors.map(({ file: where, line, column, says, expected, excerpt }) => ({
    file: where,
    line,
    column,
    says,
    ...(expected !== undefined && { expected }),
    ...(excerpt && { excerpt }),
  })),
});
