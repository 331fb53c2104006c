/** One finding: what, where, the facts behind it, and the cure with what it does. */
import type { Before } from './before.js';
import { factsOf } from './finding-facts.js';
import type { Lookup } from './lookup.js';
import { nameList } from './name-list.js';
import type { Numbered } from './numbered.js';
import { besides, placeWords } from './places.js';
import { remedyItems } from './remedy-items.js';
import type { ReportFinding } from './report.js';
import { heading, type Item, item, list, mark, paragraph } from './tree.js';

/** So that the facts of one finding line up with those of the next. */
const widestLabel = 'source'.length;

/** The finding as an item of a list, its number in the margin; `all` gives every remedy its steps. */
export function findingItem(told: Numbered, lookup: Lookup, before: Before, all: boolean): Item {
  const { number, finding, alike } = told;
  const verdict = alike.length > 0 ? `${finding.verdict} ×${alike.length + 1}` : finding.verdict;
  return item(
    mark('strong', number),
    heading(
      [mark(finding.verdict, verdict), '  ', subjectOf(finding), '  ', mark('quiet', placesOf(told))],
      mark('quiet', finding.rule),
    ),
    paragraph(mark('strong', sentenceOf(told))),
    list(
      [
        ...factsOf(finding, lookup, before).map(({ word, text }) => item(mark('quiet', word), text)),
        ...also(finding),
        ...remedyItems(finding, lookup, before, all),
      ],
      { margin: widestLabel },
    ),
  );
}

/** The name that the working command knows it by. */
export const subjectOf = ({ account, about }: ReportFinding): string => account ?? about;

/** What is found, and of which other channels the same is true. */
export const sentenceOf = ({ finding, alike }: Numbered): string =>
  alike.length === 0
    ? finding.says
    : `${finding.says} The same is true of ${nameList(alike.map(({ about }) => about))}.`;

/** Where it is in the file, and where the other channels are. */
export const placesOf = ({ finding, alike }: Numbered): string =>
  placeWords(
    finding.place,
    alike.map(({ place }) => place),
  );

/** Who else has to do with it, and where: all in one line. */
function also({ related, place }: ReportFinding): readonly Item[] {
  const others = related.map((each) => `${each.says} ${besides(each.place, place)}`);
  return others.length === 0 ? [] : [item(mark('quiet', 'also'), others.join(', '))];
}
