/** A rail powered directly pushes current back into the regulator that usually feeds it. */
import type { Finding, Judged, WiringRule } from '../finding.js';

function find({ ledger: { project } }: Judged): Finding[] {
  return project.facts.flatMap((fact): Finding[] =>
    fact.kind === 'back-fed'
      ? [
          {
            rule: 'regulator-back-fed',
            family: 'supplies',
            verdict: fact.with['forbidden'] === undefined ? 'note' : 'breach',
            about: fact.about,
            path: fact.path,
            names: fact.with,
            related: [],
          },
        ]
      : [],
  );
}

export default { name: 'regulator-back-fed', family: 'supplies', find } satisfies WiringRule;
