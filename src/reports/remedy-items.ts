/** The cures of a finding, each proved: what to buy, what to do, and what comes of it. */
import type { Before } from './before.js';
import { effectOf } from './effect.js';
import type { Lookup } from './lookup.js';
import type { ReportFinding, ReportRemedy } from './report.js';
import { type Block, type Item, item, list, mark, paragraph } from './tree.js';
import { joined } from './words.js';

/** One item a remedy: in full where it is told first, elsewhere by reference, with its effect on this finding. */
export const remedyItems = (finding: ReportFinding, lookup: Lookup, before: Before, all: boolean): readonly Item[] =>
  finding.remedies.map((remedy, index) => {
    const label = mark('quiet', index === 0 ? 'cure' : 'or');
    const inFull = index === 0 || all;
    const there = before.remedy(remedy, inFull);
    const { own, others, whole } = effectOf(remedy, lookup.account(finding), lookup);
    if (there !== undefined) {
      // Where the account is the same as well, its figures stand there already.
      const isKnown = own === undefined || before.account(finding) === there;
      return item(label, isKnown ? `as in ${there}` : `as in ${there}: ${own}.`);
    }
    const lines = [...(own === undefined ? others : [own]).map((line) => `${line}.`), whole];
    return item(
      label,
      paragraph(index === 0 ? mark('strong', remedy.title) : remedy.title),
      ...(inFull ? doing(remedy) : []),
      list(lines.map((line) => item('→', line))),
    );
  });

function doing({ parts, steps }: ReportRemedy): readonly Block[] {
  return [
    ...(parts.length > 0 ? [paragraph(`Parts: ${joined(parts)}.`)] : []),
    ...(steps.length > 0 ? [list(steps.map((step, index) => item(`${index + 1}.`, step)))] : []),
  ];
}
