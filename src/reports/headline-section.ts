/** What is wrong and what to do, to be understood in ten seconds. */
import { against, governing, inHand, span } from './figures.js';
import { byMargin } from './accounts-section.js';
import type { Numbered } from './numbered.js';
import type { Report, ReportFinding } from './report.js';
import { type Block, item, list, mark, paragraph } from './tree.js';
import { countWords, headline, verdictSentence } from './words.js';

/** So many findings are told at once; whoever has more has enough to start with. */
const most = 3;

/** Project, file and conditions, then the verdict with the worst findings and their cures. */
export function headlineSection(report: Report, findings: readonly Numbered[]): readonly Block[] {
  const verdict = headline(report.verdict);
  const worst = findings.filter(({ finding }) => finding.verdict === verdict);
  const told = worst.slice(0, most).map(({ number, finding }) => item(number, finding.says, ...cure(finding)));
  const untold = worst.length - told.length;
  return [
    list([
      item(
        mark(verdict, verdict.toUpperCase()),
        paragraph(mark('strong', verdictSentence(report))),
        ...(told.length > 0 ? [list(told)] : []),
        ...(untold > 0 ? [`… and ${untold} more like ${untold === 1 ? 'it' : 'them'} below.`] : []),
        ...(told.length === 0 ? calm(report) : []),
      ),
    ]),
  ];
}

/** What to do about a finding: its first remedy, or the question that settles it. */
function cure(finding: ReportFinding): readonly Block[] {
  const advice = finding.remedies[0]?.title ?? finding.asks;
  return advice === undefined ? [] : [list([item('→', advice)])];
}

/** Beside a sound verdict: the account that would be the first to go, and that there are notes. */
function calm(report: Report): readonly string[] {
  const [tightest] = byMargin(report.accounts).filter(({ margin }) => margin !== null);
  const limit = tightest && governing(tightest, report.ambient.max);
  const said =
    tightest?.draw && tightest.margin !== null && limit
      ? [
          `Tightest is ${tightest.title}: ${against(span(tightest.draw, tightest.unit), limit.value, tightest)}, ` +
            `${inHand(tightest.margin, tightest.direction)}.`,
        ]
      : [];
  return report.counts.note > 0 ? [...said, `Worth knowing: ${countWords(report.counts)}, below.`] : said;
}
