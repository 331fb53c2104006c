/** A judged variant as the report has it. */
import type { Finding } from '../checks/finding.js';
import { LIMIT_RULES } from '../checks/rules.js';
import type { JudgedAccount } from '../checks/verdict.js';
import type { Path } from '../source/document.js';
import type { AccountChange } from '../studies/difference.js';
import type { JudgedVariant } from '../studies/variants.js';
import { tightestOf } from '../studies/variants.js';
import { fewWords } from '../wording/few-words.js';
import { countsOf } from './counts.js';
import type {
  ReportAccountChange,
  ReportAccountSide,
  ReportFindingName,
  ReportPlace,
  ReportVariant,
} from './report.js';

/** @param place where a path of the file stands */
export function variantOf(
  { variant, judgement, difference }: JudgedVariant,
  place: (path: Path) => ReportPlace,
): ReportVariant {
  const tightest = tightestOf(judgement);
  return {
    name: variant.name,
    ...(variant.note !== undefined && { note: variant.note }),
    changes: variant.changes.map(({ path, value }) => ({ path: path.join('.'), value: value ?? null })),
    verdict: judgement.verdict,
    counts: countsOf(judgement.findings),
    tightest: tightest ? { ...named(tightest), ...side(tightest) } : null,
    better: difference.better.map(changeOf),
    worse: difference.worse.map(changeOf),
    gone: difference.gone.map(nameOf),
    new: difference.fresh.map(nameOf),
    place: place(variant.path),
  };
}

const named = ({ account: a }: JudgedAccount) => ({
  account: a.id,
  title: a.title,
  quantity: a.quantity,
  direction: a.direction,
});

const side = ({ account: a, verdict, margin, by }: JudgedAccount): ReportAccountSide => ({
  verdict,
  draw: by?.draw ?? (a.direction === 'at-least' ? a.draw?.min : a.draw?.max) ?? null,
  limit: by?.value ?? null,
  margin: margin ?? null,
});

const changeOf = ({ before, after }: AccountChange): ReportAccountChange => ({
  ...named((before ?? after)!),
  before: before ? side(before) : null,
  after: after ? side(after) : null,
});

const nameOf = (f: Finding): ReportFindingName => ({
  rule: f.rule,
  about: f.about,
  verdict: f.verdict,
  ...(f.account && ABOUT_LIMITS.has(f.rule) && { account: f.account.id }),
  says: fewWords(f),
});

const ABOUT_LIMITS = new Set(LIMIT_RULES.map((rule) => rule.name));
