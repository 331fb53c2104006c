/** The report for a person at a terminal, as a tree: the verdict first, then the accounts, then why. */
import { accountsSection } from './accounts-section.js';
import { findingItem, places, sentence, subject } from './finding-block.js';
import { span } from './figures.js';
import { headlineSection } from './headline-section.js';
import { modesWords } from './moment.js';
import { numbered, type Numbered } from './numbered.js';
import { homesOf } from './remedy-items.js';
import type { Report } from './report.js';
import { heading, item, list, mark, paragraph, type Block, type Tree } from './tree.js';
import { callsForChange } from './severity.js';
import { countWords } from './words.js';

/** The whole report; `all` leaves out no account, no remedy's steps and no assumption. */
export function terminalReport(report: Report, { all = false }: { readonly all?: boolean } = {}): Tree {
  const findings = numbered(report);
  const told = findings.filter(({ finding }) => finding.verdict !== 'note');
  const notes = findings.filter(({ finding }) => finding.verdict === 'note');
  const sections: Tree = [
    [heading(mark('strong', report.project), mark('quiet', `${report.file}, ${span(report.ambient, '°C')}`))],
    headlineSection(report, findings),
    accountsSection(report, findings, all),
    told.length > 0
      ? [
          list(
            told.map((one) => findingItem(one, report, all)),
            { loose: true },
          ),
        ]
      : [],
    titled(
      'Notes',
      notes.map(({ number, finding }) =>
        item(
          mark('quiet', number),
          paragraph([finding.says, mark('quiet', ` (${placeWords(finding.place)}, ${finding.rule})`)]),
        ),
      ),
    ),
    titled(
      'Caution',
      report.cautions.map((caution) => item('!', caution)),
    ),
    titled(
      'From the file',
      report.notes.map(({ about, text }) => item('·', `${about}: ${text}`)),
    ),
    assumptions(report, all),
    closing(report),
  ];
  return sections.filter((blocks) => blocks.length > 0);
}

const titled = (title: string, items: Parameters<typeof list>[0]): readonly Block[] =>
  items.length === 0 ? [] : [paragraph(mark('strong', title)), list(items)];

/** What was taken where the file is silent: how much of it, or all of it. */
function assumptions({ assumptions: taken }: Report, all: boolean): readonly Block[] {
  if (taken.length === 0) return [];
  if (all)
    return titled(
      'Assumptions',
      taken.map(({ about, says }) => item('·', `${about}: ${says}`)),
    );
  const words = taken.length === 1 ? 'One figure was' : `${taken.length} figures were`;
  return [paragraph(mark('quiet', `${words} assumed where the file is silent: --all`))];
}

/** The verdict again: after a long report it stands just above the prompt. */
function closing(report: Report): readonly Block[] {
  if (!callsForChange(report.verdict)) return [];
  const { verdict } = report;
  return [paragraph([mark(verdict, verdict.toUpperCase()), `  ${countWords(report.counts)}`])];
}
