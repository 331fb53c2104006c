/** What is kept of a file when its report is written: little, since there may be thousands. */
import { byUrgency } from './account-rows.js';
import { placeWords } from './places.js';
import type { Report, UnreadReport } from './report.js';

export type FileSummary = JudgedSummary | UnreadSummary;

interface JudgedSummary extends Pick<Report, 'file' | 'project' | 'verdict' | 'counts'> {
  /** Of the account that is worst off; null where it is not known, absent without accounts. */
  readonly margin?: number | null;
}

interface UnreadSummary extends Pick<UnreadReport, 'file' | 'verdict'> {
  /** The first of its errors, with its line and column, and how many there are. */
  readonly says: string;
  readonly errors: number;
}

export function summaryOf(report: Report | UnreadReport): FileSummary {
  if (report.verdict !== 'unread') {
    const { file, project, verdict, counts, accounts } = report;
    const [worst] = byUrgency(accounts);
    return { file, project, verdict, counts, ...(worst && { margin: worst.margin }) };
  }
  const { file, verdict, errors } = report;
  const [first] = errors;
  return { file, verdict, errors: errors.length, says: first === undefined ? '' : errorWords(first, file) };
}

/** '3:36 unknown key `currant`', and without a place where the file as a whole is at fault. */
function errorWords({ says, excerpt, ...place }: UnreadReport['errors'][number], file: string): string {
  if (place.file !== file) return `${placeWords(place)} ${says}`;
  return excerpt ? `${place.line}:${place.column} ${says}` : says;
}
