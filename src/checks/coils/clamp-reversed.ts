/** Protects the driver: a clamp fitted the wrong way round is a short across the winding as soon as it is switched on. */
import type { Finding, Judged, WiringRule } from '../finding.js';

function find({ ledger: { project } }: Judged): Finding[] {
  return project.circuits.flatMap((c): Finding[] =>
    c.wiring.clamp === 'reversed'
      ? [
          {
            rule: 'clamp-reversed',
            family: 'coils',
            verdict: 'breach',
            about: c.id,
            path: [...c.path, 'clamp'],
            names: { acts: c.wiring.clampActs ?? 'shorts' },
            related: [],
          },
        ]
      : [],
  );
}

export default { name: 'clamp-reversed', family: 'coils', find } satisfies WiringRule;
