/** What a comparison says, for every view of it and for other programs: `schemas/compare.schema.json` says the same. */
import type { Finding } from '../checks/finding.js';
import type { JudgedAccount } from '../checks/verdict.js';
import type { Document } from '../source/document.js';
import type { ComparedAccount, Comparison, FindingChange, Version } from '../studies/compare.js';
import type { Remedy } from '../remedies/prove.js';
import type { Rewired } from '../studies/rewiring.js';
import { says } from '../wording/sentences.js';
import type { Direction, QuantityName, ReportAccount, ReportPlace, UnreadReport, Verdict } from './report.js';
import { UNIT_OF } from './unit-of.js';

export interface ComparedFinding {
  readonly change: FindingChange['way'];
  readonly rule: string;
  readonly about: string;
  /** The account that it judges or shows. */
  readonly account?: string;
  readonly quantity?: QuantityName;
  readonly direction?: Direction;
  /** What it was about under its old name. */
  readonly was?: string;
  readonly before: Exclude<Verdict, 'sound'> | null;
  readonly after: Exclude<Verdict, 'sound'> | null;
  /** Signed shares of the limit that gives the verdict. */
  readonly margin: { readonly before: number | null; readonly after: number | null };
  /** The sentence of the later version that has it. */
  readonly says: string;
  /** That of the later version, or the former one that no longer is. */
  readonly waiver?: {
    readonly reason: string;
    readonly until?: string;
    readonly in: 'before' | 'after';
    readonly place?: ReportPlace;
  };
  /** Of what the change makes worse and weighs most: the cure that is proved to help, and the verdict on the whole after it. */
  readonly cure?: { readonly title: string; readonly verdict: Verdict };
  /** In the later version. */
  readonly place?: ReportPlace;
}

export interface AccountSide {
  readonly verdict: Verdict;
  readonly draw: ReportAccount['draw'];
  /** What is held against the limit, and the limit. */
  readonly worst: number | null;
  readonly limit: number | null;
  readonly margin: number | null;
  readonly mode: string;
}

export interface AccountReport {
  readonly change: ComparedAccount['way'];
  readonly account: string;
  /** Its name before. */
  readonly was?: string;
  readonly title: string;
  readonly quantity: QuantityName;
  readonly direction: Direction;
  readonly unit: ReportAccount['unit'];
  readonly before: AccountSide | null;
  readonly after: AccountSide | null;
}

export interface WiringReport {
  readonly section: string;
  readonly name: string;
  readonly change: Rewired['change'];
  readonly was?: string;
  readonly settings: readonly { readonly path: string; readonly before: unknown; readonly after: unknown }[];
}

/** Errors of one version. */
export interface SideErrors {
  readonly side: 'before' | 'after';
  readonly errors: UnreadReport['errors'];
}

export interface FileComparison {
  readonly file: string;
  /** The other file, where two of different names are compared. */
  readonly was?: string;
  /** `repaired`: the former version could not be read, and everything in the later one is new. */
  readonly state: 'compared' | 'added' | 'removed' | 'repaired' | 'unread';
  readonly project: string;
  readonly change: Comparison['way'] | 'unread';
  readonly verdict: { readonly before: Verdict | null; readonly after: Verdict | null };
  readonly findings: readonly ComparedFinding[];
  readonly accounts: readonly AccountReport[];
  readonly wiring: readonly WiringReport[];
  readonly unread: readonly SideErrors[];
}

export interface ComparisonReport {
  readonly ampledger: 1;
  readonly before: string;
  readonly after: string;
  readonly change: Comparison['way'] | 'unread';
  /** Something got worse than what the failing verdict allows. */
  readonly fails: boolean;
  /** Files that are the same byte for byte, with their own profiles; they are not audited. */
  readonly unchanged: number;
  readonly files: readonly FileComparison[];
}

/** So many findings have their cure told: each is looked for by many audits, and one often cures the next, too. */
const MOST_CURES = 2;

