/** From checked data to findings: project, ledger, verdicts, rules. Cures and studies call this to prove themselves. */
import type { Catalogue } from '../catalogue/catalogue.js';
import type { BootBooks } from '../ledger/boot.js';
import { bootBooks } from '../ledger/boot.js';
import type { WaysIntoDead } from '../ledger/into-dead.js';
import { NO_WAYS } from '../ledger/into-dead.js';
import type { Ledger } from '../ledger/ledger.js';
import { ledgerOf } from '../ledger/ledger.js';
import { waysIntoAll, whileDead } from '../ledger/without.js';
import { BOOT } from '../ledger/moments.js';
import type { Project } from '../project/project.js';
import { resolve } from '../project/resolve.js';
import type { Interval } from '../quantity/interval.js';
import { didYouMean, oneOf } from '../source/did-you-mean.js';
import type { Problem } from '../source/place.js';
import type { Outcome } from './either-or.js';
import { eitherOr } from './either-or.js';
import type { Finding, Judged } from './finding.js';
import { limitFindings } from './limit-findings.js';
import { LIMIT_RULES, RULE_NAMES, WIRING_RULES } from './rules.js';
import type { JudgedAccount, Verdict } from './verdict.js';
import { VERDICTS, accountKey, judgeAccount, judgeLimit, worse, worstOf } from './verdict.js';
import { waived } from './waived.js';

export interface JudgeOptions {
  readonly catalogue: Catalogue;
  /** The one mode to look at. */
  readonly mode?: string;
  /** °C, in place of the file's. */
  readonly ambient?: Interval;
  /** '2026-11-25': waivers run out. Unless said, none has. */
  readonly today?: string;
}

export interface Judgement {
  readonly project: Project;
  readonly ledger: Ledger;
  readonly accounts: readonly JudgedAccount[];
  readonly runaway: readonly JudgedAccount[];
  /** What circuits do until firmware runs. */
  readonly boot: BootBooks;
  /** Worst first. */
  readonly findings: readonly Finding[];
  readonly verdict: Verdict;
  /** What finds a way into the rails of dead supplies. */
  readonly ways: WaysIntoDead;
}

/** A project's data with every name in it bound, and what binds it, to be judged. */
export interface Judgeable {
  readonly project: Project;
  readonly data: unknown;
  readonly file: string;
  readonly options: JudgeOptions;
}

/** Binds a project's data. @param file its name, for the report */
export function judgeable(
  data: unknown,
  file: string,
  options: JudgeOptions,
): Judgeable | { readonly problems: readonly Problem[] } {
  const resolved = resolve(data, file, options.catalogue, options);
  if ('problems' in resolved) return resolved;
  const { project } = resolved;
  const { mode } = options;
  if (mode !== undefined && mode !== BOOT && !project.modes.some((m) => m.name === mode))
    return { problems: [noMode(project, mode)] };
  const unknown = project.waivers.filter(({ rule }) => !RULE_NAMES.includes(rule)).map(noRule);
  if (unknown.length > 0) return { problems: unknown };
  return { project, data, file, options };
}

/** Judges a project's data. @param file its name, for the report */
export function judge(
  data: unknown,
  file: string,
  options: JudgeOptions,
): Judgement | { readonly problems: readonly Problem[] } {
  const bound = judgeable(data, file, options);
  return 'problems' in bound ? bound : judgeBound(bound);
}

/** Judges what is bound. */
export const judgeBound = (bound: Judgeable): Judgement =>
  withWaivers(judgedOpen(judgeProject(bound.project, bound.options.mode), bound), bound.options);

/** A judgement with what the file leaves open judged under every answer. */
function judgedOpen(base: Judgement, { project, data, file, options }: Judgeable): Judgement {
  if (project.open.length === 0) return base;
  const outcome = project.open.reduce<Outcome>((sofar, question) => {
    const outcomes = question.answers.map((answer, k) => {
      if (k === 0) return { answer, outcome: base };
      const answers = new Map([[`${question.about} ${question.figure}`, answer.value]]);
      const resolved = resolve(data, file, options.catalogue, { ...options, answers });
      return { answer, outcome: 'problems' in resolved ? base : judgeProject(resolved.project, options.mode) };
    });
    return eitherOr(sofar, { question, outcomes });
  }, base);
  const findings = [...outcome.findings].sort(inOrder);
  return { ...base, accounts: outcome.accounts, findings, verdict: headline(findings) };
}

