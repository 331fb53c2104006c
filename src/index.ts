/** The library: a text in, an audit out. Pure and synchronous; it runs in a browser as well as behind the command. */
import { builtIn } from './catalogue/built-in.js';
import type { Catalogue } from './catalogue/catalogue.js';
import type { ProfileFolder, WithFolders } from './catalogue/folders.js';
import { foldersAsked } from './catalogue/folders.js';
import { withOwn } from './catalogue/own.js';
import type { JudgeOptions, Judgement } from './checks/judge.js';
import { judge } from './checks/judge.js';
import { curesFor } from './remedies/cures.js';
import type { Method } from './ledger/statistics.js';
import { statisticsOf } from './ledger/statistics.js';
import { reportOf } from './reports/report-of.js';
import type { Report } from './reports/report.js';
import type { Interval } from './quantity/interval.js';
import type { Step } from './loads/account-plan.js';
import { didYouMean } from './source/did-you-mean.js';
import { nearestSpelling } from './source/nearest-spelling.js';
import type { Diagnostic, Document, Problem } from './source/document.js';
import { quote, quoteList } from './source/visible.js';
import { readDocument } from './source/read.js';
import type { WorkingSection } from './reports/working-for.js';
import { workingFor } from './reports/working-for.js';
import { boardsOf } from './checks/relay-boards/boards.js';
import type { Advice } from './studies/advice.js';
import { adviceFor } from './studies/advice.js';
import { editedText } from './source/edit.js';
import type { Headroom } from './studies/headroom.js';
import { headroomOf } from './studies/headroom.js';
import { originalOf } from './studies/one-more.js';
import type { BoardOptions } from './studies/options.js';
import { boardOptions } from './studies/options.js';
import type { Variant } from './studies/variant-changes.js';
import { variantsOf } from './studies/variant-changes.js';
import { variantDocument } from './studies/variant-document.js';
import { judgeVariants } from './studies/variants.js';
import type { Comparison, Version } from './studies/compare.js';
import { comparisonOf } from './studies/compare.js';
import type { FileComparison } from './reports/compare-report.js';
import { fileComparison } from './reports/compare-report.js';

export type { Catalogue } from './catalogue/catalogue.js';
export type { Report, UnreadReport } from './reports/report.js';
export type { Diagnostic, Document } from './source/document.js';
export type { ProfileFile, ProfileFolder, WithFolders } from './catalogue/folders.js';
export { builtIn } from './catalogue/built-in.js';

export interface AuditOptions {
  /** Profiles to look up; those of the package unless said. */
  readonly catalogue?: Catalogue;
  /** The one mode to look at. */
  readonly mode?: string | undefined;
  /** Ambient in °C, in place of the file's. */
  readonly ambient?: Interval | undefined;
  /** The variant to look at in place of the file as it stands. */
  readonly variant?: string | undefined;
  /**
   * Beside the extremes, which alone are judged: the root of the sum of squares of what each uncertain figure does, or the
   * percentiles 0.135, 50 and 99.865 of builds at random, in which each figure lies with equal chance anywhere below and
   * above its typical value.
   */
  readonly corners?: 'extreme' | 'rss' | 'monte-carlo' | undefined;
  /** How many builds are drawn; 1000 unless said. */
  readonly builds?: number | undefined;
  /** Where the draws start: the same seed draws the same builds; 1 unless said. */
  readonly seed?: number | undefined;
  /** Today, as 2026-11-25: waivers expire. */
  readonly today?: string;
  /** False: findings only, without the proved remedies, each of which is an audit of its own. */
  readonly advice?: boolean;
}

/** Reads a project file: its document with places, and everything that is wrong with the text. @param file its name, for the messages */
export const read = (
  text: string | Uint8Array,
  file: string,
): { readonly document?: Document; readonly errors: readonly Diagnostic[] } => readDocument(text, file);

/** The folders of own profiles that a document asks for under `catalogue`, as it names them. */
export const foldersOf = ({ data }: Document): readonly string[] =>
  foldersAsked(data).flatMap(({ name, problem }) => (problem ? [] : [name]));

/** The document with what was found in its folders, as texts: the library itself reads no files. */
export const withFolders = (document: Document, folders: readonly ProfileFolder[] = []): WithFolders => ({
  ...document,
  folders,
});

