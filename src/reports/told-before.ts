/** Goes through the findings in their order and remembers where each thing is told first. */
import { accountOf } from './account-of.js';
import { type Before, remedyKey } from './before.js';
import { citesOf } from './finding-facts.js';
import type { Numbered } from './numbered.js';
import type { Report, ReportAccount } from './report.js';

const accountKey = ({ id, quantity, direction }: ReportAccount): string => JSON.stringify([id, quantity, direction]);

/** For each finding what has been told before it. Of its remedies the first is told in full, with `all` every one. */
export function toldBefore(findings: readonly Numbered[], report: Report, all: boolean): (told: Numbered) => Before {
  const firsts = new Map<string, Numbered>();
  const note = (told: Numbered, kind: string, key: string): void => {
    if (!firsts.has(kind + key)) firsts.set(kind + key, told);
  };
  for (const told of findings) {
    const { remedies } = told.finding;
    const account = accountOf(report, told.finding);
    for (const remedy of remedies) note(told, 'title', remedyKey(remedy));
    for (const remedy of all ? remedies : remedies.slice(0, 1)) note(told, 'remedy', remedyKey(remedy));
    for (const source of citesOf(told.finding, report)) note(told, 'source', source);
    if (account) note(told, 'account', accountKey(account));
  }
  return (told) => {
    const earlier = (kind: string, key: string): string | undefined => {
      const first = firsts.get(kind + key);
      return first && Number(first.number) < Number(told.number) ? first.number : undefined;
    };
    return {
      remedy: (remedy, inFull) => earlier(inFull ? 'remedy' : 'title', remedyKey(remedy)),
      account: (account) => earlier('account', accountKey(account)),
      source: (source) => earlier('source', source),
    };
  };
}
