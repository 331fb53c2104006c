/** Nothing works from a rail that no supply feeds. */
import type { Finding, Judged, WiringRule } from '../finding.js';

function find({ ledger: { project } }: Judged): Finding[] {
  return project.facts.flatMap((fact): Finding[] =>
    fact.kind === 'no-source'
      ? [
          {
            rule: 'no-source',
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

export default { name: 'no-source', family: 'supplies', find } satisfies WiringRule;