/** Audits a document: the report, or all that kept it from being audited. */
export function audit(
  document: Document,
  options: AuditOptions = {},
): { readonly report?: Report; readonly errors: readonly Diagnostic[] } {
  const judged = judgeDocument(document, options);
  if (judged.errors !== undefined) return { errors: judged.errors };
  const { judgement, settings, of: file, variants } = judged;
  const beside = judgeVariants(file.data, file.file, settings, judgement, variants);
  if (beside.problems.length > 0) return { errors: told(beside.problems, file) };
  const cures = options.advice === false ? NO_CURES : curesFor(file.data, file.file, settings, judgement);
  const method = methodOf(options);
  const statistics = method && { method, of: statisticsOf(judgement.ledger, method) };
  const { variant } = options;
  const parts = { cures, statistics, variants: beside.judged, ...(variant !== undefined && { variant }) };
  return { report: reportOf(judgement, file, parts), errors: [] };
}

const NO_CURES = Object.assign(() => [], { untried: 0 });

function methodOf({ corners = 'extreme', builds = 1000, seed = 1 }: AuditOptions): Method | undefined {
  switch (corners) {
    case 'extreme':
      return undefined;
    case 'rss':
      return { method: 'rss' };
    case 'monte-carlo':
      return { method: 'monte-carlo', builds, seed };
    default:
      return corners satisfies never;
  }
}

/** The sums behind an account, a circuit or a finding's rule. `nearest` stands when the name was not found. */
export function workingOf(
  document: Document,
  name: string,
  options: AuditOptions = {},
): {
  readonly title: string;
  readonly steps: readonly Step[];
  /** The same steps, by account. */
  readonly sections?: readonly WorkingSection[];
  readonly nearest?: readonly string[];
  readonly errors?: readonly Diagnostic[];
} {
  const judged = judgeDocument(document, options);
  if (judged.errors !== undefined) return { title: name, steps: [], errors: judged.errors };
  const working = workingFor(judged.judgement, name);
  if (working.steps.length > 0 || working.found)
    return { title: working.title, steps: working.steps, sections: working.sections };
  const nearest = nearestSpelling(name, working.known);
  return { title: name, steps: [], nearest: nearest === undefined ? [] : [nearest] };
}

/** Supply and jumper options of the relay boards, or of one of them. `nearest` stands when there is no board of that name. */
export function optionsOf(
  document: Document,
  board?: string,
  options: AuditOptions = {},
): {
  readonly project: string;
  readonly boards: readonly BoardOptions[];
  readonly nearest?: readonly string[];
  readonly errors?: readonly Diagnostic[];
} {
  const judged = judgeDocument(document, options);
  if (judged.errors !== undefined) return { project: '', boards: [], errors: judged.errors };
  const { judgement, settings, of: file } = judged;
  const project = judgement.project.title;
  const known = boardsOf(judgement.project).map((b) => b.owner);
  if (board !== undefined && !known.includes(board)) {
    const nearest = nearestSpelling(board, known);
    return { project, boards: [], nearest: nearest === undefined ? known : [nearest] };
  }
  return { project, boards: boardOptions(file.data, file.file, settings, judgement, board) };
}

/** How many more of a load fit, and what stops the next one. `nearest` stands when nothing is called so. */
export function headroom(
  document: Document,
  load: string,
  options: AuditOptions = {},
): {
  readonly project: string;
  readonly headroom?: Headroom;
  readonly nearest?: readonly string[];
  readonly errors?: readonly Diagnostic[];
} {
  const judged = judgeDocument(document, options);
  if (judged.errors !== undefined) return { project: '', errors: judged.errors };
  const { judgement, settings, of: file } = judged;
  const { title: project, circuits } = judgement.project;
  const original = originalOf(judgement.project, file.data, load);
  if (original === undefined) {
    const known = [...new Set(circuits.flatMap((c) => [c.owner, c.id]))];
    const nearest = nearestSpelling(load, known);
    return { project, nearest: nearest === undefined ? known.slice(0, 8) : [nearest] };
  }
  return { project, headroom: headroomOf(file.data, file.file, settings, judgement, original) };
}

/** What to change so that the project is sound, and its text with the changes written in. */
export function advise(
  document: Document,
  options: AuditOptions = {},
): {
  readonly project: string;
  readonly advice?: Advice;
  /**
   * The file with the changes, everything else byte for byte; the same text when there is nothing to change, and for a
   * variant, whose changes are not those of the file.
   */
  readonly text: string;
  readonly errors?: readonly Diagnostic[];
} {
  const judged = judgeDocument(document, options);
  if (judged.errors !== undefined) return { project: '', text: document.text, errors: judged.errors };
  const { judgement, settings, of: file } = judged;
  const advice = adviceFor(file.data, file.file, settings, judgement);
  const text = options.variant === undefined ? editedText(document.text, advice.changes) : document.text;
  return { project: judgement.project.title, advice, text };
}

/**
 * What a change makes of a project: two versions of it, or one where the file was added or removed.
 *
 * @param names what the later file is called, and the former where that is another
 */
