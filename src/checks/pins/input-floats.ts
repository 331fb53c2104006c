/** An input that nothing holds reads whatever its leakage, or a hand nearby, makes of it. */
import type { Finding, Judged, WiringRule } from '../finding.js';

function find({ ledger: { project } }: Judged): Finding[] {
  return project.lines.flatMap((fact): Finding[] =>
    fact.kind === 'floats'
      ? [
          {
            rule: 'input-floats',
            family: 'pins',
            verdict: 'strain',
            about: fact.about,
            path: fact.path,
            names: fact.with,
            related: [],
          },
        ]
      : [],
  );
}

export default { name: 'input-floats', family: 'pins', find } satisfies WiringRule;
