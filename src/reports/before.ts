/** What a report has told already when it comes to a finding: the number where it stands, instead of the same again. */
import type { ReportFinding, ReportRemedy } from './report.js';

/** Each gives the number of an earlier finding, or undefined when this one is the first. */
export interface Before {
  /** @param inFull with its steps, not only by its title */
  readonly remedy: (remedy: ReportRemedy, inFull: boolean) => string | undefined;
  /** By the account that a finding is about. */
  readonly account: (finding: ReportFinding) => string | undefined;
  readonly source: (source: string) => string | undefined;
}

/** One change to the build, whatever it was proposed for. */
export const remedyKey = ({ title, changes }: ReportRemedy): string => JSON.stringify([title, changes]);

/** Before the first finding. */
export const nothingBefore: Before = { remedy: () => undefined, account: () => undefined, source: () => undefined };
