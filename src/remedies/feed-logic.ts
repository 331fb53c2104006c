/**
 * A board whose inputs are fed with more than the pin's high level never lets go, or is not sure to: its inputs are fed from the
 * pin's own rail, the jumper comes off, and the coils stay where they are.
 */
import { railOfPin } from '../project/rail-of-pin.js';
import { beforeCables } from '../project/same-node.js';
import type { Way } from './cures.js';
import { entryOf } from './entries.js';
import { rewired } from './rewire.js';

const RULES = new Set(['coil-release', 'input-levels', 'pin-injected', 'dead-drives', 'dead-fed']);

export const feedLogic: Way = ({ finding, judgement, data }) => {
  if (!RULES.has(finding.rule)) return [];
  const { project } = judgement;
  const about = finding.rule === 'dead-fed' ? finding.related[0]?.name : finding.about;
  const circuit = project.circuits.find((c) => c.id === about || c.wiring.pin === about || c.owner === about);
  const board = circuit?.wiring.board;
  const entry = circuit && entryOf(data, 'loads', circuit.owner);
  // Where one terminal feeds inputs and coils there is nothing to feed apart.
  if (circuit === undefined || board === undefined || board.oneTerminal || entry === undefined) return [];
  const rail = railOfPin(project, circuit.wiring.pin);
  if (rail === undefined || (board.logic !== undefined && rail === beforeCables(project, board.logic))) return [];
  const at = ['loads', circuit.owner];
  const fed = board.coil ?? circuit.wiring.supply;
  const coil = fed && beforeCables(project, fed);
  const { terminals: t } = board;
  return [
    {
      title: `Feed the inputs of ${circuit.owner} from ${rail}, jumper removed`,
      changes: [
        ...(entry['supply'] === undefined ? [] : [{ path: [...at, 'supply'], value: undefined }]),
        { path: [...at, 'logic-supply'], value: rail },
        ...(coil === undefined ? [] : [{ path: [...at, 'coil-supply'], value: coil }]),
        ...(board.hasJumper ? [{ path: [...at, 'jumper'], value: 'removed' }] : []),
        ...rewired(data, project, circuit.owner, coil === undefined ? [rail] : [coil, rail]),
      ],
      parts: [],
      steps: [
        ...(board.hasJumper ? [`${circuit.owner}: take the jumper off (${t['jumper']}).`] : []),
        `${circuit.owner}: put ${rail} on ${t['logic-supply'] ?? 'the logic supply'}, so that a pin that is high leaves nothing across the input.`,
        ...(coil === undefined ? [] : [`${circuit.owner}: put ${coil} on ${t['coil-supply'] ?? 'the coil supply'}.`]),
      ],
      watch: [`${circuit.id}.coil`],
    },
  ];
};