export function compare(
  before: Document | undefined,
  after: Document | undefined,
  names: { readonly file: string; readonly was?: string },
  options: AuditOptions = {},
): {
  readonly report?: FileComparison;
  readonly comparison?: Comparison;
  /** What is wrong with either version. */
  readonly errors: { readonly before: readonly Diagnostic[]; readonly after: readonly Diagnostic[] };
} {
  const [was, is] = [before, after].map((document) => (document ? judgeDocument(document, options) : undefined));
  const errors = { before: was?.errors ?? [], after: is?.errors ?? [] };
  const version = (judged: JudgedDocument | undefined): Version | undefined =>
    judged && judged.errors === undefined ? { data: judged.of.data, judgement: judged.judgement } : undefined;
  if (was?.errors !== undefined || is?.errors !== undefined) return { errors };
  const [b, a] = [version(was), version(is)];
  const comparison = comparisonOf(b, a);
  const isSmall = (is?.judgement.project.circuits.length ?? 0) <= MOST_CURED;
  const cures =
    is && options.advice !== false && isSmall ? curesFor(is.of.data, is.of.file, is.settings, is.judgement) : undefined;
  return { report: fileComparison(names, b, a, comparison, is?.of, cures), comparison, errors };
}

/**
 * Circuits of a project for whose findings a comparison looks for cures. Each that is tried is an audit: with 96 circuits they
 * took two minutes, and a stranger's change must not take for ever. The audit of the file has them.
 */
const MOST_CURED = 64;

type JudgedDocument =
  | { readonly errors: readonly Diagnostic[] }
  | {
      readonly errors?: undefined;
      readonly judgement: Judgement;
      readonly settings: JudgeOptions;
      /** What was judged: the document, or the variant of it that was asked for. */
      readonly of: Document;
      /** Those to show beside it; none beside one of them. */
      readonly variants: readonly Variant[];
    };

function judgeDocument(document: Document, options: AuditOptions): JudgedDocument {
  const own = ownOf(document, options.catalogue ?? builtIn);
  // What is wrong with a profile makes whatever uses it wrong too: the project's own errors wait.
  if (own.errors.length > 0) return { errors: own.errors };
  const settings = {
    catalogue: own.catalogue,
    ...(options.mode !== undefined && { mode: options.mode }),
    ...(options.ambient && { ambient: options.ambient }),
    ...(options.today !== undefined && { today: options.today }),
  };
  const { variants, problems } = variantsOf(document.data);
  const asked = variants.find((v) => v.name === options.variant);
  if (options.variant !== undefined && asked === undefined)
    return { errors: told([...problems, noVariant(options.variant, variants)], document) };
  const of = asked ? variantDocument(document, asked) : document;
  const judgement = judge(of.data, document.file, settings);
  if (problems.length > 0 || 'problems' in judgement)
    return {
      errors: inOrder([...told(problems, document), ...('problems' in judgement ? told(judgement.problems, of) : [])]),
    };
  return { judgement, settings, of, variants: asked ? [] : variants };
}

/** The catalogue with the profiles of a document's folders on top. */
function ownOf(document: WithFolders, catalogue: Catalogue): { catalogue: Catalogue; errors: readonly Diagnostic[] } {
  const asked = foldersAsked(document.data);
  if (asked.length === 0) return { catalogue, errors: [] };
  const found = asked.map((each) => ({ ...each, folder: document.folders?.find(({ name }) => name === each.name) }));
  const problems = found.flatMap(({ path, name, problem, folder }): Problem[] => {
    if (problem) return [problem];
    const says = `the folder ${quote(name)} was not read`;
    const wrong = folder ? folder.problem : { says, expected: 'a program gives its files by `withFolders`' };
    return wrong ? [{ path, on: 'value', ...wrong }] : [];
  });
  const own = withOwn(
    catalogue,
    found.flatMap(({ folder }) => folder?.files ?? []),
  );
  return { catalogue: own.catalogue, errors: [...told(problems, document), ...own.errors] };
}

const told = (problems: readonly Problem[], document: Document): readonly Diagnostic[] =>
  inOrder(problems.map((p) => document.diagnostic(p)));

const inOrder = (errors: readonly Diagnostic[]): readonly Diagnostic[] =>
  [...errors].sort((a, b) => a.line - b.line || a.column - b.column);

function noVariant(name: string, variants: readonly Variant[]): Problem {
  const names = variants.map((v) => v.name);
  const known = names.length === 0 ? 'the file states no variants' : `one of ${quoteList(names)}`;
  return {
    path: ['variants'],
    on: 'key',
    says: `there is no variant ${quote(name)}`,
    expected: didYouMean(name, names, known),
  };
}
