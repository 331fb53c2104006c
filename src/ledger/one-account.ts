/** One account by itself, for those who ask after nothing else: a small part of the work of a whole ledger. */
import type { Project } from '../project/project.js';
import type { Account } from './account.js';
import { bootBooks } from './boot.js';
import { hasReserves } from './feeds.js';
import { RUNAWAY, modesOf } from './moments.js';
import type { Asks } from './question.js';
import { questionsOf } from './questions.js';
import { settleAccount } from './settle.js';
import { solver } from './solver.js';

/** The account in its worst stated (or free) mode; undefined where the project has none like it. */
export function runningAccount(project: Project, asks: Asks): Account | undefined {
  const bench = solver(project);
  const modes = modesOf(project, undefined, hasReserves(bench.circuitry)).filter((m) => m.name !== RUNAWAY);
  const question = questionsOf(bench, modes).find(asks);
  return question && settleAccount(bench, question, modes, false);
}

/** The account as it is until firmware runs; undefined where it is none then, or keeps its limits amply. */
export const startingAccount = (project: Project, asks: Asks): Account | undefined =>
  bootBooks(project, undefined, asks).accounts[0];
