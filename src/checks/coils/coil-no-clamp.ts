/** Protects whatever switches a winding: without a clamp the voltage rises until something breaks down. */
import { windingOf } from './winding.js';
import type { Finding, Judged, WiringRule } from '../finding.js';
import { windingCurrent } from './winding-current.js';

function find(judged: Judged): Finding[] {
  const { project } = judged.ledger;
  return project.circuits.flatMap((c): Finding[] => {
    const { by, clamp, inductive } = c.wiring;
    if (!inductive || clamp !== 'none' || by === 'nothing') return [];
    const names = {
      winding: windingOf(c.type),
      switch: by === 'pin' ? `pin ${project.uses.find((u) => u.by === c.id)?.label ?? c.wiring.pin}` : `${c.id}.driver`,
    };
    const account = windingCurrent(judged, c.id);
    return [
      {
        rule: 'coil-no-clamp',
        family: 'coils',
        verdict: 'breach',
        about: c.id,
        path: c.path,
        ...(account && { account }),
        names,
        related: [],
      },
    ];
  });
}

export default { name: 'coil-no-clamp', family: 'coils', find } satisfies WiringRule;
