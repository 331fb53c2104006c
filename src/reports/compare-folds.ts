/** What goes the same way for several things at once, said once of all of them. */
import { channelOf, fold, renamed } from './channel.js';
import type { AccountReport, ComparedFinding } from './compare-report.js';
import { drawWords, limitWords, marginWords, wayWords } from './compare-words.js';
import { nameList } from './name-list.js';

/** Accounts whose rows are alike but for a name: 'coil of vents.1 to 4, pull-in', 'pin D8 to D11, source'. */
export const foldedAccounts = (accounts: readonly AccountReport[]): readonly AccountReport[] =>
  folded(
    accounts,
    nameInTitle,
    (a) => a.title,
    (a) => [
      ...[a.before, a.after].flatMap((side) => [marginWords(side), drawWords(side, a.unit), side?.verdict]),
      limitWords(a),
      a.quantity,
    ],
    (a, title) => ({ ...a, title: title.replace(/^pin /, 'pins ') }),
  );

/** What an account's title calls its owner, or the pin that it is about. */
const nameInTitle = ({ account, title }: AccountReport): string | undefined =>
  [account, account.replace(/\.[a-z-]+$/, ''), account.slice(account.indexOf('.') + 1)].find(
    (name) => renamed(title, name, '') !== title,
  );

/** Findings that say the same of channels of one load. */
export const foldedFindings = (findings: readonly ComparedFinding[]): readonly ComparedFinding[] =>
  folded(
    findings,
    (f) => channelOf(f.about)?.name,
    (f) => f.says,
    (f) => [f.rule, wayWords(f), channelOf(f.about)?.load],
    (f, says) => ({ ...f, says }),
  );

/** Those that say the same but for a name, as the first of them with all names. */
function folded<T>(
  all: readonly T[],
  nameOf: (each: T) => string | undefined,
  textOf: (each: T) => string,
  besides: (each: T) => readonly unknown[],
  withText: (each: T, text: string) => T,
): readonly T[] {
  const likeness = (each: T): string | undefined => {
    const name = nameOf(each);
    return name === undefined ? undefined : JSON.stringify([renamed(textOf(each), name, '*'), besides(each)]);
  };
  return fold(all, likeness).flatMap(([first, ...alike]) => {
    if (first === undefined) return [];
    const own = nameOf(first);
    if (own === undefined || alike.length === 0) return [first];
    const names = [own, ...alike.flatMap((each) => nameOf(each) ?? [])].sort((a, b) =>
      a.localeCompare(b, 'en', { numeric: true }),
    );
    return [withText(first, renamed(textOf(first), own, nameList(names)))];
  });
}
