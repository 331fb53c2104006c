/** Of several files, each with its verdict. */
import type { Report, UnreadReport } from './report.js';
import { mark, table, type Tree } from './tree.js';
import { countWords, headline } from './words.js';

type Told = Pick<Report, 'verdict' | 'file' | 'counts'> | Pick<UnreadReport, 'verdict' | 'file'>;

/** One row a file, in the order they were named. */
export const summary = (reports: readonly Told[]): Tree => [
  [
    table(
      [
        { title: 'verdict', align: 'left' },
        { title: 'file', align: 'left' },
        { title: 'findings', align: 'left' },
      ],
      reports.map((report) =>
        report.verdict === 'unread'
          ? [mark('breach', 'unread'), report.file, 'not audited']
          : [mark(headline(report.verdict), headline(report.verdict)), report.file, countWords(report.counts)],
      ),
    ),
  ],
];
