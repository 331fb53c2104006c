/** What can hurt somebody, said in plain words: the tool reckons currents, it does not call an installation safe. */
import type { CircuitPlan, ContactSide } from '../loads/circuit-plan.js';
import type { TreeNode } from './tree-plan.js';

/** Direct and alternating voltages above these can hurt through the skin, volts (common practice, no source). */
const TOUCHABLE = 60;
const TOUCHABLE_AC = 50;
/** From so many watts on a resistive load is taken for something that heats (common practice, no source). */
const HEATS = 50;

export function cautionsOf(circuits: readonly CircuitPlan[], nodes: readonly TreeNode[]): string[] {
  const cautions: string[] = [];
  const high = nodes.filter((n) => n.elsewhere === undefined && n.volts && n.volts.max > TOUCHABLE).map((n) => n.id);
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
  const motors = circuits.flatMap((c) =>
    c.type === 'dc-motor' ? [c.owner] : sidesOf(c).some(({ contact }) => contact.kind === 'motor') ? [c.id] : [],
  );
  if (motors.length > 0)
    cautions.push(
      `${[...new Set(motors)].join(', ')}: a motor may start at any moment while it is powered, at reset too. Keep fingers away, or unplug it first.`,
    );
  cautions.push(...ofContacts(circuits));
  if (circuits.some((c) => c.contact === undefined && (c.type === 'relay-board' || c.type === 'coil')))
    cautions.push(
      'Relay contacts that switch mains: isolation, fusing, earthing and enclosure are matters of local codes and licensed practice. Nothing here calls such an installation safe.',
    );
  return cautions;
}

/** The contacts of a circuit on which something hangs. */
const sidesOf = ({ id, contact, purpose }: CircuitPlan) => [
  ...(contact ? [{ id, contact: contact as ContactSide, safe: purpose?.safeWhen }] : []),
  ...(contact?.other ? [{ id, contact: contact.other, safe: contact.other.safeWhen }] : []),
];

/** What hangs on contacts: dangerous voltages, switches that fail closed, and what must stop whatever fails. */
function ofContacts(circuits: readonly CircuitPlan[]): string[] {
  const cautions: string[] = [];
  const switching = circuits.flatMap(sidesOf);
  const dangerous = switching.filter(({ contact: { volts, waveform } }) =>
    waveform === 'AC' ? volts > TOUCHABLE_AC : volts > TOUCHABLE,
  );
  if (dangerous.length > 0) {
    const told = dangerous.map(
      ({ id, contact }) => `${id} (${Number(contact.volts.toPrecision(4))} V ${contact.waveform})`,
    );
    cautions.push(
      `${told.join(', ')}: this voltage kills. Local codes say who may build it and how; have it done, or checked, by somebody licensed. It wants a fuse before the contact that protects its wires, protective earth on all metal that can be touched, the contact in the live conductor, the distances and barriers that the code asks for between it and the controller's side, an enclosure that needs a tool to open, and no wire that can come loose. Nothing here calls such an installation safe.`,
    );
  }
  const solid = dangerous.filter(({ contact }) => contact.solidState).map(({ id }) => id);
  if (solid.length > 0)
    cautions.push(
      `${solid.join(', ')}: a solid-state relay isolates nothing when it is off, it leaks. Unplug the load before you touch it.`,
    );
  const stops = [...new Set(switching.filter(({ safe }) => safe === 'load-stopped').map(({ id }) => id))];
  const heats = switching.filter(
    ({ id, contact: { kind, volts, amps } }) =>
      kind === 'resistive' && volts * (amps?.max ?? 0) >= HEATS && !stops.includes(id),
  );
  if (heats.length > 0)
    cautions.push(
      `${[...new Set(heats.map(({ id }) => id))].join(', ')}: what turns so much into heat can set fire to what is near it, and a welded contact leaves it on. Give it a thermal cut-out of its own, and nothing that burns within reach of it.`,
    );
  if (stops.length > 0)
    cautions.push(
      `${stops.join(', ')}: contacts weld and semiconductors fail closed. What must stop needs a second means that the controller has no part in: a thermal cut-out, a limit switch, a main switch within reach.`,
    );
  return cautions;
}
