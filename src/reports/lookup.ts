/** A report with what is looked up in it for every finding: a large one has hundreds of accounts. */
import type { Report, ReportAccount } from './report.js';

/** What a finding or a remedy says of the account that it is about. */
interface About {
  readonly account?: string;
  readonly quantity?: string;
  readonly direction?: string;
  /** The state in which it is so. */
  readonly mode?: string;
}

export interface Lookup {
  readonly report: Report;
  /** The account that is spoken of, if one is. */
  readonly account: (about: About) => ReportAccount | undefined;
  /** Every document that a limit cites. */
  readonly documents: ReadonlySet<string>;
  /** Every circuit that is on in any worst moment. */
  readonly circuits: ReadonlySet<string>;
}

/** Two directions or quantities of one id are two accounts. */
export const accountKey = ({ account, quantity, direction }: About): string =>
  JSON.stringify([account, quantity, direction]);

/** What is told of the state until firmware runs, where the account is told in another one that is worse for it. */
const isOfStart = ({ mode }: About, account: ReportAccount | undefined): boolean =>
  mode !== undefined && mode !== 'runaway' && account !== undefined && account.mode !== mode;

export function lookupOf(report: Report): Lookup {
  const accounts = new Map(report.accounts.map((each) => [accountKey({ ...each, account: each.id }), each]));
  const limits = report.accounts.flatMap((account) => account.limits);
  return {
    report,
    account: (about) => {
      const account = accounts.get(accountKey(about));
      return isOfStart(about, account) ? undefined : account;
    },
    documents: new Set(limits.flatMap(({ cite }) => cite?.document ?? [])),
    circuits: new Set(report.accounts.flatMap(({ moment }) => moment ?? [])),
  };
}
