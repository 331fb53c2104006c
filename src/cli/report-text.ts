/** Reports of several files as one text, in any format. What makes a format is loaded when it is asked for. */
import { neutral } from '../reports/neutral.js';
import type { FailAt } from '../reports/severity.js';
import { type Audited, reportOf } from './audit-file.js';
import type { Format } from './formats.js';
import type { Page } from './print.js';
import { version } from './version.js';

export interface Wishes {
  readonly all: boolean;
  readonly failAt: FailAt;
}

export async function reportText(format: Format, audited: readonly Audited[], wishes: Wishes): Promise<string> {
  const reports = audited.map(reportOf);
  switch (format) {
    case 'terminal':
      return terminalText(audited, wishes);
    case 'json':
      return (await import('../reports/json.js')).jsonReport(reports);
    case 'sarif':
      return (await import('../reports/sarif.js')).sarifReport(reports, version, textOf(audited));
    case 'junit':
      return (await import('../reports/junit.js')).junitReport(reports, wishes.failAt);
    case 'markdown':
      return (await import('../reports/markdown.js')).markdownReport(reports);
    default:
      return format satisfies never;
  }
}

/** The text of a file that was audited. */
function textOf(audited: readonly Audited[]): (file: string) => string | undefined {
  const texts = new Map(audited.flatMap((one) => ('report' in one ? [[one.report.file, one.text] as const] : [])));
  return (file) => texts.get(file);
}

/** A page of a file: plain, and as wide as most read it. */
const ofFile: Page = { width: 80, colour: false };

async function terminalText(audited: readonly Audited[], { all }: Wishes): Promise<string> {
  const show = await shower(audited.length > 1, all, ofFile);
  const texts = audited.map((one, index) => {
    const text = show.one(one, index === 0);
    return typeof text === 'string'
      ? text
      : text.said.map((line) => line.split('\n').map(neutral).join('\n') + '\n').join('');
  });
  return texts.join('') + show.all(audited.map(reportOf));
}

/** Shows each report as soon as it is there, and of several files a summary at the end. What was not read is given back. */
export async function shower(several: boolean, all: boolean, page: Page) {
  const [{ print }, { terminalReport }, { summary }] = await Promise.all([
    import('./print.js'),
    import('../reports/terminal.js'),
    import('../reports/summary.js'),
  ]);
  const rule = '━'.repeat(page.width) + '\n\n';
  return {
    one: (audited: Audited, first: boolean): string | Exclude<Audited, { readonly report: unknown }> =>
      'report' in audited
        ? (first ? '' : rule) + print(terminalReport(audited.report, { all }), page) + (several ? '\n' : '')
        : audited,
    all: (reports: Parameters<typeof summary>[0]): string => (several ? rule + print(summary(reports), page) : ''),
  };
}
