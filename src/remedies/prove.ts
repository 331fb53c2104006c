/** A cure applied to the project and judged again, so that nothing is advised that was not proved. */
import type { Finding } from '../checks/finding.js';
import type { Judgement, JudgeOptions } from '../checks/judge.js';
import { judge } from '../checks/judge.js';
import type { Verdict } from '../checks/verdict.js';
import type { Direction, QuantityName } from '../loads/plan.js';
import { withChanges } from './change.js';

/** One change to the project: the value at a path, or undefined to take it away. */
export interface Change {
  readonly path: readonly (string | number)[];
  readonly value: unknown;
}

/** A cure before it is proved. */
export interface Cure {
  readonly title: string;
  readonly changes: readonly Change[];
  readonly parts: readonly string[];
  readonly steps: readonly string[];
  /** Accounts to show after it, besides the finding's own. */
  readonly watch: readonly string[];
}

/** A cure with the audit after it. */
export interface Proved {
  readonly judgement: Judgement;
  readonly remedy: {
    readonly title: string;
    readonly changes: readonly { readonly path: string; readonly value: unknown }[];
    readonly parts: readonly string[];
    readonly steps: readonly string[];
    readonly after: {
      readonly verdict: Verdict;
      readonly accounts: readonly {
        readonly id: string;
        readonly direction: Direction;
        readonly quantity: QuantityName;
        readonly max: number;
        readonly limit: number | null;
        readonly margin: number | null;
      }[];
      readonly cures: boolean;
    };
  };
}

/** Applies a cure and judges again; undefined when the changed project cannot be judged, which makes it no cure. */
export function prove(data: unknown, file: string, options: JudgeOptions, finding: Finding, cure: Cure): Proved | undefined {
  const judgement = judge(withChanges(data, cure.changes), file, options);
  if ('problems' in judgement) return undefined;
  const watched = new Set([...cure.watch, ...(finding.account ? [finding.account.id] : [])]);
  const accounts = judgement.accounts
    .filter((j) => watched.has(j.account.id))
    .flatMap(({ account: a, by, margin }) => {
      if (a.draw === undefined) return [];
      const worst = a.direction === 'at-least' ? a.draw.min : a.draw.max;
      return [{ id: a.id, direction: a.direction, quantity: a.quantity, max: by?.draw ?? worst, limit: by?.value ?? null, margin: margin ?? null }];
    });
  const cures = !judgement.findings.some((f) => f.rule === finding.rule && f.about === finding.about && f.account?.direction === finding.account?.direction);
  return {
    judgement,
    remedy: {
      title: cure.title,
      changes: cure.changes.map(({ path, value }) => ({ path: path.join('.'), value: value ?? null })),
      parts: cure.parts,
      steps: cure.steps,
      after: { verdict: judgement.verdict, accounts, cures },
    },
  };
}
