/** The variants of a file side by side: each is the whole project with a few keys changed, judged whole, and held against the file. */
import type { Judgement, JudgeOptions } from '../checks/judge.js';
import { judge } from '../checks/judge.js';
import type { JudgedAccount } from '../checks/verdict.js';
import { VERDICTS } from '../checks/verdict.js';
import type { Problem } from '../source/place.js';
import type { Difference } from './difference.js';
import { differenceOf } from './difference.js';
import type { Variant } from './variant-changes.js';
import { inVariant, variantData } from './variant-document.js';

/** A variant, judged. */
export interface JudgedVariant {
  readonly variant: Variant;
  readonly judgement: Judgement;
  /** What it makes of the file as it stands. */
  readonly difference: Difference;
}

/** Judges all variants of a file that is judged itself, or says what is wrong with them. @param base the file as it stands */
export function judgeVariants(
  data: unknown,
  file: string,
  settings: JudgeOptions,
  base: Judgement,
  variants: readonly Variant[],
): { readonly judged: readonly JudgedVariant[]; readonly problems: readonly Problem[] } {
  const problems: Problem[] = [];
  const judged = variants.flatMap((variant): JudgedVariant[] => {
    const judgement = judge(variantData(data, variant), file, settings);
    if ('problems' in judgement) {
      problems.push(...judgement.problems.map((p) => inVariant(p, variant)));
      return [];
    }
    return [{ variant, judgement, difference: differenceOf(base, judgement) }];
  });
  return { judged, problems };
}

/** The account that is nearest to its limit, or the furthest past it; undefined when nothing has a limit. */
export const tightestOf = ({ accounts }: Judgement): JudgedAccount | undefined =>
  accounts
    .filter((j) => j.margin !== undefined)
    .sort((a, b) => rank(a) - rank(b) || a.margin! - b.margin! || (a.account.id < b.account.id ? -1 : 1))[0];

/** All that call for nothing are equal. */
const rank = ({ verdict }: JudgedAccount): number =>
  verdict === 'note' || verdict === 'sound' ? VERDICTS.length : VERDICTS.indexOf(verdict);
