/** The cures of a finding, each proved: what to buy, what to do, and the books before and after. */
import { sameAccount } from './account-of.js';
import { against, figure, governing, inHand, worstOf } from './figures.js';
import { type Homes, remedyKey } from './homes.js';
import type { Report, ReportAccount, ReportFinding, ReportRemedy } from './report.js';
import { headline, joined } from './words.js';
import { type Block, type Item, item, list, mark, paragraph } from './tree.js';

/** So many accounts are told after a remedy; the rest is in the audit of the changed file. */
const most = 3;

/** One item a remedy: in full where it is at home, elsewhere by reference with its effect on this finding. */
export const remedyItems = (
  number: string,
  finding: ReportFinding,
  account: ReportAccount | undefined,
  report: Report,
  homes: Homes,
  all: boolean,
): readonly Item[] =>
  finding.remedies.map((remedy, index) => {
    const home = homes.get(remedyKey(remedy));
    const isTold = home !== undefined && Number(home) < Number(number);
    const title = isTold ? `as in ${home}` : remedy.title;
    const lines = effectLines(remedy, account, report);
    const effect = isTold ? lines.own : [...lines.own, ...lines.others, lines.whole];
    return item(
      mark('quiet', index === 0 ? 'cure' : 'or'),
      paragraph(index === 0 && !isTold ? mark('strong', title) : title),
      ...(!isTold && (index === 0 || all) ? doing(remedy) : []),
      ...(effect.length > 0 ? [list(effect.map((line) => item('→', line)))] : []),
    );
  });

function doing({ parts, steps }: ReportRemedy): readonly Block[] {
  return [
    ...(parts.length > 0 ? [paragraph(`Parts: ${joined(parts)}.`)] : []),
    ...(steps.length > 0 ? [list(steps.map((step, index) => item(`${index + 1}.`, step)))] : []),
  ];
}

/** What a remedy does. */
interface Effect {
  /** To the account in question, before and after. */
  readonly own: readonly string[];
  /** To other accounts it touches, told when it touches none in question. */
  readonly others: readonly string[];
  readonly whole: string;
}

/** Before and after of the account in question, or of the accounts the remedy touches; then the whole project. */
export function effectLines({ after }: ReportRemedy, account: ReportAccount | undefined, report: Report): Effect {
  const asked = after.accounts.filter((each) => account && sameAccount(account, { ...each, account: each.id }));
  const lines = (asked.length > 0 ? asked : after.accounts.slice(0, most)).map((each) => beforeAndAfter(each, report));
  const doubt = after.cures ? '' : 'This alone does not cure it. ';
  const whole =
    headline(after.verdict) === headline(report.verdict)
      ? `${doubt}The verdict on the whole is still ${headline(after.verdict)}: the other findings stay.`
      : `${doubt}The verdict on the whole is then ${headline(after.verdict)}.`;
  return asked.length > 0 ? { own: lines, others: [], whole } : { own: [], others: lines, whole };
}

function beforeAndAfter(each: ReportRemedy['after']['accounts'][number], report: Report): string {
  const before = report.accounts.find((one) => sameAccount(one, { ...each, account: each.id }));
  const unit = before?.unit ?? units[each.quantity];
  const of = (value: number, limit: number | null | undefined): string =>
    typeof limit === 'number'
      ? against(figure(value, unit), limit, { unit, direction: each.direction })
      : figure(value, unit);
  const worst = before && worstOf(before);
  const now = before && worst !== undefined ? `now ${of(worst, governing(before)?.value)}, ` : '';
  const margin = each.margin === null ? '' : `, ${inHand(each.margin, each.direction)}`;
  return `${before?.title ?? each.id}: ${now}then ${of(each.max, each.limit)}${margin}.`;
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
