/** Protects the driver: a clamp fitted the wrong way round is a short across the winding as soon as it is switched on. */
import type { Finding, Judged, WiringRule } from '../finding.js';
import { windingCurrent } from './winding-current.js';

function find(judged: Judged): Finding[] {
  return judged.ledger.project.circuits.flatMap((c): Finding[] => {
    if (c.wiring.clamp !== 'reversed') return [];
    const account = windingCurrent(judged, c.id);
    return [
      {
        rule: 'clamp-reversed',
        family: 'coils',
        verdict: 'breach',
        about: c.id,
        path: [...c.path, 'clamp'],
        ...(account && { account }),
        names: { acts: c.wiring.clampActs ?? 'shorts' },
        related: [],
      },
    ];
  });
}

export default { name: 'clamp-reversed', family: 'coils', find } satisfies WiringRule;
