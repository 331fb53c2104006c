/** The report for a person at a terminal, as a tree: the verdict first, then the accounts, then why. */
import { byUrgency } from './account-rows.js';
import { accountsSection } from './accounts-section.js';
import { findingItem, placesOf, sentenceOf, subjectOf } from './finding-block.js';
import { energySection } from './energy-section.js';
import { span } from './figures.js';
import { headlineSection } from './headline-section.js';
import { type Lookup, lookupOf } from './lookup.js';
import { modesWords } from './moment.js';
import { type Numbered, numbered } from './numbered.js';
import type { Report, ReportFinding } from './report.js';
import { callsForChange } from './severity.js';
import { workingCommand } from './shell-word.js';
import { toldBefore } from './told-before.js';
import { choicesSection } from './choices-section.js';
import { variantsSections } from './variants-section.js';
import { type Block, heading, item, list, mark, paragraph, type Tree } from './tree.js';
import { unsourcedWords } from './unsourced.js';
import { countWords } from './words.js';

/** The whole report; `all` leaves out no account, no remedy's steps and no assumption. */
export function terminalReport(report: Report, { all = false }: { readonly all?: boolean } = {}): Tree {
  const lookup = lookupOf(report);
  const findings = numbered(lookup);
  const weighing = findings.filter(({ finding }) => finding.waiver === undefined);
  const told = weighing.filter(({ finding }) => finding.verdict !== 'note');
  const notes = weighing.filter(({ finding }) => finding.verdict === 'note');
  const before = toldBefore(told, lookup, all);
  const sections: Tree = [
    header(lookup),
    headlineSection(report, weighing),
    accountsSection(report, findings, all),
    told.length > 0
      ? [
          list(
            told.map((one) => findingItem(one, lookup, before(one), all)),
            { loose: true },
          ),
        ]
      : [],
    energySection(report),
    ...choicesSection(report),
    ...variantsSections(report, all),
    titled('Notes', notes.map(noteItem)),
    titled(
      'Set aside',
      findings.flatMap((one) => (one.finding.waiver ? [waivedItem(one, one.finding.waiver)] : [])),
    ),
    titled(
      'Caution',
      report.cautions.map((caution) => item('!', caution)),
    ),
    titled(
      'From the file',
      report.notes.map(({ about, text }) => item('·', `${about}: ${text}`)),
    ),
    all ? everyAssumption(report) : [],
    all ? everyUnsourced(report) : [],
    further(report, findings, all),
    closing(report),
  ];
  return sections.filter((blocks) => blocks.length > 0);
}

/** Project, file and the conditions of the audit. */
function header(lookup: Lookup): readonly Block[] {
  const { report } = lookup;
  const modes = modesWords(lookup);
  return [
    heading(mark('strong', report.project), mark('quiet', `${report.file}, ${span(report.ambient, '°C')}`)),
    ...(report.variant === undefined ? [] : [heading('', ['variant ', mark('strong', report.variant)])]),
    ...(report.places ?? []).map((place) => heading('', mark('quiet', `${place.name} ${span(place, '°C')}`))),
    ...(modes === undefined ? [] : [heading('', mark('quiet', modes))]),
  ];
}

const titled = (title: string, items: Parameters<typeof list>[0]): readonly Block[] =>
  items.length === 0 ? [] : [paragraph(mark('strong', title)), list(items)];

const noteItem = (told: Numbered) =>
  item(
    mark('strong', told.number),
    paragraph([sentenceOf(told), mark('quiet', ` (${placesOf(told)}, ${told.finding.rule})`)]),
  );

/** A finding that the file sets aside, with why. */
const waivedItem = (told: Numbered, { reason, until }: NonNullable<ReportFinding['waiver']>) =>
  item(
    mark('strong', told.number),
    paragraph([sentenceOf(told), mark('quiet', ` (${told.finding.verdict}, ${placesOf(told)}, ${told.finding.rule})`)]),
    paragraph([mark('quiet', until === undefined ? 'set aside: ' : `set aside until ${until}: `), reason]),
  );

/** What was taken where the file is silent. */
const everyAssumption = ({ assumptions }: Report): readonly Block[] =>
  titled(
    'Assumptions',
    assumptions.map(({ about, says }) => item('·', `${about}: ${says}`)),
  );

const BASES = { memory: 'from memory', practice: 'common practice' } as const;

const everyUnsourced = ({ unsourced: { figures } }: Report): readonly Block[] =>
  titled(
    'Figures it leans on that no document backs',
    figures.map(({ figure, basis, where }) => item('·', `${figure}: ${BASES[basis]}, ${where}`)),
  );

/** Where more is to be had: the assumptions, and the sums behind a name, with one that is there. */
function further(report: Report, [first]: readonly Numbered[], all: boolean): readonly Block[] {
  const { file, variant, accounts, assumptions, unsourced } = report;
  const assumed = assumptions.length === 1 ? 'One figure was' : `${assumptions.length} figures were`;
  const leans = unsourcedWords(unsourced);
  const isFault = first && callsForChange(first.finding.verdict);
  const name = isFault ? subjectOf(first.finding) : byUrgency(accounts)[0]?.id;
  return [
    ...(all || assumptions.length === 0
      ? []
      : [paragraph(mark('quiet', `${assumed} assumed where the file is silent: --all`))]),
    ...(all || leans === undefined
      ? []
      : [paragraph(mark('quiet', `It leans on ${leans}${assumptions.length === 0 ? ': --all' : ''}`))]),
    // On a line of its own, where a long one can be copied whole.
    ...(name === undefined
      ? []
      : [
          paragraph(mark('quiet', 'The sums behind a name:')),
          list([item(mark('quiet', '$'), workingCommand(file, name, variant))]),
        ]),
  ];
}

/** The verdict again: after a long report it stands just above the prompt. */
function closing({ verdict, counts }: Report): readonly Block[] {
  if (!callsForChange(verdict)) return [];
  return [paragraph([mark(verdict, verdict.toUpperCase()), `  ${countWords(counts)}`])];
}
