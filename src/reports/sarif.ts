/**
 * The report as SARIF 2.1.0 (OASIS Standard, 27 March 2020): one run with the findings of all files, for sites that
 * show findings beside the lines of a change. `level` is what a finding asks of whoever reads it: what fails is an error,
 * what is not known or short of margin a warning.
 */
import { GROUNDS } from '../wording/rule-help/grounds.js';
import { RULE_HELP } from '../wording/rule-help/rule-help.js';
import { assembled, type Form, type Piece } from './assembly.js';
import { nested, toJson } from './json.js';
import { neutral } from './neutral.js';
import type { Report, ReportFinding, ReportPlace, UnreadReport } from './report.js';
import { fixesIn } from './sarif-fixes.js';
import { BASES, located, message } from './sarif-text.js';

/** Where programs find what a SARIF log is made of. */
export const SCHEMA = 'https://docs.oasis-open.org/sarif/sarif/v2.1.0/errata01/os/schemas/sarif-schema-2.1.0.json';

export const LEVELS = {
  breach: 'error',
  strain: 'error',
  unproven: 'warning',
  thin: 'warning',
  note: 'note',
} as const satisfies { readonly [verdict in ReportFinding['verdict']]: string };

export const RULES = Object.keys(RULE_HELP);

/** What stands for a list that is filled later. */
const LATER = 'later';

/** How far in the elements of the three lists stand: errors, files, results. */
const DEPTHS = [6, 4, 4] as const;

/**
 * A file's errors, or itself and its findings.
 *
 * @param text of the file that was audited, for the cures as changes to it; without it there are none
 * @param folder in which the command ran, from the root of the repository
 */
export function sarifPiece(report: Report | UnreadReport, text?: string, folder = ''): Piece {
  const isUnread = report.verdict === 'unread';
  const lists = [
    isUnread ? notifications(report, folder) : [],
    [artifactOf(report, folder)],
    isUnread ? [] : resultsOf(report, text, folder),
  ] as const;
  return {
    texts: lists.map((list, at) => list.map((each: unknown) => nested(each, DEPTHS[at] ?? 0)).join(',\n')),
    sums: [isUnread ? 1 : 0],
  };
}

/** Findings of all files, in the order the files were given, and what could not be read. @param version of this tool */
export const sarifForm = (version: string): Form => ({
  // A file may be given twice; artifacts are each once.
  sections: [{ joint: ',\n' }, { joint: ',\n', once: true }, { joint: ',\n' }],
  around: (at, { filled, sums: [unread = 0] }) => {
    const log = toJson({
      $schema: SCHEMA,
      version: '2.1.0',
      runs: [
        {
          ...head(version),
          invocations: [{ executionSuccessful: unread === 0, toolExecutionNotifications: [LATER] }],
          artifacts: [LATER],
          results: [LATER],
        },
      ],
    });
    const between = log.split(/\[\s+"later"\s+\]/)[at] ?? '';
    const closes = at === 0 ? '' : filled[at - 1] ? `\n${'  '.repeat((DEPTHS[at - 1] ?? 1) - 1)}]` : ']';
    const opens = at === DEPTHS.length ? '' : filled[at] ? '[\n' : '[';
    return closes + between + opens;
  },
});

/** What every run begins with. */
export const head = (version: string) => ({
  tool: { driver: { name: 'ampledger', version, rules: RULES.map(ruleOf) } },
  columnKind: 'utf16CodeUnits',
  originalUriBaseIds: BASES,
});

export const sarifReport = (
  reports: readonly (Report | UnreadReport)[],
  version: string,
  textOf: (file: string) => string | undefined = () => undefined,
): string =>
  assembled(
    sarifForm(version),
    reports.map((report) => sarifPiece(report, textOf(report.file))),
  );

function ruleOf(id: string) {
  const { title, means, todo } = RULE_HELP[id]!;
  return {
    id,
    shortDescription: { text: message(title) },
    fullDescription: { text: message(means) },
    help: { text: message(`${means} ${todo}`), markdown: helpOf(id) },
  };
}

/** The same at more length, as Markdown; all words of it are our own. */
function helpOf(id: string): string {
  const { means, todo } = RULE_HELP[id]!;
  return [
    means,
    `**What to do:** ${todo}`,
    `**It rests on:** ${GROUNDS[id]}`,
    `More of it: \`ampledger rule ${id}\``,
  ].join('\n\n');
}

