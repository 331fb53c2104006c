/** What a command says when it cannot do its work; the exit status is 2. */
import { toJson } from '../reports/json.js';
import type { Diagnostic } from '../source/diagnostic.js';
import { type Refused, refused } from './open-document.js';
import { complain, say } from './output.js';

/** Says why, on standard error. */
export function refuse(lines: readonly string[]): number {
  complain(lines);
  return 2;
}

/** Says what is wrong with a file: as data on standard output, or in lines on standard error. */
export function unread(
  found: Refused | { readonly file: string; readonly errors: readonly Diagnostic[] },
  json: boolean,
): number {
  const told = 'errors' in found ? refused(found.file, found.errors) : found;
  if (json) say(toJson(told.unread));
  else complain(told.said);
  return 2;
}
