/**
 * The ledger: every account of a project in every mode, as the envelope over its corners, with the corner of each end kept.
 */
import type { Project } from '../project/project.js';
import type { Account } from './account.js';
import { batteryAccounts } from './batteries.js';
import { hasReserves } from './feeds.js';
import type { ModeSearch } from './moments.js';
import { RUNAWAY, modesOf, pulsesEnd, withoutPulses } from './moments.js';
import type { SupplyEnergy } from './energy.js';
import { energyOf } from './energy.js';
import { measuredAccounts } from './measured.js';
import type { Question } from './question.js';
import type { Solver } from './solver.js';
import { solver } from './solver.js';
import { questionsOf } from './questions.js';
import { settleAccount, twinAccount } from './settle.js';
import { deadAccounts, deadModes } from './without.js';

export interface Ledger {
  readonly project: Project;
  readonly solver: Solver;
  /** Every account in its worst stated (or free) mode. */
  readonly accounts: readonly Account[];
  /** The accounts that may fail in the runaway state, where that differs: what holds there is no news. */
  readonly runaway: readonly Account[];
  /** Accounts in the modes in which some supplies are dead. */
  readonly dead: readonly Account[];
  /** What each supply gives on average over the modes' shares of the time; empty without shares. */
  readonly energy: readonly SupplyEnergy[];
}

/** A project to be asked, and what is asked of it. */
interface Asked {
  readonly bench: Solver;
  readonly questions: readonly Question[];
}

function askedOf(project: Project, modes: readonly ModeSearch[]): Asked {
  const bench = solver(project);
  return { bench, questions: questionsOf(bench, modes) };
}

/** Keeps the books of a project. @param only the name of the one mode to look at */
export function ledgerOf(project: Project, only?: string): Ledger {
  const bench = solver(project);
  const modes = modesOf(project, only, hasReserves(bench.circuitry));
  const asked: Asked = { bench, questions: questionsOf(bench, modes) };
  const promised = modes.filter((m) => m.name !== RUNAWAY);
  const dead = deadModes(project, only);
  const unpromised = modes.filter((m) => m.name === RUNAWAY);
  const answer = (of: Asked, among: readonly ModeSearch[], onlyFailing: boolean): Account[] => {
    const first = new Map<string, { readonly question: Question; readonly account: Account }>();
    return of.questions
      .flatMap((question): Account[] => {
        const known = question.twin === undefined ? undefined : first.get(question.twin);
        const settle = (): Account | undefined => settleAccount(of.bench, question, among, onlyFailing);
        if (known) return [twinAccount(known, question, settle)];
        const account = settle();
        if (account && question.twin !== undefined) first.set(question.twin, { question, account });
        return account ? [account] : [];
      })
      .filter(carries);
  };
  // A program that hangs ends no pulse.
  const hung = unpromised.length > 0 && pulsesEnd(project) ? askedOf(withoutPulses(project), unpromised) : asked;
  return {
    project,
    solver: bench,
    accounts: [
      ...answer(asked, promised, false),
      ...batteryAccounts(bench, [...promised, ...dead], only === undefined),
      ...measuredAccounts(bench, promised),
    ],
    runaway: answer(hung, unpromised, true),
    dead: deadAccounts(dead),
    energy: energyOf(bench, [...promised, ...dead]),
  };
}

/** Currents below this, amperes, are those of junctions that are off: a pin that carries no more is no account. */
const TRACE = 1e-8;

/** A pin in use has two directions, of which most carry nothing. */
const carries = (a: Account): boolean =>
  a.draw === undefined || a.draw.max > TRACE || !(a.kind === 'pin' || a.kind === 'group' || a.kind === 'total');
