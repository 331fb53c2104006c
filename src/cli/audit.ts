/** `ampledger audit FILE…` */
import { exitStatus, type FailAt } from '../reports/severity.js';
import type { Arguments } from './arguments.js';
import { type Audited, auditFile, reportOf } from './audit-file.js';
import { readConditions } from './conditions.js';
import { readCorners } from './corners.js';
import type { Format } from './formats.js';
import { complain, page, say } from './output.js';
import { type Output, readOutputs } from './outputs.js';
import { refuse } from './refuse.js';

/** Audits every file named, whatever becomes of the others; the exit status is the worst of them. */
export async function audit(given: Arguments): Promise<number> {
  const { operands: files, options, repeated } = given;
  const [conditions, corners] = [readConditions(given), readCorners(given)];
  const wanted = readOutputs(repeated?.['output'] ?? [], files);
  if ('problem' in conditions) return refuse([conditions.problem]);
  if ('problem' in corners) return refuse([corners.problem]);
  if ('problem' in wanted) return refuse([wanted.problem]);
  const format = (options['format'] ?? 'terminal') as Format;
  const failAt = (options['fail-at'] ?? 'breach') as FailAt;
  const wishes = { all: options['all'] === true, failAt };
  const { reportText, shower } = await import('./report-text.js');
  const show = format === 'terminal' ? await shower(files.length > 1, wishes.all, page()) : undefined;
  const audited: Audited[] = [];
  for (const file of files) {
    const one = await auditFile(file, { ...conditions, ...corners });
    audited.push(one);
    const shown = show?.one(one, audited.length === 1);
    if (typeof shown === 'string') say(shown);
    else if (shown) complain(shown.said);
  }
  const reports = audited.map(reportOf);
  say(show ? show.all(reports) : await reportText(format, audited, wishes));
  const problems = await write(wanted.outputs, (each) => reportText(each, audited, wishes));
  const status = Math.max(...reports.map((report) => exitStatus(report, failAt)));
  return problems.length > 0 ? refuse(problems) : status;
}

/** Writes each file whole; gives what went wrong. */
async function write(
  outputs: readonly Output[],
  text: (format: Format) => Promise<string>,
): Promise<readonly string[]> {
  if (outputs.length === 0) return [];
  const { writeWhole } = await import('./write-whole.js');
  const problems: string[] = [];
  for (const { file, format } of outputs) {
    const problem = await writeWhole(file, await text(format));
    if (problem !== undefined) problems.push(problem);
  }
  return problems;
}
