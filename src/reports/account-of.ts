/** Which account a finding or a remedy speaks of. */
import type { Report, ReportAccount, ReportFinding } from './report.js';

/** Two directions or quantities of one id are two accounts. */
export const sameAccount = (
  account: Pick<ReportAccount, 'id' | 'quantity' | 'direction'>,
  about: { readonly account?: string; readonly quantity?: string; readonly direction?: string },
): boolean =>
  account.id === about.account && account.quantity === about.quantity && account.direction === about.direction;

/** The account a finding is about, if it is about one. */
export const accountOf = (report: Report, finding: ReportFinding): ReportAccount | undefined =>
  report.accounts.find((account) => sameAccount(account, finding));
