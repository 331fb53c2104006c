/** Some pins have no output stage: nothing they are told to drive ever moves. */
import type { Finding, Judged, WiringRule } from '../finding.js';

function find({ ledger: { project } }: Judged): Finding[] {
  return project.uses.flatMap((u): Finding[] =>
    u.inputOnly && u.as === 'output'
      ? [
          {
            rule: 'pin-input-only',
            family: 'pins',
            verdict: 'breach',
            about: u.by,
            path: u.path,
            names: { pin: u.label },
            related: [],
          },
        ]
      : [],
  );
}

export default { name: 'pin-input-only', family: 'pins', find } satisfies WiringRule;
