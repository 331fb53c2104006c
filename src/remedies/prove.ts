/** A cure applied to the project and judged again, so that nothing is advised that was not proved. */
import type { Finding } from '../checks/finding.js';
import { findingKey } from '../checks/finding.js';
import type { Judgement, JudgeOptions } from '../checks/judge.js';
import { judge, judgeBound, judgeable } from '../checks/judge.js';
import { stillFails } from '../checks/still-fails.js';
import type { JudgedAccount, Verdict } from '../checks/verdict.js';
import { accountKey, worse } from '../checks/verdict.js';
import type { Account, LimitMet } from '../ledger/account.js';
import type { Direction, QuantityName } from '../loads/account-plan.js';
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

/** A cure with what is left of the account after it. */
export interface Remedy {
  readonly title: string;
  readonly changes: readonly { readonly path: string; readonly value: unknown }[];
  readonly parts: readonly string[];
  readonly steps: readonly string[];
  readonly after: {
    readonly verdict: Verdict;
    readonly accounts: readonly AfterAccount[];
    readonly cures: boolean;
  };
}

export interface AfterAccount {
  readonly id: string;
  readonly direction: Direction;
  readonly quantity: QuantityName;
  /** The worst end: the most, or of an at-least account the least. */
  readonly max: number;
  readonly limit: number | null;
  readonly margin: number | null;
}

/** What a set of changes is known by. */
export const changesKey = (changes: readonly Change[]): string =>
  JSON.stringify(changes.map(({ path, value }) => [path, value ?? null]));

/** Judges changed projects, each once. */
export interface Prover<T = Judgement> {
  /**
   * What is kept of the judgement after the changes; undefined when the changed project cannot be judged, which makes it no cure,
   * or is seen at a glance to have a finding still.
   *
   * @param cured the finding that they are to cure
   */
  after(changes: readonly Change[], cured?: Finding): T | undefined;
  /** Whether it is known already, so that asking costs nothing. */
  knows(changes: readonly Change[]): boolean;
  /** How many changed projects were judged. */
  readonly judged: number;
}

/** A glance at one account costs about so much of a judgement. */
const GLANCE = 1 / 8;

/** @param keep what to remember of each judgement */
export function proverOf<T>(
  data: unknown,
  file: string,
  options: JudgeOptions,
  keep: (judgement: Judgement) => T,
): Prover<T> {
  const known = new Map<string, T | undefined>();
  let glances = 0;
  return {
    after(changes, cured) {
      const key = changesKey(changes);
      if (known.has(key)) return known.get(key);
      const bound = judgeable(withChanges(data, changes), file, options);
      const isBound = !('problems' in bound);
      if (isBound && cured && stillFails(bound.project, cured)) {
        // It is not remembered: of something else the changes may be the cure.
        glances += 1;
        return undefined;
      }
      const found = isBound ? keep(judgeBound(bound)) : undefined;
      known.set(key, found);
      return found;
    },
    knows: (changes) => known.has(changesKey(changes)),
    get judged() {
      return known.size + GLANCE * glances;
    },
  };
}

/** What of a judgement tells whether a change cures, without the solutions behind it, which are megabytes. */
export interface Upshot {
  readonly verdict: Verdict;
  readonly accounts: readonly (Pick<JudgedAccount, 'verdict' | 'margin'> & {
    readonly account: Pick<Account, 'id' | 'kind' | 'quantity' | 'direction' | 'draw'>;
    readonly by?: Pick<LimitMet, 'draw' | 'value'>;
  })[];
  readonly findings: readonly (Pick<Finding, 'rule' | 'about' | 'verdict' | 'waiver'> & {
    readonly account?: Pick<Account, 'direction'>;
  })[];
}

export const upshotOf = ({ verdict, accounts, findings }: Judgement): Upshot => ({
  verdict,
  accounts: accounts.map(({ account: a, verdict: of, margin, by }) => ({
    verdict: of,
    ...(margin !== undefined && { margin }),
    account: {
      id: a.id,
      kind: a.kind,
      quantity: a.quantity,
      direction: a.direction,
      ...(a.draw && { draw: a.draw }),
    },
    ...(by && { by: { draw: by.draw, value: by.value } }),
  })),
  findings: findings.map(({ rule, about, verdict: of, waiver, account }) => ({
    rule,
    about,
    verdict: of,
    ...(waiver && { waiver }),
    ...(account && { account: { direction: account.direction } }),
  })),
});

/** The judgement after some changes, not kept: each holds megabytes of solutions. Undefined as of a `Prover`. */
export function judgedAfter(
  data: unknown,
  file: string,
  options: JudgeOptions,
  changes: readonly Change[],
): Judgement | undefined {
  const judged = judge(withChanges(data, changes), file, options);
  return 'problems' in judged ? undefined : judged;
}

/** What a load does at a reset is wrong, or nobody promises it: a cure that leaves the milder of the two is none. */
const BY_DEGREES = new Set(['boot-drives', 'boot-floats']);
const matter = (f: Upshot['findings'][number]): string =>
  BY_DEGREES.has(f.rule) ? `at boot ${f.about}` : findingKey(f);

/** Whether a judgement still has a finding, be it milder; a note of it is worth knowing and calls for nothing. */
export const persists = (judgement: Upshot, f: Finding): boolean =>
  judgement.findings.some((g) => g.verdict !== 'note' && matter(g) === matter(f));

/** Accounts that are there before and after a change and have a worse verdict after it. */
export function worsened(before: Upshot, after: Upshot): readonly string[] {
  const was = new Map(before.accounts.map((j) => [accountKey(j), j.verdict]));
  return after.accounts
    .filter((j) => {
      const verdict = was.get(accountKey(j));
      // A meter's reading is of the wiring as it was.
      return verdict !== undefined && worse(j.verdict, verdict) && j.account.kind !== 'measured';
    })
    .map((j) => j.account.id);
}

/** Findings that come with a change and are as bad as the one it cures. */
export function brought(before: Upshot, after: Upshot, cured: Finding): readonly Upshot['findings'][number][] {
  const was = new Map(before.findings.map((f) => [findingKey(f), f.verdict]));
  return after.findings.filter((f) => {
    const verdict = was.get(findingKey(f));
    return !worse(cured.verdict, f.verdict) && (verdict === undefined || worse(f.verdict, verdict));
  });
}

/** Whether a change makes something else worse than it was: no cure. */
export const spoils = (before: Upshot, after: Upshot, cured: Finding): boolean =>
  worsened(before, after).length > 0 || brought(before, after, cured).length > 0;

/** A cure as the report shows it, with the audit after it. */
export function remedyOf(cure: Cure, judgement: Upshot, finding: Finding): Remedy {
  const watched = [...(finding.account ? [finding.account.id] : []), ...cure.watch];
  const accounts = judgement.accounts
    .filter((j) => watched.includes(j.account.id))
    .sort((a, b) => watched.indexOf(a.account.id) - watched.indexOf(b.account.id))
    .flatMap(({ account: a, by, margin }): AfterAccount[] => {
      if (a.draw === undefined) return [];
      const worst = a.direction === 'at-least' ? a.draw.min : a.draw.max;
      return [
        {
          id: a.id,
          direction: a.direction,
          quantity: a.quantity,
          max: by?.draw ?? worst,
          limit: by?.value ?? null,
          margin: margin ?? null,
        },
      ];
    });
  return {
    title: cure.title,
    changes: cure.changes.map(({ path, value }) => ({ path: path.join('.'), value: value ?? null })),
    parts: cure.parts,
    steps: cure.steps,
    after: { verdict: judgement.verdict, accounts, cures: !persists(judgement, finding) },
  };
}
