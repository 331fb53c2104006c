/**
 * What to change so that the whole project is sound: a set of cures is searched for that leaves nothing wrong with the fewest
 * changes. Each step is an audit of the changed project; a cure that makes another account worse is not taken.
 */
import type { Finding } from '../checks/finding.js';
import { findingKey, weighs } from '../checks/finding.js';
import type { Judgement, JudgeOptions } from '../checks/judge.js';
import type { JudgedAccount, Verdict } from '../checks/verdict.js';
import { VERDICTS, accountKey, worse } from '../checks/verdict.js';
import { attemptsAt } from '../remedies/cures.js';
import { withChanges } from '../remedies/change.js';
import { whyNoCure } from '../wording/no-cure.js';
import type { Change, Cure } from '../remedies/prove.js';
import { brought, changesKey, judgedAfter, persists, worsened } from '../remedies/prove.js';

/** A cure of the set, and the findings that are gone with it. */
export interface Step {
  readonly cure: Cure;
  readonly cures: readonly Finding[];
}

/** An account before and after. */
export interface BookChange {
  readonly before: JudgedAccount;
  readonly after: JudgedAccount;
}

/** A finding that stays, and why. */
export interface Left {
  readonly finding: Finding;
  readonly why: string;
}

export interface Advice {
  readonly steps: readonly Step[];
  readonly changes: readonly Change[];
  readonly before: Judgement;
  readonly after: Judgement;
  /** Accounts whose verdict is another one afterwards, worst first. */
  readonly books: readonly BookChange[];
  readonly left: readonly Left[];
}

/** Sets of cures that are looked at side by side. */
const WIDTH = 3;
/** Cures in a set at most. */
const DEPTH = 12;
/** Cures on end that may bring nothing by themselves before the search ends. */
const PATIENCE = 2;

interface State {
  readonly steps: readonly Step[];
  readonly changes: readonly Change[];
  readonly judgement: Judgement;
}

export function adviceFor(data: unknown, file: string, settings: JudgeOptions, judgement: Judgement): Advice {
  const why = new Map<string, string>();
  const start: State = { steps: [], changes: [], judgement };
  let best = start;
  let front: readonly State[] = [start];
  let idle = 0;
  for (
    let depth = 0;
    depth < DEPTH && idle < PATIENCE && best.judgement.verdict !== 'sound' && front.length > 0;
    depth++
  ) {
    const next = front.flatMap((state) => stepsFrom(state));
    // Two sets with the same changes are one.
    const distinct = [...new Map(next.map((s) => [changesKey(s.changes), s])).values()].sort(inOrder);
    front = distinct.slice(0, WIDTH);
    const better = front[0] !== undefined && inOrder(front[0], best) < 0;
    if (better) best = front[0]!;
    idle = better ? 0 : idle + 1;
  }
  const { steps, changes, judgement: after } = best;
  return {
    steps,
    changes,
    before: judgement,
    after,
    books: booksOf(judgement, after),
    left: after.findings
      .filter(weighs)
      .map((finding) => ({ finding, why: why.get(findingKey(finding)) ?? whyNoCure(finding) })),
  };

  /** All states one cure further on. */
  function stepsFrom(state: State): State[] {
    const changed = withChanges(data, state.changes);
    const tried = new Set<string>();
    return state.judgement.findings.flatMap((finding) => {
      if (!weighs(finding)) return [];
      const reached: State[] = [];
      for (const attempts of attemptsAt({ finding, judgement: state.judgement, data: changed }))
        for (const cure of attempts) {
          const changes = [...state.changes, ...cure.changes];
          if (tried.has(changesKey(changes))) continue;
          tried.add(changesKey(changes));
          const after = judgedAfter(data, file, settings, changes);
          const hurt = after === undefined ? [] : hurtBy(state.judgement, after, finding);
          if (after === undefined)
            why.set(findingKey(finding), `“${cure.title}” makes a project that cannot be audited`);
          else if (persists(after, finding)) why.set(findingKey(finding), `“${cure.title}” is not enough`);
          else if (hurt.length > 0) why.set(findingKey(finding), `“${cure.title}” makes ${hurt[0]} worse`);
          else {
            const cures = state.judgement.findings.filter((f) => weighs(f) && !persists(after, f));
            reached.push({ steps: [...state.steps, { cure, cures }], changes, judgement: after });
            // What comes later of one way costs more, and brings nothing where this one leaves nothing new behind.
            if (after.findings.every((f) => !weighs(f) || persists(state.judgement, f))) break;
          }
        }
      return reached;
    });
  }
}

/** What a cure makes worse, or brings along that is as bad as what it cures. */
const hurtBy = (before: Judgement, after: Judgement, cured: Finding): readonly string[] => [
  ...worsened(before, after),
  ...brought(before, after, cured).map((f) => f.about),
];

/** How much is wrong, by verdict, worst first. */
const wrongIn = ({ findings }: Judgement): readonly number[] =>
  VERDICTS.slice(0, 4).map((v) => findings.filter((f) => f.verdict === v).length);

/** The least wrong first; of what is equally right, the fewest changes, and those that need no new supply. */
function inOrder(a: State, b: State): number {
  const [x, y] = [wrongIn(a.judgement), wrongIn(b.judgement)];
  const k = x.findIndex((n, at) => n !== y[at]);
  return (k < 0 ? 0 : x[k]! - y[k]!) || a.changes.length - b.changes.length;
}

function booksOf(before: Judgement, after: Judgement): readonly BookChange[] {
  const now = new Map(after.accounts.map((j) => [accountKey(j), j]));
  const order = (v: Verdict): number => VERDICTS.indexOf(v);
  return before.accounts
    .flatMap((j): BookChange[] => {
      const later = now.get(accountKey(j));
      return later && later.verdict !== j.verdict && worse(j.verdict, later.verdict)
        ? [{ before: j, after: later }]
        : [];
    })
    .sort(
      (a, b) => order(a.before.verdict) - order(b.before.verdict) || (a.before.margin ?? 0) - (b.before.margin ?? 0),
    );
}
