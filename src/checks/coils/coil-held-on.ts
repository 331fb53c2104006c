/** Protects a coil made for pulses, and the supply behind it: firmware that never ends its pulse leaves it on for good. */
import { formatValue } from '../../quantity/print.js';
import { choicePower } from '../choice/choices.js';
import type { Finding, Judged, WiringRule } from '../finding.js';

function find({ ledger }: Judged): Finding[] {
  return ledger.project.circuits.flatMap((circuit, k): Finding[] => {
    if (circuit.latching === undefined) return [];
    const { power } = choicePower(ledger, circuit, k);
    const names = { watts: formatValue(power, 'power'), pulse: formatValue(circuit.latching.pulse, 'time', 2) };
    return [
      {
        rule: 'coil-held-on',
        family: 'coils',
        verdict: 'note',
        about: circuit.id,
        path: circuit.path,
        names,
        related: [],
      },
    ];
  });
}

export default { name: 'coil-held-on', family: 'coils', find } satisfies WiringRule;
