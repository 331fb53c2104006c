/**
 * Pins tied together for one load: they share it while they stand alike. While firmware has switched one and not yet the other
 * they drive each other through nothing but their own resistance; pins of different chips can never be switched at once.
 */
import { TYPICAL } from '../../ledger/corner.js';
import type { Ledger } from '../../ledger/ledger.js';
import type { BranchPlan } from '../../loads/branch-plan.js';
import type { PinUse } from '../../project/pin-plan.js';
import { formatValue } from '../../quantity/print.js';
import type { Finding, Judged, WiringRule } from '../finding.js';

const ownerOf = (pin: string): string => pin.slice(0, pin.indexOf('.'));

function find({ ledger }: Judged): Finding[] {
  const { uses } = ledger.project;
  return uses.flatMap((use): Finding[] => {
    const { joined, pin, by } = use;
    if (joined === undefined || joined[0] !== pin) return [];
    const pins = joined.map((p) => uses.find((u) => u.pin === p && u.by === by)?.label ?? p);
    const apart = new Set(joined.map(ownerOf)).size > 1;
    const amps = contention(ledger, joined);
    return [
      {
        rule: 'pins-joined',
        family: 'pins',
        verdict: apart ? 'breach' : 'note',
        about: by,
        path: pathOf(use),
        names: {
          pins: `${pins.slice(0, -1).join(', ')} and ${pins.at(-1)!}`,
          ...(apart && { apart: [...new Set(joined.map(ownerOf))].join(' and ') }),
          ...(amps !== undefined && { amps: formatValue(amps, 'current') }),
        },
        related: [],
      },
    ];
  });
}

/** The list that joins them. */
const pathOf = ({ path }: PinUse): Finding['path'] => path.slice(0, -1);

/** What flows from one of them that is high into one that is low, in the typical build; amperes. */
function contention({ project, solver }: Ledger, joined: readonly string[]): number | undefined {
  const [one, other] = joined;
  const through = (pin: string, level: 'high' | 'low'): BranchPlan | undefined =>
    project.networks
      .flatMap((n) => [...n.on, ...n.off])
      .find((b) => b.pin?.pin === pin && b.pin.level === level && b.pin.joined !== undefined);
  const [high, low] = [through(one!, 'high'), through(other!, 'low')];
  const ohms = (branch: BranchPlan | undefined): number =>
    branch?.members.reduce((sum, m) => sum + (m.kind === 'pin' ? m.ohms.typ : 0), 0) ?? 0;
  if (high === undefined || low === undefined) return undefined;
  const moment = { mode: 'resting', on: solver.resting };
  const volts = solver.solve({ moment, corner: TYPICAL, focus: solver.nobody }).voltage(high.from);
  return volts / (ohms(high) + ohms(low));
}

export default { name: 'pins-joined', family: 'pins', find } satisfies WiringRule;
