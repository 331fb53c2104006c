/** `ampledger compare OLD NEW` and `ampledger compare --from REV [--to REV] [FILE…]` */
import type { ComparisonReport } from '../reports/compare-report.js';
import { wholeChange } from '../reports/compare-report.js';
import type { FailAt } from '../reports/severity.js';
import type { Arguments } from './arguments.js';
import { comparePair, type Pair } from './compare-pair.js';
import { type Compared, COMPARED, comparisonText, type Told } from './comparison-text.js';
import { readConditions } from './conditions.js';
import { openDocument } from './open-document.js';
import { complain, page, say } from './output.js';
import { readOutputs } from './outputs.js';
import { refuse } from './refuse.js';
import { ofFile } from './render.js';

/** What is compared, and what its sides are called. */
export interface Pairs {
  readonly before: string;
  readonly after: string;
  readonly pairs: readonly Pair[];
  /** How many more files are the same byte for byte. */
  readonly unchanged: number;
  /** Files are named from the root of a repository, and one that could not be read before may be repaired. */
  readonly areRevisions: boolean;
}

/** Prints what the change makes of every file, and writes it; the exit status is 1 only for what it makes worse. */
export async function compare(given: Arguments): Promise<number> {
  const { operands, options, repeated } = given;
  const conditions = readConditions(given);
  if ('problem' in conditions) return refuse([conditions.problem]);
  const wanted = readOutputs(repeated?.['output'] ?? [], operands, COMPARED);
  if ('problem' in wanted) return refuse([wanted.problem]);
  const pairs = await pairsOf(given);
  if ('problem' in pairs) return refuse([pairs.problem]);
  const failAt = (options['fail-at'] ?? 'breach') as FailAt;
  const compared = pairs.pairs.map((pair) => comparePair(pair, conditions, failAt, pairs.areRevisions));
  const files = compared.map(({ file }) => file);
  const report: ComparisonReport = {
    ampledger: 1,
    before: pairs.before,
    after: pairs.after,
    change: wholeChange(files),
    fails: compared.some(({ fails }) => fails),
    unchanged: pairs.unchanged,
    files,
  };
  const told: Told = { report, failAt, all: options['all'] === true, fromRoot: pairs.areRevisions };
  const format = (options['format'] ?? 'terminal') as Compared;
  if (format === 'terminal' || format === 'markdown') complain(compared.flatMap(({ said }) => said));
  // Of a single file that was not read there is no more to say on a page.
  if (format !== 'terminal' || report.change !== 'unread' || files.length > 1)
    say(await comparisonText(format, told, page()));
  const problems: string[] = [];
  for (const { file, format: each } of wanted.outputs) {
    const { writeWhole } = await import('./write-whole.js');
    const problem = await writeWhole(file, await comparisonText(each, told, ofFile));
    if (problem !== undefined) problems.push(problem);
  }
  if (problems.length > 0) return refuse(problems);
  return report.change === 'unread' ? 2 : report.fails ? 1 : 0;
}

async function pairsOf({ operands, options }: Arguments): Promise<Pairs | { readonly problem: string }> {
  const { from, to, mode, variant } = options;
  if (typeof from === 'string') {
    const other = mode === undefined ? (variant === undefined ? undefined : '--variant') : '--mode';
    if (other !== undefined) return { problem: `${other} goes with two files, not with --from.` };
    const { revisions } = await import('./revisions.js');
    return revisions(from, typeof to === 'string' ? to : undefined, operands);
  }
  if (to !== undefined) return { problem: '--to needs --from: the revision to compare with.' };
  if (operands.length === 2) return twoFiles(operands);
  return operands.length < 2
    ? { problem: `${operands.length === 0 ? 'OLD' : 'NEW'} is missing: name two files, or a revision with --from.` }
    : { problem: 'Two files are compared at a time; revisions of more with --from REV.' };
}

async function twoFiles([old = '', file = '']: readonly string[]): Promise<Pairs | { readonly problem: string }> {
  if (old === '-' && file === '-') return { problem: 'Standard input is one file; the other one needs a name.' };
  const [before, after] = [await openDocument(old), await openDocument(file)];
  const pair = { file, ...(old !== file && { was: old }), before, after };
  return { before: old, after: file, pairs: [pair], unchanged: 0, areRevisions: false };
}