/** What the file sets aside put on its findings; of one mode alone nobody can say that a waiver is of no use. */
function withWaivers(judgement: Judgement, { mode, today }: JudgeOptions): Judgement {
  const { waivers } = judgement.project;
  if (waivers.length === 0) return judgement;
  const findings = waived(judgement.findings, waivers, today)
    .filter((f) => mode === undefined || f.rule !== 'waiver-unused')
    .sort(inOrder);
  return { ...judgement, findings, verdict: headline(findings) };
}

function noRule({ rule, path }: Project['waivers'][number]): Problem {
  return {
    path: [...path, 'rule'],
    on: 'value',
    says: `there is no rule \`${rule}\``,
    expected: didYouMean(rule, RULE_NAMES, 'a rule as the report prints it'),
  };
}

function noMode(project: Project, mode: string): Problem {
  const names = project.modes.map((m) => m.name);
  const expected = names.length === 0 ? 'the file states no modes' : didYouMean(mode, names, oneOf(names));
  return { path: ['modes'], on: 'key', says: `there is no mode \`${mode}\``, expected };
}

export function judgeProject(project: Project, mode?: string): Judgement {
  const ledger = ledgerOf(project, mode);
  const running = ledger.accounts.map((a) => judgeAccount(a, project.policy));
  const boot = bootBooks(project, mode);
  const starting = [...boot.accounts, ...ledger.dead].map((a) => judgeAccount(a, project.policy));
  const accounts = mode === undefined ? withStart(running, starting) : [...running, ...starting];
  const promised = new Map(accounts.map((j) => [accountKey(j), j.verdict]));
  // Only what fails in the runaway state and holds in every mode is news.
  const runaway = ledger.runaway
    .map((a) => judgeAccount(a, project.policy))
    .filter(
      (j) =>
        (j.verdict === 'breach' || j.verdict === 'strain') && worse(j.verdict, promised.get(accountKey(j)) ?? 'sound'),
    );
  // What a limit makes a note of is told even where another one weighs more.
  const noted = starting.flatMap(({ account }): JudgedAccount[] => {
    const by = account.limits.find((met) => judgeLimit(account, met, project.policy) === 'note');
    return by ? [{ account, verdict: 'note', margin: by.left, by }] : [];
  });
  const dead = mode === undefined ? whileDead(project) : [];
  const ways = mode === undefined ? waysIntoAll(project) : NO_WAYS;
  const judged: Judged = { ledger, accounts, runaway, boot, dead, ways, noted: mode === undefined ? noted : [] };
  const findings = [...WIRING_RULES.flatMap((r) => r.find(judged)), ...limitFindings(judged, LIMIT_RULES)].sort(
    inOrder,
  );
  return { project, ledger, accounts, runaway, boot, findings, verdict: headline(findings), ways };
}

/** Accounts, each in the state that is worse for it: with firmware running and all supplies alive, or until it does, or without some. */
function withStart(running: readonly JudgedAccount[], starting: readonly JudgedAccount[]): readonly JudgedAccount[] {
  const failing = new Map(
    starting.filter((j) => j.verdict !== 'note' && j.verdict !== 'sound').map((j) => [accountKey(j), j]),
  );
  if (failing.size === 0) return running;
  const known = new Set(running.map(accountKey));
  const isWorse = (j: JudgedAccount, than: JudgedAccount): boolean =>
    worse(j.verdict, than.verdict) || (j.verdict === than.verdict && (j.margin ?? 0) < (than.margin ?? 0) - NEARLY);
  return [
    ...running.map((j) => {
      const start = failing.get(accountKey(j));
      return start !== undefined && isWorse(start, j) ? start : j;
    }),
    ...[...failing].flatMap(([key, j]) => (known.has(key) ? [] : [j])),
  ];
}

/** Margins that differ by less are the same. */
const NEARLY = 1e-6;

const inOrder = (a: Finding, b: Finding): number =>
  VERDICTS.indexOf(a.verdict) - VERDICTS.indexOf(b.verdict) ||
  RULE_NAMES.indexOf(a.rule) - RULE_NAMES.indexOf(b.rule) ||
  (a.by?.left ?? 0) - (b.by?.left ?? 0) ||
  (a.about < b.about ? -1 : 1);

/** Nothing worse than notes is sound. */
function headline(findings: readonly Finding[]): Verdict {
  const worst = worstOf(findings.filter((f) => f.waiver === undefined).map((f) => f.verdict));
  return worst === 'note' ? 'sound' : worst;
}
