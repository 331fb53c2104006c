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
  const cells = (kind: string): string =>
    nodes.flatMap((n) => (n.battery?.chemistry === kind ? [n.id] : [])).join(', ');
  const [rechargeable, coins, lead] = [cells('lithium-ion'), cells('lithium'), cells('lead-acid')];
  if (rechargeable !== '')
    cautions.push(
      `${rechargeable}: lithium cells burn when they are shorted, pierced, overcharged or drained too far. Charge them with a charger made for them, put a fuse or a protection circuit at the cell, and keep them where a fire can do no harm.`,
    );
  if (coins !== '')
    cautions.push(
      `${coins}: a lithium cell that is not made for charging must never be charged. Keep coin cells from children: a swallowed one burns within hours.`,
    );
  if (lead !== '')
    cautions.push(
      `${lead}: a lead battery gives hundreds of amperes into a short, enough to melt a wire or a ring. Put a fuse right at its terminal, and charge it where gas can leave.`,
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
