/**
 * An armature follows slow pulses: it chatters, and a contact that switches at every pulse is worn out within days. From about
 * a thousand a second on it feels their mean. Common practice, no source.
 */
import type { CircuitPlan } from '../../loads/circuit-plan.js';
import type { Finding, Judged, WiringRule } from '../finding.js';

/** Hertz. */
const TOO_FAST_TO_FOLLOW = 1000;

const follows = ({ type, pulses }: CircuitPlan): boolean =>
  pulses !== undefined && (type === 'relay-board' || (type === 'coil' && pulses.frequency.min < TOO_FAST_TO_FOLLOW));

const find = ({ ledger: { project } }: Judged): Finding[] =>
  project.circuits.filter(follows).map((c) => ({
    rule: 'relay-pulsed',
    family: 'parts',
    verdict: 'strain',
    about: c.id,
    path: c.pulses!.path,
    names: { board: String(c.type === 'relay-board'), hertz: String(c.pulses!.frequency.min) },
    related: [],
  }));

export default { name: 'relay-pulsed', family: 'parts', find } satisfies WiringRule;
