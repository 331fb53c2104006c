/** One file from its name to its report. */
import { dirname, join } from 'node:path';
import * as ampledger from '../index.js';
import type { Report, UnreadReport } from '../reports/report.js';
import type { Conditions } from './conditions.js';
import type { CornerOptions } from './corners.js';
import { openDocument, type Refused, refused } from './open-document.js';

/** A file that was audited; one that could not be comes with what to tell a person about it. */
export type Audited =
  | {
      readonly report: Report;
      /** Of the file. */
      readonly text: string;
      /** Of own profiles, that it looked into. */
      readonly folders?: readonly string[];
    }
  | Refused;

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
  if (!report) return refused(file, errors);
  const { text, folders = [] } = opened.document;
  const root = file === '-' ? '.' : dirname(file);
  return { report, text, folders: folders.map(({ name }) => join(root, name)) };
}
