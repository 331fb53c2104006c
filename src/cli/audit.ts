/** `ampledger audit FILE…` */
import { jsonReport } from '../reports/json.js';
import { exitStatus, type FailAt } from '../reports/severity.js';
import type { Arguments } from './arguments.js';
import { type Audited, auditFile, reportOf } from './audit-file.js';
import { readConditions } from './conditions.js';
import { readCorners } from './corners.js';
import { complain, page, say } from './output.js';

/** Audits every file named, whatever becomes of the others; the exit status is the worst of them. */
export async function audit(given: Arguments): Promise<number> {
  const { operands: files, options } = given;
  const [conditions, corners] = [readConditions(given), readCorners(given)];
  if ('problem' in conditions) return refuse(conditions.problem);
  if ('problem' in corners) return refuse(corners.problem);
  const json = options['format'] === 'json';
  const show = json ? undefined : await shower(files.length > 1, options['all'] === true);
  const audited: Audited[] = [];
  for (const file of files) {
    const one = await auditFile(file, { ...conditions, ...corners });
    audited.push(one);
    show?.one(one, audited.length === 1);
  }
  const reports = audited.map(reportOf);
  if (json) say(jsonReport(reports));
  show?.all(reports);
  const failAt = (options['fail-at'] ?? 'breach') as FailAt;
  return Math.max(...reports.map((report) => exitStatus(report, failAt)));
}

function refuse(problem: string): number {
  complain([problem]);
  return 2;
}

/** Shows each report as soon as it is there, and of several files a summary at the end. */
async function shower(several: boolean, all: boolean) {
  const [{ print }, { terminalReport }, { summary }] = await Promise.all([
    import('./print.js'),
    import('../reports/terminal.js'),
    import('../reports/summary.js'),
  ]);
  const here = page();
  const rule = '━'.repeat(here.width) + '\n\n';
  return {
    one(audited: Audited, first: boolean): void {
      if (!('report' in audited)) return complain(audited.said);
      say((first ? '' : rule) + print(terminalReport(audited.report, { all }), here) + (several ? '\n' : ''));
    },
    all: (reports: Parameters<typeof summary>[0]): void =>
      several ? say(rule + print(summary(reports), here)) : undefined,
  };
}
