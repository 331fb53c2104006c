/** Two sources on one rail drive each other unless something keeps them apart. */
import type { Finding, Judged, WiringRule } from '../finding.js';

function find({ ledger: { project } }: Judged): Finding[] {
  return project.facts.flatMap((fact): Finding[] =>
    fact.kind === 'joined-supplies'
      ? [
          {
            rule: 'supplies-joined',
            family: 'supplies',
            verdict: 'breach',
            about: fact.about,
            path: fact.path,
            names: fact.with,
            related: [],
          },
        ]
      : [],
  );
}

export default { name: 'supplies-joined', family: 'supplies', find } satisfies WiringRule;
