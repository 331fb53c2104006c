/** The report as Markdown, for a change's comment or a page of a hosting site: the verdict first, details folded. */
import { type AccountRow, byUrgency, rowsOf, titleOf } from './account-rows.js';
import { assembled, type Form, type Piece } from './assembly.js';
import { causesOf } from './causes.js';
import { choicesSection } from './choices-section.js';
import { effectOf } from './effect.js';
import { energySection } from './energy-section.js';
import { carried, governing, limitWord, percent, span } from './figures.js';
import { placesOf, sentenceOf } from './finding-block.js';
import { type Lookup, lookupOf } from './lookup.js';
import { markdownTables } from './markdown-table.js';
import { cellCode, code, folded, inline } from './markdown-text.js';
import { type Numbered, numbered } from './numbered.js';
import { placeWords } from './places.js';
import type { Report, ReportRemedy, ReportStep, UnreadReport } from './report.js';
import { callsForChange } from './severity.js';
import { substitute } from './substitute.js';
import { verdictSentence } from './verdict-sentence.js';
import { countWords, gradeWord, headline, joined } from './words.js';

/** Sound accounts that stand beside those that call for a change: they say how near the rest is. */
const company = 3;

/** What is told of a file, and of several its row in the table above all. */
export function markdownPiece(report: Report | UnreadReport, several: boolean): Piece {
  const told = report.verdict === 'unread' ? unread(report) : one(report);
  return { texts: several ? [summaryRow(report), told] : [told] };
}

/** Reports in the order of the files, those of several below a table of all. */
export const markdownForm = (several: boolean): Form =>
  several
    ? {
        sections: [
          { joint: '\n', first: '\n' },
          { joint: '\n\n', first: '\n\n' },
        ],
        around: (at) => [summaryHead, '', '\n'][at] ?? '',
      }
    : { sections: [{ joint: '' }], around: (at) => (at === 0 ? '' : '\n') };

export function markdownReport(reports: readonly (Report | UnreadReport)[]): string {
  const several = reports.length !== 1;
  return assembled(
    markdownForm(several),
    reports.map((report) => markdownPiece(report, several)),
  );
}

const tableLine = (cells: readonly string[]): string => `| ${cells.join(' | ')} |`;

const summaryHead = [
  ['verdict', 'file', 'findings'],
  ['---', '---', '---'],
]
  .map(tableLine)
  .join('\n');

const summaryRow = (report: Report | UnreadReport): string =>
  tableLine(
    report.verdict === 'unread'
      ? ['**unread**', cellCode(report.file), 'not audited']
      : [`**${headline(report.verdict)}**`, cellCode(report.file), countWords(report.counts)],
  );

/** A file that could not be audited, with everything that is wrong with it. */
const unread = ({ file, errors }: UnreadReport): string =>
  [
    `## ${inline(file)}`,
    '**UNREAD** This file was not audited.',
    bullets(
      errors.map(
        ({ says, expected, ...place }) =>
          `${code(placeWords(place))} ${inline(says)}${expected === undefined ? '' : `: ${inline(expected)}`}`,
      ),
    ),
  ].join('\n\n');

function one(report: Report): string {
  const lookup = lookupOf(report);
  const findings = numbered(lookup);
  const weighing = findings.filter(({ finding }) => finding.waiver === undefined);
  const told = weighing.filter(({ finding }) => finding.verdict !== 'note');
  const notes = weighing.filter(({ finding }) => finding.verdict === 'note');
  const aside = findings.filter(({ finding }) => finding.waiver !== undefined);
  return [
    head(report, weighing),
    accounts(report, findings),
    ...told.map((each) => findingPart(each, lookup)),
    markdownTables('Energy', energySection(report)),
    markdownTables('Loads and their contacts', choicesSection(report).flat()),
    titled('Notes', notes.map(sentencePart)),
    titled(
      'Set aside',
      aside.map((each) => {
        const { reason = '', until } = each.finding.waiver ?? {};
        const day = until === undefined ? '' : ` until ${inline(until)}`;
        return `${sentencePart(each)} Set aside${day}: ${inline(reason)}`;
      }),
    ),
    titled('Caution', report.cautions.map(inline)),
    titled(
      'From the file',
      report.notes.map(({ about, text }) => `${code(about)} ${inline(text)}`),
    ),
    foldedList(
      'assumed where the file is silent',
      report.assumptions.map(({ about, says }) => `${code(about)} ${inline(says)}`),
    ),
  ]
    .filter((part) => part !== '')
    .join('\n\n');
}

