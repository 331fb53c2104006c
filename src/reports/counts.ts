/** How many findings there are of each verdict. */
import type { Finding } from '../checks/finding.js';
import type { Report } from './report.js';

export function countsOf(findings: readonly Pick<Finding, 'verdict' | 'waiver'>[]): Report['counts'] {
  const counts = { breach: 0, strain: 0, unproven: 0, thin: 0, note: 0 };
  // What is set aside does not weigh.
  for (const { verdict, waiver } of findings) if (waiver === undefined) counts[verdict]++;
  return counts;
}
