/**
 * What is one or the other and nothing tells, judged both ways. What holds whatever the answer is told as it is; what only
 * one answer brings about is unproven, with the question that settles it.
 */
import type { OpenAnswer, OpenQuestion } from '../loads/lowering.js';
import type { Finding } from './finding.js';
import type { JudgedAccount, Verdict } from './verdict.js';
import { worse, worstOf } from './verdict.js';

/** Accounts and findings of the project under one answer. */
export interface Outcome {
  readonly accounts: readonly JudgedAccount[];
  readonly findings: readonly Finding[];
}

/** An open question with what comes of each answer; the first is the one that the project was judged by. */
export interface Asked {
  readonly question: OpenQuestion;
  readonly outcomes: readonly { readonly answer: OpenAnswer; readonly outcome: Outcome }[];
}

/** What comes of the project with a question open. */
export function eitherOr(base: Outcome, { question, outcomes }: Asked): Outcome {
  const isAsked = ({ account }: { readonly account?: JudgedAccount['account'] }): boolean =>
    account?.missing?.figure === question.figure && account.id.startsWith(question.about);
  const asks = [...base.accounts].find(isAsked)?.account.missing?.asks ?? '';
  const answered = outcomes.map(({ answer, outcome }, k) => ({ answer, outcome: k === 0 ? base : outcome }));
  const open = { figure: question.figure, asks };
  return {
    accounts: settled(
      answered.map(({ answer, outcome }) => ({ answer, items: outcome.accounts })),
      accountKey,
      isAsked,
      (j, onlyIf) => ({
        ...j,
        verdict: 'unproven',
        account: { ...j.account, missing: open },
        onlyIf: { ...onlyIf, asks },
      }),
    ),
    findings: settled(
      answered.map(({ answer, outcome }) => ({ answer, items: outcome.findings })),
      findingKey,
      isAsked,
      (f, onlyIf): Finding => ({ ...f, verdict: 'unproven', onlyIf: { ...onlyIf, asks } }),
    ).map((f) =>
      isAsked(f)
        ? { ...f, answers: answered.map(({ answer, outcome }) => ({ answer, accounts: outcome.accounts })) }
        : f,
    ),
  };
}

const accountKey = ({ account: a }: JudgedAccount): string => `${a.id} ${a.quantity} ${a.direction}`;

const findingKey = (f: Finding): string =>
  `${f.rule} ${f.about} ${f.account?.id ?? ''} ${f.account?.quantity ?? ''} ${f.account?.direction ?? ''} ${f.runaway ?? ''}`;

/**
 * Things by their key under every answer: alike under all of them, or one of those that differ.
 *
 * @param stays what is told as it is @param open what becomes of one that only one answer brings about
 */
function settled<T extends { readonly verdict: Verdict }>(
  answered: readonly { readonly answer: OpenAnswer; readonly items: readonly T[] }[],
  keyOf: (item: T) => string,
  stays: (item: T) => boolean,
  open: (item: T, onlyIf: { readonly answer: string; readonly verdict: Verdict }) => T,
): T[] {
  const byKey = answered.map(({ items }) => new Map(items.map((item) => [keyOf(item), item])));
  const keys = new Set(byKey.flatMap((map) => [...map.keys()]));
  return [...keys].flatMap((key): T[] => {
    const items = byKey.map((map) => map.get(key));
    const [first] = items;
    if (first && stays(first)) return [first];
    const verdicts = items.map((item) => item?.verdict ?? 'sound');
    const worst = worstOf(verdicts);
    const bad = items[verdicts.indexOf(worst)]!;
    // What no answer makes worse than worth knowing, and what all answers come to, needs no question.
    if (!worse(worst, 'unproven')) return worst === 'sound' ? (first ? [first] : []) : [bad];
    if (verdicts.every((v) => v === worst)) return [first!];
    const mildest = verdicts.reduce((a, b) => (worse(a, b) ? b : a));
    if (worse(mildest, 'unproven')) return [items[verdicts.indexOf(mildest)]!];
    return [open(bad, { answer: answered[verdicts.indexOf(worst)]!.answer.says, verdict: worst })];
  });
}
