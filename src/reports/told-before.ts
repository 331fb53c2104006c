/** What a report has told already when it comes to a finding: the number where it stands, instead of the same again. */
import { accountOf } from './account-of.js';
import { citesOf } from './finding-facts.js';
import type { Numbered } from './numbered.js';
import type { Report, ReportAccount, ReportFinding, ReportRemedy } from './report.js';

/** Each gives the number of an earlier finding, or undefined when this one is the first. */
export interface Before {
  readonly remedy: (remedy: ReportRemedy) => string | undefined;
  readonly account: (account: ReportAccount) => string | undefined;
  readonly source: (source: string) => string | undefined;
}

/** One change to the build, whatever it was proposed for. */
export const remedyKey = ({ title, changes }: ReportRemedy): string => JSON.stringify([title, changes]);

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
      remedy: (remedy) => earlier('remedy', remedyKey(remedy)),
      account: (account) => earlier('account', accountKey(account)),
      source: (source) => earlier('source', source),
    };
  };
}

/** Before the first finding. */
export const nothingBefore: Before = { remedy: () => undefined, account: () => undefined, source: () => undefined };
