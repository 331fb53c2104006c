/**
 * Relay boards. A channel is a chain of up to three small networks: the input (logic supply, resistor, indicator, coupler,
 * pin), the base of the output transistor behind the coupler, and the coil. The jumper makes the two supplies one net.
 */
import { closed } from '../../quantity/quantity.js';
import { coilFigures } from '../coil-figures.js';
import { isMapping } from '../figures.js';
import type { LoadInput, LoadType, Lowered } from '../lowering.js';
import { NOTHING } from '../lowering.js';
import type { BranchPlan } from '../plan.js';
import { GROUND } from '../plan.js';
import type { Board } from './board.js';
import { lowerChannel } from './channel.js';
import { neverAssumed } from './never-assumed.js';
import { suppliesOf } from './supplies.js';

function lower(input: LoadInput): Lowered {
  const { figures, entry, path, bench } = input;
  const coil = coilFigures(bench.behind(figures.within('coil'), 'load'));
  if (coil === undefined) return NOTHING;
  const inside = figures.within('input');
  const coupling = inside.word('coupling') ?? 'opto';
  const board: Board = {
    input,
    active: inside.word('active') === 'high' ? 'high' : 'low',
    coupling: coupling === 'transistor' || coupling === 'none' ? coupling : 'opto',
    indicator: inside.word('indicator') ?? 'none',
    coil,
    ...suppliesOf(input, coupling !== 'transistor' && coupling !== 'none'),
  };
  if (!isMapping(entry['inputs'])) {
    bench.problem({
      path,
      on: 'key',
      says: `no pins drive the inputs of \`${input.id}\``,
      expected: '`inputs: { 1: D4, 2: D5 }`',
    });
    return NOTHING;
  }
  const channels = figures.count('channels') ?? Object.keys(entry['inputs']).length;
  const parts = Object.entries(entry['inputs']).map(([key, raw]) => {
    const number = Number(key);
    if (!Number.isInteger(number) || number < 1 || number > channels) {
      bench.problem({
        path: [...path, 'inputs', key],
        on: 'key',
        says: `\`${input.id}\` has no input \`${key}\``,
        expected: `1 to ${channels}`,
      });
      return NOTHING;
    }
    return lowerChannel(board, number, raw, [...path, 'inputs', key]);
  });
  const [first] = parts.flatMap((p) => p.circuits);
  const own = boardCurrent(board);
  return {
    circuits: [...parts.flatMap((p) => p.circuits), ...own.circuits],
    networks: [...parts.flatMap((p) => p.networks), ...own.networks],
    accounts: [...parts.flatMap((p) => p.accounts), ...(first ? neverAssumed(board, inside, first.id) : [])],
  };
}

/** What the board draws besides its channels. */
function boardCurrent(board: Board): Lowered {
  const { input, logic, supply } = board;
  const figure = input.figures.figure('board-current', 'current');
  const from = logic ?? supply;
  if (figure === undefined || from === undefined) return NOTHING;
  const id = `${input.id}.board`;
  const branch: BranchPlan = {
    from,
    to: GROUND,
    circuit: id,
    members: [{ kind: 'current', part: id, amps: closed(figure.quantity), origin: figure.origin }],
  };
  return {
    circuits: [],
    networks: [{ id, circuits: [], side: 'load', inner: [], hooks: [], on: [branch], off: [branch] }],
    accounts: [],
  };
}

export const relayBoard: LoadType = { type: 'relay-board', lower };
