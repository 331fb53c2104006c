/** A winding behind a driver that nothing clamps gets a diode across it; one that is fitted the wrong way round is turned. */
import type { CircuitPlan } from '../loads/circuit-plan.js';
import type { Way } from './cures.js';
import { entryOf } from './entries.js';
import type { Cure } from './prove.js';

/** Diodes of the catalogue for clamping, the smallest first. */
const DIODES = [
  { part: 'diode-1n4148', words: 'a diode 1N4148' },
  { part: 'diode-1n4007', words: 'a diode 1N4007' },
  { part: 'diode-schottky-1a', words: 'a Schottky diode of 1 A' },
];

export const fitClamp: Way = ({ finding, judgement, data }) => {
  const circuit = judgement.project.circuits.find((c) => c.id === finding.about);
  if (circuit === undefined || circuit.wiring.bare || entryOf(data, 'loads', circuit.owner) === undefined) return [];
  const at = ['loads', circuit.owner, 'clamp'];
  const watch = [`${circuit.id}.clamp`, `${circuit.id}.driver`];
  if (finding.rule === 'clamp-reversed')
    return [
      {
        title: `Turn the clamp of ${circuit.owner} round`,
        changes: [{ path: [...at, 'fitted'], value: undefined }],
        parts: [],
        steps: [`Turn the clamp across ${circuit.owner}: its ring goes to the plus of ${circuit.wiring.supply}.`],
        watch,
      },
    ];
  if (finding.rule !== 'coil-no-clamp' && finding.rule !== 'clamp-rating' && !swings(finding.rule, circuit)) return [];
  return DIODES.map(({ part, words }): Cure => ({
    title: `Clamp ${circuit.owner} with ${words}`,
    changes: [{ path: at, value: { part } }],
    parts: [words],
    steps: [
      `Put ${words} across ${circuit.owner}, close to it, its ring towards the plus of ${circuit.wiring.supply}.`,
    ],
    watch,
  }));
};

/** What a zener or suppressor lets a winding throw is more than its driver bears: a plain diode lets it throw less. */
const swings = (rule: string, { wiring }: CircuitPlan): boolean =>
  rule === 'driver-voltage' && wiring.inductive && wiring.clamp === 'fitted';
