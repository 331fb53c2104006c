/** A base that gets too little gets a smaller resistor; where no resistor of a pin's reach is enough, a MOSFET takes over. */
import { isMapping } from '../loads/figures.js';
import { nextBelow } from '../quantity/preferred.js';
import type { Way } from './cures.js';
import { entryOf, figureIn, partText, toleranceIn } from './entries.js';
import type { Cure } from './prove.js';

const RULES = new Set(['driver-drive', 'gate-voltage', 'driver-heat', 'driver-current', 'coil-pull-in']);

export const moreDrive: Way = ({ finding, judgement, data }) => {
  const circuit = judgement.project.circuits.find((c) => c.id === finding.about);
  const driver = circuit && entryOf(data, 'loads', circuit.owner)?.['driver'];
  if (!RULES.has(finding.rule) || circuit === undefined || !isMapping(driver) || driver['stages'] !== undefined)
    return [];
  // A motor that turns either way needs its bridge.
  if (driver['array'] !== undefined || circuit.wiring.bridged) return [];
  const at = ['loads', circuit.owner, 'driver'];
  const watch = [circuit.wiring.pin!, `${circuit.id}.driver`];
  const raw = driver['base-resistor'];
  const now = figureIn(raw, 'resistance');
  const need =
    finding.by && finding.rule === 'driver-drive' && finding.by.draw > 0 ? finding.by.value / finding.by.draw : 1.5;
  const smaller =
    now === undefined
      ? []
      : [1.3, 1.6, 2, 3].map((more): Cure => {
          const ohms = nextBelow('E24', now / (Math.max(need, 1) * more));
          const text = `${partText(ohms, 'resistance')}${toleranceIn(raw)}`;
          return {
            title: `Drive ${circuit.owner} harder: ${text} at the base`,
            changes: [{ path: [...at, 'base-resistor'], value: text }],
            parts: [text],
            steps: [`Put ${text} between the pin and the base, in place of ${String(raw)}.`],
            watch,
          };
        });
  const mosfet: Cure = {
    title: `Drive ${circuit.owner} with an N-channel MOSFET AO3400A`,
    changes: [
      {
        path: at,
        value: {
          part: 'nmos-ao3400a',
          ...(driver['pin'] !== undefined && { pin: driver['pin'] }),
          ...(driver['pins'] !== undefined && { pins: driver['pins'] }),
          'gate-resistor': '100 Ω ±5 %',
          'pull-down': '100 kΩ ±5 %',
        },
      },
    ],
    parts: ['an N-channel MOSFET AO3400A', '100 Ω and 100 kΩ'],
    steps: [
      `Put the MOSFET in place of the driver: gate through 100 Ω on the pin, 100 kΩ from gate to ground, source on ground, drain on ${circuit.owner}.`,
    ],
    watch,
  };
  return driver['part'] === 'nmos-ao3400a' ? smaller : [...smaller, mosfet];
};
