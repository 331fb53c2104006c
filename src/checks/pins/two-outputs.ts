/** Two outputs on one net fight as soon as they disagree: nothing but their own resistance limits what flows between them. */
import type { Finding, Judged, WiringRule } from '../finding.js';

function find({ ledger: { project } }: Judged): Finding[] {
  return project.uses.flatMap((driven): Finding[] => {
    if (driven.as !== 'driven') return [];
    const other = project.uses.find((u) => u.pin === driven.pin && u.as === 'output' && u.by !== driven.by);
    if (other === undefined) return [];
    return [
      {
        rule: 'two-outputs',
        family: 'pins',
        verdict: 'breach',
        about: driven.by,
        path: driven.path,
        names: { pin: driven.label, other: other.by },
        related: [{ path: other.path, name: other.by }],
      },
    ];
  });
}

export default { name: 'two-outputs', family: 'pins', find } satisfies WiringRule;
