/** Which cures are offered for which finding, in order, each proved before it is shown. */
import type { Finding } from '../checks/finding.js';
import type { Judgement, JudgeOptions } from '../checks/judge.js';
import { driveCoil } from './drive-coil.js';
import { feedCoilsApart } from './feed-coils-apart.js';
import type { Change, Cure, Proved } from './prove.js';
import { prove } from './prove.js';

/** A way to cure a finding, or none that fits it. */
export type Remedy = (finding: Finding, judgement: Judgement, data: unknown) => readonly Cure[];

const REMEDIES: readonly Remedy[] = [driveCoil, feedCoilsApart];

/** Proved cures by finding; one change is proved once, however many findings ask for it. */
export function curesFor(data: unknown, file: string, options: JudgeOptions, judgement: Judgement): (f: Finding) => readonly Proved[] {
  const proofs = new Map<string, Proved | undefined>();
  return (finding) =>
    REMEDIES.flatMap((remedy) => remedy(finding, judgement, data)).flatMap((cure) => {
      const key = keyOf(cure.changes, finding);
      if (!proofs.has(key)) proofs.set(key, prove(data, file, options, finding, cure));
      const proved = proofs.get(key);
      return proved?.remedy.after.cures ? [proved] : [];
    });
}

const keyOf = (changes: readonly Change[], f: Finding): string => JSON.stringify([changes, f.rule, f.about, f.account?.direction]);