/** @param document of the later version @param cures of its findings, asked for the first that the change makes worse */
export function fileComparison(
  names: { readonly file: string; readonly was?: string },
  before: Version | undefined,
  after: Version | undefined,
  { way, findings, accounts, wiring }: Comparison,
  document: Document | undefined,
  cures: (f: Finding) => readonly Remedy[] = () => [],
): FileComparison {
  return {
    ...names,
    state: before === undefined ? 'added' : after === undefined ? 'removed' : 'compared',
    project: (after ?? before)?.judgement.project.title ?? '',
    change: way,
    verdict: { before: before?.judgement.verdict ?? null, after: after?.judgement.verdict ?? null },
    findings: findings.map((f, index) => findingOf(f, document, index < MOST_CURES ? cures : () => [])),
    accounts: accounts.map(accountOf),
    wiring: wiring.map(({ settings, ...rest }) => ({
      ...rest,
      settings: settings.map(({ path, before: b, after: a }) => ({ path, before: b ?? null, after: a ?? null })),
    })),
    unread: [],
  };
}

/** A file that can be read again, or is gone: what stands in it is new, since nobody knows what stood there. */
export const repairedComparison = (file: FileComparison, errors: UnreadReport['errors']): FileComparison => ({
  ...file,
  state: file.verdict.after === null ? 'removed' : 'repaired',
  unread: [{ side: 'before', errors }],
});

/** A file that could not be read on one side or on both. */
export const unreadComparison = (
  names: { readonly file: string; readonly was?: string },
  unread: readonly SideErrors[],
): FileComparison => ({
  ...names,
  state: 'unread',
  project: '',
  change: 'unread',
  verdict: { before: null, after: null },
  findings: [],
  accounts: [],
  wiring: [],
  unread,
});

/** Of several files what the worst of them is. */
export function wholeChange(files: readonly Pick<FileComparison, 'change'>[]): ComparisonReport['change'] {
  const ways = new Set(files.map(({ change }) => change));
  if (ways.has('unread')) return 'unread';
  if (ways.has('mixed') || (ways.has('worse') && ways.has('better'))) return 'mixed';
  return (['worse', 'better', 'changed'] as const).find((way) => ways.has(way)) ?? 'same';
}

const leftOf = (f: Finding | undefined): number | null => f?.by?.left ?? null;

function findingOf(
  { way, before, after }: FindingChange,
  document: Document | undefined,
  cures: (f: Finding) => readonly Remedy[],
): ComparedFinding {
  const told = (after ?? before)!;
  const isWorse = (way === 'new' || way === 'worse') && told.verdict !== 'note';
  const cure = isWorse ? cures(told).find((remedy) => remedy.after.cures) : undefined;
  return {
    change: way,
    rule: told.rule,
    about: told.about,
    ...(told.account && {
      account: told.account.id,
      quantity: told.account.quantity,
      direction: told.account.direction,
    }),
    ...(before && after && before.about !== after.about && { was: before.about }),
    before: before?.verdict ?? null,
    after: after?.verdict ?? null,
    margin: { before: leftOf(before), after: leftOf(after) },
    says: says(told),
    ...waiverOf(before, after, document),
    ...(cure && { cure: { title: cure.title, verdict: cure.after.verdict } }),
    ...(after && document && { place: document.place(after.path) }),
  };
}

function waiverOf(
  before: Finding | undefined,
  after: Finding | undefined,
  document: Document | undefined,
): Pick<ComparedFinding, 'waiver'> {
  const waiver = after?.waiver ?? before?.waiver;
  if (waiver === undefined) return {};
  const { reason, until, path } = waiver;
  const isNow = after?.waiver !== undefined;
  return {
    waiver: {
      reason,
      ...(until !== undefined && { until }),
      in: isNow ? 'after' : 'before',
      ...(isNow && document && { place: document.place(path) }),
    },
  };
}

function accountOf({ way, before, after }: ComparedAccount): AccountReport {
  const { account } = (after ?? before)!;
  return {
    change: way,
    account: account.id,
    ...(before && after && before.account.id !== after.account.id && { was: before.account.id }),
    title: account.title,
    quantity: account.quantity,
    direction: account.direction,
    unit: UNIT_OF[account.quantity],
    before: before ? sideOf(before) : null,
    after: after ? sideOf(after) : null,
  };
}

const sideOf = ({ account: a, verdict, margin, by }: JudgedAccount): AccountSide => ({
  verdict,
  draw: a.draw ? { min: a.draw.min, typ: a.draw.typ, max: a.draw.max } : null,
  worst: by?.draw ?? (a.direction === 'at-least' ? a.draw?.min : a.draw?.max) ?? null,
  limit: by?.value ?? null,
  margin: margin ?? null,
  mode: a.mode,
});
