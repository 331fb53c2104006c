import { describe, expect, it } from 'vitest';
import type { Report, Verdict } from '../../src/reports/report.js';
import { exitStatus, type FailAt, severities } from '../../src/reports/severity.js';
import { gardenGateSound } from './fixtures/garden-gate.js';

const none = { breach: 0, strain: 0, unproven: 0, thin: 0, note: 0 };
/** A report whose worst finding is `verdict`: nothing but notes is headed `sound`. */
const report = (verdict: Verdict): Report => ({
  ...gardenGateSound,
  verdict: verdict === 'note' ? 'sound' : verdict,
  counts: verdict === 'sound' ? none : { ...none, [verdict]: 1 },
});

describe('the exit status', () => {
  it.each(severities.filter((each) => each !== 'sound'))('fails at %s for it and for anything worse', (failAt) => {
    const statuses = severities.map((verdict) => exitStatus(report(verdict), failAt));
    const failing = severities.indexOf(failAt) + 1;
    expect(statuses).toEqual(severities.map((_, index) => (index < failing ? 1 : 0)));
  });

  it('never fails when told so, but for a file that could not be audited', () => {
    for (const verdict of severities) expect(exitStatus(report(verdict), 'never')).toBe(0);
    const unread = { ampledger: 1, file: 'x', verdict: 'unread', errors: [] } as const;
    for (const failAt of ['breach', 'note', 'never'] satisfies FailAt[]) expect(exitStatus(unread, failAt)).toBe(2);
  });
});
