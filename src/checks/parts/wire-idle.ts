/** A wire from a supply to what another one feeds: nothing flows in it, and the file may not be what was meant. */
import type { Finding, Judged, WiringRule } from '../finding.js';

function find({ ledger: { project } }: Judged): Finding[] {
  return project.facts.flatMap(({ kind, about, path, with: names }): Finding[] =>
    kind === 'idle-wire'
      ? [{ rule: 'wire-idle', family: 'parts', verdict: 'note', about, path, names, related: [] }]
      : [],
  );
}

export default { name: 'wire-idle', family: 'parts', find } satisfies WiringRule;
