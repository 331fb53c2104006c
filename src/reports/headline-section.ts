/** What is wrong and what to do, to be understood in ten seconds. */
import { byUrgency, isWindow, rowsOf, titleOf } from './account-rows.js';
import { type Cause, causesOf } from './causes.js';
import { against, carried, governing, inHand } from './figures.js';
import type { Numbered } from './numbered.js';
import type { Report, Verdict } from './report.js';
import { type Block, item, list, mark, paragraph } from './tree.js';
import { verdictSentence } from './verdict-sentence.js';
import { countWords, headline, joined } from './words.js';

/** So many causes are told at once; whoever has more has enough to start with. */
const most = 3;

/** The verdict with what is behind it, and what to do about each. */
export function headlineSection(report: Report, findings: readonly Numbered[]): readonly Block[] {
  const verdict = headline(report.verdict);
  const causes = causesOf(findings.filter(({ finding }) => weighs(finding.verdict, verdict)));
  const untold = causes.length - most;
  return [
    list([
      item(
        mark(verdict, verdict.toUpperCase()),
        paragraph(mark('strong', verdictSentence(report, causes))),
        ...(causes.length > 0 ? [list(causes.slice(0, most).map(causeItem))] : calm(report)),
        ...(untold > 0 ? [`… and ${untold} more below.`] : []),
      ),
    ]),
  ];
}

/** Breaches and strains are faults; unanswered questions and thin margins head a report only when there are none. */
const weighs = (verdict: Verdict, worst: Verdict): boolean =>
  verdict === worst || (worst === 'breach' && verdict === 'strain');

/** The worst finding of a cause, the numbers of the others, and its first remedy, or the question that settles it. */
function causeItem({ worst: { number, finding }, others }: Cause) {
  const numbers = others.map((other) => other.number);
  const more = numbers.length > 0 ? mark('quiet', ` (and ${numbers.length} more of it: ${joined(numbers)})`) : '';
  const advice = finding.remedies[0]?.title ?? finding.asks;
  return item(
    mark('strong', number),
    paragraph([finding.says, more]),
    ...(advice === undefined ? [] : [list([item('→', advice)])]),
  );
}

/** Beside a sound verdict: the account that would be the first to go, and that there are notes. */
function calm(report: Report): readonly string[] {
  const [row] = rowsOf(
    byUrgency(report.accounts).filter((account) => account.margin !== null && !isWindow(account)),
    [],
  );
  const tightest = row?.account;
  const limit = tightest && governing(tightest);
  const said =
    row && tightest?.draw && tightest.margin !== null && limit
      ? [
          `Tightest is ${titleOf(row)}: ${against(carried(tightest), limit.value, tightest)}, ` +
            `${inHand(tightest.margin, tightest.direction)}.`,
        ]
      : [];
  return report.counts.note > 0 ? [...said, `Worth knowing: ${countWords(report.counts)}, below.`] : said;
}
