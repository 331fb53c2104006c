/** `ampledger compare OLD NEW` and `ampledger compare --from REV [--to REV] [FILE…]` */
import type { ComparisonReport } from '../reports/compare-report.js';
import { wholeChange } from '../reports/compare-report.js';
import { toJson } from '../reports/json.js';
import type { FailAt } from '../reports/severity.js';
import type { Arguments } from './arguments.js';
import { comparePair, type Pair } from './compare-pair.js';
import { readConditions } from './conditions.js';
import { openDocument } from './open-document.js';
import { complain, page, say } from './output.js';
import { refuse } from './refuse.js';

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

/** Prints what the change makes of every file; the exit status is 1 only for what it makes worse. */
export async function compare(given: Arguments): Promise<number> {
  const conditions = readConditions(given);
  if ('problem' in conditions) return refuse([conditions.problem]);
  const pairs = await pairsOf(given);
  if ('problem' in pairs) return refuse([pairs.problem]);
  const failAt = (given.options['fail-at'] ?? 'breach') as FailAt;
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
  const said = compared.flatMap((each) => each.said);
  await show(report, said, given, failAt, pairs.areRevisions);
  return report.change === 'unread' ? 2 : report.fails ? 1 : 0;
}

async function show(
  report: ComparisonReport,
  said: readonly string[],
  { options }: Arguments,
  failAt: FailAt,
  fromRoot: boolean,
): Promise<void> {
  if (options['format'] === 'json') return say(toJson(report));
  if (options['format'] === 'sarif') {
    const [{ comparisonSarif }, { version }, { folderInRepository }] = await Promise.all([
      import('../reports/compare-sarif.js'),
      import('./version.js'),
      import('./repository.js'),
    ]);
    return say(comparisonSarif(report, version, fromRoot ? '' : folderInRepository(process.cwd())));
  }
  complain(said);
  if (options['format'] === 'markdown') {
    const { comparisonMarkdown } = await import('../reports/compare-markdown.js');
    return say(comparisonMarkdown(report, failAt));
  }
  // Of a single file that was not read there is no more to say.
  if (report.change === 'unread' && report.files.length === 1) return;
  const [{ print }, { comparisonTree }] = await Promise.all([
    import('./print.js'),
    import('../reports/compare-tree.js'),
  ]);
  say(print(comparisonTree(report, options['all'] === true), page()));
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
