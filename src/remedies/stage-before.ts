/**
 * What hangs straight on a pin that stands below its supply never lets go, a PNP or a P-channel MOSFET. An NPN before it does
 * the pin's work: it pulls down what the pin cannot pull up to. Whether that cures is proved like every cure.
 */
import { isMapping } from '../loads/figures.js';
import type { Way } from './cures.js';
import type { Cure } from './prove.js';

/** Base resistors to try, the lighter one first. */
const BASES = ['4.7 kΩ', '1 kΩ'];
/** A gate that would get more than it bears is held to half by as much again on its way. */
const PULL = '10 kΩ';

export const stageBefore: Way = ({ finding, judgement, data }) => {
  const { rule, about } = finding;
  const ofPin = rule === 'pin-injected' || rule === 'level-over';
  if (rule !== 'coil-release' && rule !== 'driver-release' && !ofPin) return [];
  // What is pushed into a pin is about the pin.
  const circuit = judgement.project.circuits.find((c) => (ofPin ? c.wiring.pin : c.id) === about);
  const loads = isMapping(data) ? data['loads'] : undefined;
  const entry = isMapping(loads) && circuit ? loads[circuit.owner] : undefined;
  const driver = isMapping(entry) ? entry['driver'] : undefined;
  if (circuit?.wiring.pin === undefined || circuit.id !== circuit.owner || !isMapping(entry)) return [];
  if (!isMapping(driver) || driver['stages'] !== undefined || driver['array'] !== undefined) return [];
  const { pin, ...own } = driver;
  const label = judgement.project.uses.find((u) => u.by === circuit.id)?.label ?? circuit.wiring.pin;
  const path = ['loads', circuit.owner] as const;
  const input = own['base-resistor'] === undefined ? 'gate' : 'base';
  const attempt = (base: string, more: Readonly<Record<string, string>>): Cure => {
    const npn = { part: 'npn-2n2222a', 'base-resistor': base, 'pull-down': '100 kΩ' };
    const pulled = { ...own, 'pull-up': own['pull-up'] ?? PULL, ...more };
    const fitted = [...(own['pull-up'] === undefined ? [PULL] : []), ...Object.values(more)];
    return {
      title: `Put an NPN before the driver of ${circuit.id}`,
      changes: [
        { path: [...path, 'driver'], value: { ...(pin !== undefined && { pin }), stages: [npn, pulled] } },
        ...(entry['active'] === undefined ? [] : [{ path: [...path, 'active'], value: undefined }]),
      ],
      parts: ['transistor 2N2222A', `resistor ${base}`, 'resistor 100 kΩ', ...fitted.map((ohms) => `resistor ${ohms}`)],
      steps: [
        `${label} through ${base} to the base of the 2N2222A; 100 kΩ from that base to ground, and its emitter to ground.`,
        `Its collector takes the place of ${label} at the driver${more['gate-resistor'] ? `, with ${PULL} between it and the gate` : ''}.`,
        ...(own['pull-up'] === undefined ? [`${PULL} from the driver's ${input} to the supply of ${circuit.id}.`] : []),
        `In the firmware turn ${label} over: high switches ${circuit.id} on now.`,
      ],
      watch: [`${circuit.id}.driver`, `${circuit.id}.stage-1`],
    };
  };
  const bipolar = BASES.map((base) => attempt(base, {}));
  return input === 'gate' ? [...bipolar, attempt(BASES[0]!, { 'gate-resistor': PULL })] : bipolar;
};
