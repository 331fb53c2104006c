/**
 * Protects what a latching relay with one coil switches: current one way sets it, and current the other way resets it. A
 * transistor lets current flow one way only, so that once set it stays so for good.
 */
import type { CircuitPlan } from '../../loads/circuit-plan.js';
import type { Finding, Judged, WiringRule } from '../finding.js';

/** Whether its current can only flow one way; nobody knows of what is switched elsewhere, or inside a black box. */
const isOneWay = ({ wiring }: CircuitPlan): boolean =>
  wiring.bridged !== true && wiring.by !== 'nothing' && wiring.board?.coupling !== 'unknown';

function find({ ledger }: Judged): Finding[] {
  return ledger.project.circuits.flatMap((circuit): Finding[] =>
    circuit.latching?.coils === 'one-coil' && isOneWay(circuit)
      ? [
          {
            rule: 'coil-one-way',
            family: 'coils',
            verdict: 'breach',
            about: circuit.id,
            path: circuit.path,
            names: {},
            related: [],
          },
        ]
      : [],
  );
}

export default { name: 'coil-one-way', family: 'coils', find } satisfies WiringRule;