/** A file that was asked for, with its verdict. */
const artifactOf = (report: Report | UnreadReport, folder: string) => ({
  location: located(report.file, folder),
  roles: ['analysisTarget'],
  properties:
    report.verdict === 'unread'
      ? { verdict: report.verdict }
      : {
          project: neutral(report.project),
          verdict: report.verdict,
          counts: report.counts,
          ...(report.variant !== undefined && { variant: neutral(report.variant) }),
        },
});

/** One an error of a file that could not be audited. */
const notifications = ({ errors }: UnreadReport, folder: string) =>
  errors.map(({ says, expected, ...place }) => ({
    level: 'error',
    message: { text: message(expected === undefined ? says : `${says}: ${expected}`) },
    locations: [physical(place, folder)],
  }));

function resultsOf(report: Report, text: string | undefined, folder: string) {
  const seen = new Map<string, number>();
  // What is changed for a variant is not in the file as it stands.
  const fixesOf = text === undefined || report.variant !== undefined ? () => [] : fixesIn(report.file, text, folder);
  return report.findings.map((finding) => {
    const { rule, verdict, family, about, account, quantity, direction, mode, related } = finding;
    const named = { about, account, quantity, direction, mode };
    const fixes = fixesOf(finding.remedies);
    return {
      ruleId: rule,
      ruleIndex: RULES.indexOf(rule),
      level: LEVELS[verdict],
      message: { text: message(textOf(finding)) },
      locations: [{ ...physical(finding.place, folder), logicalLocations: [{ fullyQualifiedName: neutral(about) }] }],
      ...(related.length > 0 && {
        relatedLocations: related.map(({ says, place }, index) => ({
          id: index + 1,
          ...physical(place, folder),
          message: { text: message(says) },
        })),
      }),
      ...(fixes.length > 0 && { fixes }),
      partialFingerprints: { [FINGERPRINT]: numberedIdentity(identityOf(finding, report.variant), seen) },
      // Empty where nothing is set aside: the standard wants all results to have it, or none.
      suppressions: finding.waiver === undefined ? [] : [suppressionOf(finding.waiver, folder)],
      properties: {
        verdict,
        family,
        ...Object.fromEntries(
          Object.entries(named).flatMap(([key, value]) => (value === undefined ? [] : [[key, neutral(value)]])),
        ),
      },
    };
  });
}

export const FINGERPRINT = 'ampledgerFinding/v1';

/** Of two findings that differ in nothing of their identity, the second is the second also when lines move. */
export function numberedIdentity(identity: string, seen: Map<string, number>): string {
  const count = (seen.get(identity) ?? 0) + 1;
  seen.set(identity, count);
  return count === 1 ? identity : `${identity}#${count}`;
}

/** What makes a finding the same one after lines moved and figures changed. */
export const identityOf = (
  {
    rule,
    about,
    account,
    quantity,
    direction,
  }: Pick<ReportFinding, 'rule' | 'about' | 'account' | 'quantity' | 'direction'>,
  variant?: string,
): string =>
  JSON.stringify([
    rule,
    about,
    account ?? '',
    quantity ?? '',
    direction ?? '',
    ...(variant === undefined ? [] : [variant]),
  ]);

/** What it says, the question that settles it, and the cure that is proved to help. */
function textOf({ says, asks, remedies }: ReportFinding): string {
  const cure = remedies.find(({ after }) => after.cures);
  return [says, ...(asks === undefined ? [] : [asks]), ...(cure === undefined ? [] : [`Cure: ${cure.title}.`])].join(
    ' ',
  );
}

/** A waiver stands in the audited file, and whoever wrote it has accepted the finding. */
export const suppressionOf = (
  { reason, until, place }: Omit<NonNullable<ReportFinding['waiver']>, 'place'> & { readonly place?: ReportPlace },
  folder = '',
) => ({
  kind: 'inSource',
  status: 'accepted',
  justification: neutral(reason),
  ...(place !== undefined && { location: physical(place, folder) }),
  ...(until !== undefined && { properties: { until: neutral(until) } }),
});

/** A place as the standard has it, with its end where that is known. */
export const physical = ({ file, line, column, endLine, endColumn }: ReportPlace, folder = '') => ({
  physicalLocation: {
    artifactLocation: located(file, folder),
    region: {
      startLine: line,
      startColumn: column,
      ...(endLine !== undefined && endColumn !== undefined && { endLine, endColumn }),
    },
  },
});
