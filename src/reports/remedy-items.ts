/** The cures of a finding, each proved: what to buy, what to do, and the books before and after. */
import { against, figure, governing, inHand, worstOf } from './figures.js';
import { sameAccount } from './numbered.js';
import type { Report, ReportAccount, ReportFinding, ReportRemedy } from './report.js';
import { headline, joined } from './words.js';
import { type Block, type Item, item, list, mark, paragraph } from './tree.js';

/** So many accounts are told after a remedy; the rest is in the audit of the changed file. */
const most = 3;

/** One item a remedy: the first one whole, the others by title and effect unless `all` are wanted whole. */
export const remedyItems = (
  finding: ReportFinding,
  account: ReportAccount | undefined,
  report: Report,
  all: boolean,
): readonly Item[] =>
  finding.remedies.map((remedy, index) =>
    item(
      mark('quiet', index === 0 ? 'cure' : 'or'),
      paragraph(index === 0 ? mark('strong', remedy.title) : remedy.title),
      ...(index === 0 || all ? doing(remedy) : []),
      ...effect(remedy, account, report),
    ),
  );

function doing({ parts, steps }: ReportRemedy): readonly Block[] {
  return [
    ...(parts.length > 0 ? [paragraph(`Parts: ${joined(parts)}.`)] : []),
    ...(steps.length > 0 ? [list(steps.map((step, index) => item(`${index + 1}.`, step)))] : []),
  ];
}

/** Before and after of the account in question, or of the accounts the remedy touches; then the whole project. */
function effect({ after }: ReportRemedy, account: ReportAccount | undefined, report: Report): readonly Block[] {
  const asked = after.accounts.filter((each) => account && sameAccount(account, { ...each, account: each.id }));
  const told = (asked.length > 0 ? asked : after.accounts).slice(0, most).map((each) => {
    const before = report.accounts.find((one) => sameAccount(one, { ...each, account: each.id }));
    const unit = before?.unit ?? units[each.quantity];
    const of = (value: number, limit: number | null | undefined): string =>
      typeof limit === 'number'
        ? against(figure(value, unit), limit, { unit, direction: each.direction })
        : figure(value, unit);
    const worst = before && worstOf(before);
    const now = before && worst !== undefined ? `now ${of(worst, governing(before, report.ambient.max)?.value)}, ` : '';
    const margin = each.margin === null ? '' : `, ${inHand(each.margin, each.direction)}`;
    return `${before?.title ?? each.id}: ${now}then ${of(each.max, each.limit)}${margin}.`;
  });
  const doubt = after.cures ? '' : 'This alone does not cure it. ';
  const whole = `${doubt}The verdict on the whole is then ${headline(after.verdict)}.`;
  return [list([...told, whole].map((line) => item('→', line)))];
}

const units: { readonly [quantity in ReportAccount['quantity']]: ReportAccount['unit'] } = {
  current: 'A',
  voltage: 'V',
  power: 'W',
  temperature: '°C',
  charge: 'C',
  energy: 'J',
  time: 's',
};
