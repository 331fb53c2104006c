/** A comparison in each of its formats. What makes one is loaded when it is asked for. */
import type { ComparisonReport } from '../reports/compare-report.js';
import type { FailAt } from '../reports/severity.js';
import type { Format } from './formats.js';
import type { Page } from './print.js';

/** The formats that a comparison has. */
export const COMPARED = ['terminal', 'json', 'markdown', 'sarif'] as const satisfies readonly Format[];

export type Compared = (typeof COMPARED)[number];

export interface Told {
  readonly report: ComparisonReport;
  readonly failAt: FailAt;
  readonly all: boolean;
  /** Files are named from the root of the repository, wherever the command runs. */
  readonly fromRoot: boolean;
}

export async function comparisonText(
  format: Compared,
  { report, failAt, all, fromRoot }: Told,
  page: Page,
): Promise<string> {
  switch (format) {
    case 'terminal': {
      const { print } = await import('./print.js');
      return print((await import('../reports/compare-tree.js')).comparisonTree(report, all), page);
    }
    case 'json':
      return (await import('../reports/json.js')).toJson(report);
    case 'markdown':
      return (await import('../reports/compare-markdown.js')).comparisonMarkdown(report, failAt);
    case 'sarif': {
      const { version } = await import('./version.js');
      const { folderInRepository } = await import('./repository.js');
      const folder = fromRoot ? '' : folderInRepository(process.cwd());
      return (await import('../reports/compare-sarif.js')).comparisonSarif(report, version, folder);
    }
    default:
      return format satisfies never;
  }
}
