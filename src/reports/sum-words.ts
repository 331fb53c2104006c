/** The sum behind a finding in one line, with who contributes. */
import { symbol } from '../loads/branch-working.js';
import { channelOf } from './channel.js';
import { figure, given, worstOf } from './figures.js';
import { nameList } from './name-list.js';
import type { ReportAccount, ReportFinding, ReportStep } from './report.js';
import { substitute } from './substitute.js';

/** So many terms of a long sum are told; the working has all of them. */
const most = 5;
/** A sum of no more terms is told as it stands. */
const few = 6;

/** The numbers of a step and its result: '5.23 V / (12.5 Ω + 59.3 Ω) = 72.9 mA, typically 51.3 mA'. */
export function sumWords(step: ReportStep, account: ReportAccount | undefined): string {
  const { numbers, result, digits } = substitute(step);
  const typical = account?.draw && comesTo(step, account) ? figure(account.draw.typ, account.unit) : result;
  return `${total(step, account, digits) ?? numbers} = ${result}${typical === result ? '' : `, typically ${typical}`}`;
}

/** The first step that comes to the account's worst end, else the first that works anything out. */
export function stepOf({ working, mode }: ReportFinding, account: ReportAccount | undefined): ReportStep | undefined {
  // A figure that was given and not worked out would only be said twice.
  const sums = working.filter((step) => substitute(step).numbers !== given(...step.gives));
  // The account is told as firmware promises it; what a finding beyond that comes to is the last that its working does.
  if (mode === 'runaway') return sums.findLast(({ gives }) => gives[1] === account?.unit) ?? sums[0];
  return sums.find((step) => comesTo(step, account)) ?? sums[0];
}

/** Whether a step's result is what is held against the account's limit. Which way a current flows is not at issue. */
export function comesTo({ gives: [value, unit] }: ReportStep, account: ReportAccount | undefined): boolean {
  const worst = account && worstOf(account);
  if (worst === undefined || unit !== account?.unit) return false;
  return Math.abs(Math.abs(value) - Math.abs(worst)) <= 1e-6 * Math.abs(worst);
}

interface Term {
  readonly value: number;
  readonly text: string;
  /** Who contributes it, where that is known. */
  readonly name: string | undefined;
  readonly load: string | undefined;
}

/** A sum of many: equal channels of a load together, the largest few by name, the others by their count. */
function total(
  { formula, with: numbers }: ReportStep,
  account: ReportAccount | undefined,
  digits: number,
): string | undefined {
  const symbols = formula.split(' + ');
  const names = new Map(account?.entries.map(({ circuit }) => [symbol('I', circuit), circuit]));
  const terms = symbols.flatMap((each): readonly Term[] => {
    const known = Object.hasOwn(numbers, each) ? numbers[each] : undefined;
    if (!known) return [];
    const name = names.get(each);
    return [{ value: known[0], text: given(...known, digits), name, load: name && channelOf(name)?.load }];
  });
  const isNamed = terms.some(({ name }) => name !== undefined);
  if (terms.length < symbols.length || terms.length < 2 || (!isNamed && terms.length <= few)) return undefined;
  const groups = together(terms).sort((a, b) => Math.abs(sumOf(b)) - Math.abs(sumOf(a)));
  const told = groups.length <= few ? groups : groups.slice(0, most);
  const rest = groups.slice(told.length).flat();
  const unit = numbers[symbols[0] ?? '']?.[1] ?? '';
  const words = told.map(groupWords).join(' + ');
  return rest.length === 0 ? words : `${words} + ${given(sumOf(rest), unit, digits)} (${rest.length} more)`;
}

const sumOf = (terms: readonly Term[]): number => terms.reduce((sum, { value }) => sum + value, 0);

/** Neighbouring channels of a load that contribute the same as printed; unnamed terms that are alike. */
function together(terms: readonly Term[]): Term[][] {
  const groups: Term[][] = [];
  for (const term of terms) {
    const open = groups.find(
      ([first]) => first && first.text === term.text && first.load === term.load && !first.name === !term.name,
    );
    if (open && (term.load !== undefined || term.name === undefined)) open.push(term);
    else groups.push([term]);
  }
  return groups;
}

function groupWords(group: readonly Term[]): string {
  const text = `${group.length > 1 ? `${group.length} × ` : ''}${group[0]?.text ?? ''}`;
  const names = group.flatMap(({ name }) => name ?? []);
  return names.length === 0 ? text : `${text} (${nameList(names)})`;
}
