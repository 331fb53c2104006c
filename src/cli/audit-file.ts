/** One file from its name to its report. */
import { dirname, join } from 'node:path';
import * as ampledger from '../index.js';
import type { Report, UnreadReport } from '../reports/report.js';
import type { Conditions } from './conditions.js';
import type { CornerOptions } from './corners.js';
import { openDocument, type Refused, refused } from './open-document.js';

/** A file that was audited, with its text; one that could not be comes with what to tell a person about it. */
export type Audited = ({ readonly report: Report; readonly text: string } | Refused) & {
  /** Of own profiles, that it looked into, where it got as far. */
  readonly folders?: readonly string[];
};

export const reportOf = (audited: Audited): Report | UnreadReport =>
  'report' in audited ? audited.report : audited.unread;

/** Reads and audits `file`, as given on the command line. @param conditions `advice`: with cures */
export async function auditFile(
  file: string,
  conditions: Conditions & CornerOptions & { readonly advice: boolean },
): Promise<Audited> {
  const opened = await openDocument(file);
  if ('unread' in opened) return opened;
  const { report, errors } = ampledger.audit(opened.document, conditions);
  const { text } = opened.document;
  const root = file === '-' ? '.' : dirname(file);
  const folders = (opened.document.folders ?? []).map(({ name }) => join(root, name));
  return { ...(report ? { report, text } : refused(file, errors)), folders };
}
