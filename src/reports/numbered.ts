/** Findings in the order a report tells them, each with the number by which its other parts refer to it. */
import type { Report, ReportAccount, ReportFinding } from './report.js';
import { severity } from './severity.js';

export interface Numbered {
  readonly number: string;
  readonly finding: ReportFinding;
}

/** Worst first; within a verdict the order of the report stays. */
export const numbered = (report: Report): readonly Numbered[] =>
  [...report.findings]
    .sort((a, b) => severity(a.verdict) - severity(b.verdict))
    .map((finding, index) => ({ number: String(index + 1), finding }));

/** Two directions or quantities of one id are two accounts. */
export const sameAccount = (
  account: Pick<ReportAccount, 'id' | 'quantity' | 'direction'>,
  about: { readonly account?: string; readonly quantity?: string; readonly direction?: string },
): boolean =>
  account.id === about.account && account.quantity === about.quantity && account.direction === about.direction;

/** The account a finding is about, if it is about one. */
export const accountOf = (report: Report, finding: ReportFinding): ReportAccount | undefined =>
  report.accounts.find((account) => sameAccount(account, finding));
