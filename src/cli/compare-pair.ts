/** Two versions of one file, compared, whatever state they are in. */
import * as ampledger from '../index.js';
import type { FileComparison } from '../reports/compare-report.js';
import { repairedComparison, unreadComparison } from '../reports/compare-report.js';
import type { FailAt } from '../reports/severity.js';
import { bringsWorse } from '../studies/compare.js';
import type { Conditions } from './conditions.js';
import { type Opened, type Refused, refused } from './open-document.js';

/** A version that is not there is undefined. */
export interface Pair {
  readonly file: string;
  readonly was?: string;
  readonly before?: Opened | undefined;
  readonly after?: Opened | undefined;
}

export interface Compared {
  readonly file: FileComparison;
  readonly fails: boolean;
  /** What is wrong with it, in lines for people. */
  readonly said: readonly string[];
}

/** @param mayRepair a former version that cannot be audited is told, and is no error */
export function comparePair(
  { before, after, ...names }: Pair,
  conditions: Conditions,
  failAt: FailAt,
  mayRepair: boolean,
): Compared {
  const [was, is] = [documentOf(before), documentOf(after)];
  const [former, latter] = [refusedOf(before), refusedOf(after)];
  if (latter || (former && !mayRepair)) return unreadPair(names, former, latter);
  const { report, comparison, errors } = ampledger.compare(was, is, names, conditions);
  if (report && comparison) {
    const fails = failAt !== 'never' && bringsWorse(comparison, failAt);
    return { file: former ? repairedComparison(report, former.unread.errors) : report, fails, said: [] };
  }
  const [first, second] = [
    errors.before.length > 0 ? refused(names.was ?? names.file, errors.before) : undefined,
    errors.after.length > 0 ? refused(names.file, errors.after) : undefined,
  ];
  // Without the former version: of what nobody could audit, all that is in it now is new.
  if (first && !second && mayRepair) return comparePair({ ...names, before: first, after }, conditions, failAt, true);
  return unreadPair(names, first, second);
}

const documentOf = (opened: Opened | undefined) => (opened && 'document' in opened ? opened.document : undefined);

const refusedOf = (opened: Opened | undefined) => (opened && 'unread' in opened ? opened : undefined);

function unreadPair(names: Pair, former: Refused | undefined, latter: Refused | undefined): Compared {
  const { file, was } = names;
  const unread = [
    ...(former ? [{ side: 'before' as const, errors: former.unread.errors }] : []),
    ...(latter ? [{ side: 'after' as const, errors: latter.unread.errors }] : []),
  ];
  const said = [...(former?.said ?? []), ...(latter?.said ?? [])];
  return { file: unreadComparison({ file, ...(was !== undefined && { was }) }, unread), fails: false, said };
}
