/** Pulses of pins: a pin has one train of them, whatever hangs on it. */
import type { CircuitPlan, Pulses } from '../loads/circuit-plan.js';
import type { Remarks } from '../loads/figures.js';

const alike = (a: Pulses, b: Pulses): boolean =>
  (['min', 'typ', 'max'] as const).every((end) => a.frequency[end] === b.frequency[end] && a.duty[end] === b.duty[end]);

/** Reports loads on one pin whose pulses differ. */
export function checkPulses(circuits: readonly CircuitPlan[], remarks: Pick<Remarks, 'problem'>): void {
  const first = new Map<string, CircuitPlan>();
  for (const circuit of circuits) {
    const { pulses, wiring } = circuit;
    if (pulses === undefined || wiring.pin === undefined) continue;
    const other = first.get(wiring.pin) ?? circuit;
    first.set(wiring.pin, other);
    if (alike(pulses, other.pulses!)) continue;
    remarks.problem({
      path: pulses.path,
      on: 'value',
      says: `\`${circuit.owner}\` and \`${other.owner}\` hang on one pin, which cannot pulse both differently`,
      expected: 'the same `pwm` at both, or a pin for each',
    });
  }
}
