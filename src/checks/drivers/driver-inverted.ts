/** The file says which pin level energises a load, and the stages that are fitted conduct at the other one. */
import type { Finding, Judged, WiringRule } from '../finding.js';

function find({ ledger: { project } }: Judged): Finding[] {
  return project.circuits.flatMap((c): Finding[] => {
    const { inverted, pin } = c.wiring;
    if (inverted === undefined) return [];
    const label = project.uses.find((u) => u.pin === pin && u.by === c.id)?.label ?? pin ?? '';
    const names = { pin: label, says: inverted.says };
    const path = [...c.path, 'active'];
    return [{ rule: 'driver-inverted', family: 'drivers', verdict: 'breach', about: c.id, path, names, related: [] }];
  });
}

export default { name: 'driver-inverted', family: 'drivers', find } satisfies WiringRule;
