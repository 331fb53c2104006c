/**
 * Relay boards. A channel is a chain of up to three small networks: the input (logic supply, resistor, indicator, coupler,
 * pin), the base of the output transistor behind the coupler, and the coil. The jumper makes the two supplies one net.
 */
import { closed } from '../../quantity/quantity.js';
import { coilFigures } from '../coil-figures.js';
import { conduction } from '../drivers/row.js';
import type { Figures } from '../figures.js';
import { isMapping } from '../figures.js';
import type { LoadInput, LoadType, Lowered } from '../lowering.js';
import { NOTHING } from '../lowering.js';
import type { BranchPlan } from '../branch-plan.js';
import { GROUND } from '../branch-plan.js';
import { BLACK_BOX_KEYS } from './black-box.js';
import type { Board, Coupling, Indicator } from './board.js';
import { lowerChannel } from './channel.js';
import { neverAssumed } from './never-assumed.js';
import { outputOf } from './output.js';
import { suppliesOf } from './supplies.js';

const INDICATORS: readonly Indicator[] = ['none', 'in-series', 'parallel', 'across-coil'];

function lower(input: LoadInput): Lowered {
  const { figures, entry, path, bench } = input;
  const board = boardOf(input);
  if (board === undefined) return NOTHING;
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
  const left = first && neverAssumed(board, first.id);
  return {
    circuits: [...parts.flatMap((p) => p.circuits), ...own.circuits],
    networks: [...parts.flatMap((p) => p.networks), ...own.networks],
    accounts: [...parts.flatMap((p) => p.accounts), ...(left?.accounts ?? [])],
    open: left?.open ?? [],
  };
}

/** The board as the file sets it up, or undefined with a problem. */
function boardOf(input: LoadInput): Board | undefined {
  const { figures, bench } = input;
  const inside = figures.within('input');
  const coupling = couplingOf(inside);
  const output = outputOf(input, coupling);
  if (output === 'unknown') return undefined;
  const word = (key: string): string | undefined => inside.word(key) ?? bench.answer(input.id, `input.${key}`);
  const said = word('active') === 'high' ? 'high' : word('active') === 'low' ? 'low' : undefined;
  // A transistor at the input conducts at one level, whatever the file says.
  const real =
    coupling !== 'transistor' || output === undefined
      ? undefined
      : conduction(output, 'high', said ?? 'high').at(-1)
        ? ('high' as const)
        : ('low' as const);
  const active = real ?? said ?? 'low';
  const hidden = coupling === 'black-box' && !figures.says('coil');
  const coil = hidden ? undefined : coilFigures(bench.behind(figures.within('coil'), 'load'));
  if (coil === undefined && !hidden) return undefined;
  return {
    input,
    inside,
    active,
    inverted: said !== undefined && said !== active,
    output,
    coupling,
    indicator: INDICATORS.find((each) => each === word('indicator')) ?? 'none',
    coil,
    ...suppliesOf(input, coupling, active),
  };
}

/** What an input drives: what the file says, or a black box where it states what only a black box has. */
function couplingOf(inside: Figures): Coupling {
  const key = BLACK_BOX_KEYS.find((each) => inside.says(each));
  if (key !== undefined) {
    if (inside.says('series') || inside.says('led-drop'))
      inside.problem(
        key,
        `\`${key}\` is of an input nobody has looked into, and its parts are stated, too`,
        'the levels and current of a black box, or the parts of its input',
      );
    return 'black-box';
  }
  const said = inside.word('coupling');
  if (said === 'opto' || said === 'transistor' || said === 'none') return said;
  inside.assume('its inputs drive couplers, since the file does not say');
  return 'opto';
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
