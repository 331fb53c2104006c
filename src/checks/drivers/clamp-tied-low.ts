/** A clamp protects only towards a supply at least as high as the load's own; towards a lower one it conducts for good. */
import type { Finding, Judged, WiringRule } from '../finding.js';

function find({ ledger: { project } }: Judged): Finding[] {
  return project.circuits.flatMap((c): Finding[] => {
    const { clampedBelow: below, supply } = c.wiring;
    if (below === undefined || supply === undefined) return [];
    return [
      {
        rule: 'clamp-tied-low',
        family: 'drivers',
        verdict: below.surely ? 'breach' : 'strain',
        about: c.id,
        path: [...c.path, 'driver'],
        names: { array: below.array, common: below.common, supply },
        related: [{ path: ['arrays', below.array], name: below.array }],
      },
    ];
  });
}

export default { name: 'clamp-tied-low', family: 'drivers', find } satisfies WiringRule;
