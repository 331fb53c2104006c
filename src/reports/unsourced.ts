/** How much of an audit rests on figures that no document backs: common practice, and what nobody has looked up. */
import type { Judgement } from '../checks/judge.js';
import type { Account } from '../ledger/account.js';
import type { Report } from './report.js';
import type { Origin } from '../loads/branch-plan.js';

const textOf = ({ document, where }: Pick<Origin, 'document' | 'where'>): string =>
  where === undefined || where === '' ? document : `${document}, ${where}`;

/**
 * The unsourced figures that accounts used: those whose source stands in the working of an account, gives one of its limits,
 * or belongs to a part on the way of what is booked on it. Figures that were read and played no part are not among them.
 */
export function unsourcedOf({ accounts, project }: Pick<Judgement, 'accounts' | 'project'>): Report['unsourced'] {
  if (project.unsourced.length === 0) return { memory: 0, practice: 0, figures: [] };
  const used = new Set<string>();
  for (const { account } of accounts)
    for (const { limit } of account.limits) if (limit.origin) used.add(textOf(limit.origin));
  // What is booked on them was solved with the figures of all that stands on its way.
  const booked = new Set(accounts.flatMap(({ account }) => account.entries.map(({ circuit }) => circuit)));
  for (const { on, off } of project.networks)
    for (const { circuit, members } of [...on, ...off])
      if (booked.has(circuit)) for (const { origin } of members) if (origin) used.add(textOf(origin));
  for (const account of working(accounts))
    for (const { sources = [] } of account.steps())
      // A source is named with the part that it is of: 'latch.coil: …'.
      for (const source of sources) used.add(source);
  const all = [...used];
  const known = new Map<string, boolean>();
  const isUsed = (text: string): boolean => {
    if (!known.has(text))
      known.set(
        text,
        all.some((source) => source === text || source.endsWith(`: ${text}`)),
      );
    return known.get(text)!;
  };
  const figures = project.unsourced
    .filter(({ told }) => isUsed(textOf(told)))
    .map(({ figure, basis, where }) => ({ figure, basis, where }))
    .sort((a, b) => (a.basis === b.basis ? (a.figure < b.figure ? -1 : 1) : a.basis === 'memory' ? -1 : 1));
  const count = (basis: 'memory' | 'practice'): number => figures.filter((each) => each.basis === basis).length;
  return { memory: count('memory'), practice: count('practice'), figures };
}

/** Accounts that only add up what is booked on them: their working names no figure but those of what is booked. */
const SUMS: ReadonlySet<string> = new Set(['pin', 'group', 'total', 'rail', 'supply', 'inlet', 'wire']);

/** Accounts whose working may name figures of its own; of channels and circuits that are alike one, for working costs time. */
function working(accounts: Judgement['accounts']): readonly Account[] {
  const alike = new Map<string, Account>();
  for (const { account } of accounts) {
    const { id, kind, direction, quantity } = account;
    const key = `${id.replace(/\d+/g, '#')} ${direction} ${quantity}`;
    if (!SUMS.has(kind) && !alike.has(key)) alike.set(key, account);
  }
  return [...alike.values()];
}

/** '9 figures from memory and 14 of common practice'; undefined when there are none. */
export function unsourcedWords({ memory, practice }: Report['unsourced']): string | undefined {
  const parts = [
    ...(memory > 0 ? [`${memory} from memory`] : []),
    ...(practice > 0 ? [`${practice} of common practice`] : []),
  ];
  if (parts.length === 0) return undefined;
  const [first = '', ...rest] = parts;
  const count = memory > 0 ? memory : practice;
  const named = first.replace(/^(\d+)/, `$1 ${count === 1 ? 'figure' : 'figures'}`);
  return [named, ...rest].join(' and ');
}
