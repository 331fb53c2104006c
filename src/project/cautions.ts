/** What can hurt somebody, said in plain words: the tool reckons currents, it does not call an installation safe. */
import type { CircuitPlan } from '../loads/plan.js';
import type { TreeNode } from './project.js';

/** Direct voltages above this can hurt through the skin, volts (common practice, no source). */
const TOUCHABLE = 60;

export function cautionsOf(circuits: readonly CircuitPlan[], nodes: readonly TreeNode[]): string[] {
  const cautions: string[] = [];
  const high = nodes.filter((n) => n.volts && n.volts.max > TOUCHABLE).map((n) => n.id);
  if (high.length > 0)
    cautions.push(
      `${high.join(', ')}: above ${TOUCHABLE} V a touch can hurt or kill. Local codes say who may build this and how; have it done by somebody licensed.`,
    );
  const motors = circuits.filter((c) => c.type === 'dc-motor').map((c) => c.owner);
  if (motors.length > 0)
    cautions.push(
      `${[...new Set(motors)].join(', ')}: a motor may start at any moment while it is powered, at reset too. Keep fingers away, or unplug it first.`,
    );
  if (circuits.some((c) => c.type === 'relay-board' || c.type === 'coil'))
    cautions.push(
      'Relay contacts that switch mains: isolation, fusing, earthing and enclosure are matters of local codes and licensed practice. Nothing here calls such an installation safe.',
    );
  return cautions;
}
