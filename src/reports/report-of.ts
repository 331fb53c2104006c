/** From a judgement to the report: accounts and findings with places, sentences, working and cures put in. */
import type { Finding } from '../checks/finding.js';
import type { Judgement } from '../checks/judge.js';
import type { JudgedAccount } from '../checks/verdict.js';
import type { Account, LimitMet } from '../ledger/account.js';
import type { Method, Statistics } from '../ledger/statistics.js';
import { PERCENTILES } from '../ledger/statistics.js';
import type { Origin } from '../loads/branch-plan.js';
import type { Cures } from '../remedies/cures.js';
import type { Remedy } from '../remedies/prove.js';
import type { Document, Path } from '../source/document.js';
import { deadAssumptions } from '../wording/dead-assumptions.js';
import { asks, says } from '../wording/sentences.js';
import { choicesIn } from './report-choice.js';
import { countsOf } from './counts.js';
import { variantOf } from './report-variant.js';
import type { JudgedVariant } from '../studies/variants.js';
import type { Report, ReportAccount, ReportCite, ReportFinding, ReportLimit, ReportPlace } from './report.js';
import { UNIT_OF } from './unit-of.js';
import { unsourcedOf } from './unsourced.js';

export interface ReportParts {
  /** The proved remedies of each finding. */
  readonly cures: Cures;
  /** Where they were asked for. */
  readonly statistics?: { readonly method: Method; readonly of: ReadonlyMap<Account, Statistics> } | undefined;
  /** The file's variants beside it. */
  readonly variants?: readonly JudgedVariant[];
  /** The one variant that was audited in place of the file. */
  readonly variant?: string;
}

export function reportOf(
  judgement: Judgement,
  document: Document,
  { cures, statistics, variants = [], variant }: ReportParts,
): Report {
  const { project } = judgement;
  const place = (path: Path): ReportPlace => document.place(path);
  const findings = judgement.findings.map((f) => findingOf(f, place, cures(f)));
  return {
    ampledger: 1,
    project: project.title,
    file: project.file,
    ...(variant !== undefined && { variant }),
    verdict: judgement.verdict,
    ambient: { min: project.ambient.min, max: project.ambient.max },
    ...(project.places.size > 0 && {
      places: [...project.places].map(([name, { min, max }]) => ({ name, min, max })),
    }),
    policy: project.policy.name,
    modes: project.modes.map((m) => ({
      name: m.name,
      active: [...m.active],
      ...(m.share !== undefined && { share: m.share }),
    })),
    counts: countsOf(judgement.findings),
    ...(statistics && { statistics: methodWords(statistics.method) }),
    accounts: [...judgement.accounts].sort(byMargin).map((j) => accountOf(j, place, statistics?.of.get(j.account))),
    findings,
    assumptions: [...project.assumptions, ...deadAssumptions(judgement.ways, project)].map(
      ({ about, says: text, path }) => ({
        about,
        says: text,
        ...(path && { place: place(path) }),
      }),
    ),
    unsourced: unsourcedOf(judgement),
    averages: judgement.ledger.energy.map(({ supply, amps, watts, takes }) => ({
      supply,
      current: amps,
      power: watts,
      takes: takes.map((each) => ({ circuit: each.circuit, power: each.watts })),
    })),
    ...choicesIn(judgement, place),
    cautions: project.cautions,
    notes: [...project.notes, ...cutShort(cures.untried)],
    ...(variants.length > 0 && { variants: variants.map((v) => variantOf(v, place)) }),
  };
}

/** Says for how many findings no cure was tried, where the project is too large for all of them. */
const cutShort = (untried: number): Report['notes'] =>
  untried === 0
    ? []
    : [
        {
          about: 'cures',
          text: `for ${untried === 1 ? 'one finding' : `${untried} findings`} none was tried, because each is an audit of this large project: cure those above and audit again`,
        },
      ];

const methodWords = (method: Method): NonNullable<Report['statistics']> =>
  method.method === 'rss' ? method : { ...method, percentiles: PERCENTILES };

const byMargin = (a: JudgedAccount, b: JudgedAccount): number =>
  (a.margin ?? Infinity) - (b.margin ?? Infinity) || (a.account.id < b.account.id ? -1 : 1);

function accountOf(
  { account: a, verdict, margin, by }: JudgedAccount,
  place: (path: Path) => ReportPlace,
  statistics: Statistics | undefined,
): ReportAccount {
  return {
    id: a.id,
    kind: a.kind,
    title: a.title,
    direction: a.direction,
    quantity: a.quantity,
    unit: UNIT_OF[a.quantity],
    draw: a.draw ?? null,
    ...(statistics && { statistics }),
    mode: a.mode,
    ...(a.mode === 'free' || a.mode === 'runaway' ? { moment: a.moment } : {}),
    ...(a.bound && { bound: true as const }),
    limits: governingFirst(a.limits, by).map((l) => limitOf(l, a)),
    ...(a.reading && {
      measured: {
        of: a.reading.of.id,
        min: a.reading.value.min,
        max: a.reading.value.max,
        stated: a.reading.stated,
      },
    }),
    margin: margin ?? null,
    verdict,
    entries: a.entries.map(({ circuit, min, typ, max }) => ({ circuit, min, typ, max })),
    place: place(a.path),
  };
}

/** The limit that gives the verdict stands first. */
const governingFirst = (limits: readonly LimitMet[], by: LimitMet | undefined): readonly LimitMet[] =>
  by === undefined ? limits : [by, ...limits.filter((l) => l !== by)];

function limitOf({ limit, value, draw }: LimitMet, account: Account): ReportLimit {
  return {
    value,
    ...(account.draw && { draw }),
    stated: limit.stated,
    grade: limit.grade,
    ...(limit.origin && { cite: citeOf(limit.origin) }),
    ...(limit.condition !== undefined && { condition: limit.condition }),
    ...(limit.range && { range: limit.range }),
  };
}

const citeOf = (o: Origin): ReportCite => ({
  document: o.document,
  basis: o.basis,
  ...(o.where !== undefined && { where: o.where }),
});

function findingOf(f: Finding, place: (path: Path) => ReportPlace, cures: readonly Remedy[]): ReportFinding {
  const a: Account | undefined = f.account;
  const question = asks(f);
  return {
    rule: f.rule,
    family: f.family,
    verdict: f.verdict,
    about: f.about,
    ...(a && { account: a.id, quantity: a.quantity, direction: a.direction, mode: a.mode }),
    says: says(f),
    ...(question !== undefined && { asks: question }),
    place: place(f.path),
    related: f.related.map(({ path, name }) => ({ says: name, place: place(path) })),
    working: f.steps ? [...f.steps] : a ? [...a.steps()] : [],
    remedies: cures,
    ...(f.waiver && {
      waiver: {
        reason: f.waiver.reason,
        ...(f.waiver.until !== undefined && { until: f.waiver.until }),
        place: place(f.waiver.path),
      },
    }),
  };
}