/** The verdict with what is behind it. */
function head(report: Report, findings: readonly Numbered[]): string {
  const verdict = headline(report.verdict);
  const causes = causesOf(
    findings.filter(
      ({ finding }) => finding.verdict === verdict || (verdict === 'breach' && finding.verdict === 'strain'),
    ),
  );
  const variant = report.variant === undefined ? '' : `, variant ${code(report.variant)}`;
  return [
    `## ${inline(report.project)}`,
    `**${verdict.toUpperCase()}** ${inline(verdictSentence(report, causes))} (${countWords(report.counts)})`,
    `${code(report.file)}, ${inline(span(report.ambient, '°C'))}${variant}`,
  ].join('\n\n');
}

/** Those that call for a change with a few beside them, and the rest folded. */
function accounts(report: Report, findings: readonly Numbered[]): string {
  const rows = rowsOf(byUrgency(report.accounts), findings);
  const shown = rows.filter(({ account }) => callsForChange(account.verdict)).length + company;
  const rest = rows.slice(shown);
  const parts = [
    ...(rows.length > 0 ? [accountTable(rows.slice(0, shown))] : []),
    ...(rest.length > 0
      ? [folded(`${rest.length} more ${rest.length === 1 ? 'is' : 'are'} sound`, [accountTable(rest)])]
      : []),
  ];
  return parts.join('\n\n');
}

const accountTable = (rows: readonly AccountRow[]): string =>
  table(
    ['#', 'in hand', 'account', 'carries', 'may carry', 'limit', 'mode'],
    ['---:', '---:', '---', '---:', '---:', '---', '---'],
    rows.map((row) => {
      const { account, number } = row;
      const limit = governing(account);
      const left = account.margin === null ? (account.verdict === 'sound' ? '' : '?') : inline(percent(account.margin));
      return [
        number,
        callsForChange(account.verdict) ? `**${left}**` : left,
        `${inline(titleOf(row))} ${cellCode(account.id)}`,
        inline(carried(account)),
        limit === undefined ? '' : inline(limitWord(limit.value, account)),
        limit === undefined ? '' : limit.range ? 'assumed' : gradeWord[limit.grade],
        // Where no modes are stated there is nothing to name.
        account.mode === 'free' ? '' : inline(account.mode),
      ];
    }),
  );

const sentencePart = (told: Numbered): string =>
  `**${told.number}** ${inline(sentenceOf(told))} (${code(placesOf(told))}, ${code(told.finding.rule)})`;

/** A finding, its question, its cures and its sums, these two folded. */
function findingPart(told: Numbered, lookup: Lookup): string {
  const { number, finding, alike } = told;
  const verdict = alike.length > 0 ? `${finding.verdict} ×${alike.length + 1}` : finding.verdict;
  return [
    `**${number} ${verdict}** ${inline(sentenceOf(told))} (${code(placesOf(told))}, ${code(finding.rule)})`,
    ...(finding.asks === undefined ? [] : [`To settle it: ${inline(finding.asks)}`]),
    ...finding.remedies.map((remedy, index) => remedyPart(remedy, index, told, lookup)),
    ...(finding.working.length === 0 ? [] : [folded('The sums', [bullets(finding.working.map(stepWords))])]),
  ].join('\n\n');
}

function remedyPart(remedy: ReportRemedy, index: number, { finding }: Numbered, lookup: Lookup): string {
  const { own, others, whole } = effectOf(remedy, lookup.account(finding), lookup);
  const lines = [
    ...(remedy.parts.length > 0 ? [`Parts: ${joined(remedy.parts)}.`] : []),
    ...remedy.steps,
    ...(own === undefined ? others : [own]).map((line) => `${line}.`),
    whole,
  ];
  return folded(`${index === 0 ? 'Cure' : 'Or'}: ${remedy.title}`, [bullets(lines.map(inline))]);
}

/** 'I = V / R = 5 V / 100 Ω = 50 mA'. */
function stepWords(step: ReportStep): string {
  const { left, formula, numbers, result } = substitute(step);
  const sides = [formula, numbers, result].filter((side, index, all) => side !== all[index - 1]);
  const says = step.says === undefined ? '' : `${inline(step.says)} `;
  return `${says}${code(`${left} = ${sides.join(' = ')}`)}`;
}

const bullets = (items: readonly string[]): string => items.map((item) => `- ${item}`).join('\n');

const titled = (title: string, items: readonly string[]): string =>
  items.length === 0 ? '' : `### ${title}\n\n${bullets(items)}`;

const foldedList = (title: string, items: readonly string[]): string =>
  items.length === 0 ? '' : folded(`${items.length} ${title}`, [bullets(items)]);

const table = (titles: readonly string[], aligned: readonly string[], rows: readonly (readonly string[])[]): string =>
  [titles, aligned, ...rows].map(tableLine).join('\n');
