/** One channel of a relay board: its pin and what is fitted at it, its input, and what that switches. */
import { isMapping } from '../figures.js';
import type { Lowered } from '../lowering.js';
import { NOTHING } from '../lowering.js';
import type { CircuitPlan } from '../circuit-plan.js';
import { unknownResistor } from '../resistor-power.js';
import { blackBoxInput } from './black-box.js';
import type { Board, Channel } from './board.js';
import type { Side } from './coil-side.js';
import { bareCoil, drivenCoil, hiddenCoil } from './coil-side.js';
import { fittedAt } from './fitted.js';

export function lowerChannel(board: Board, number: number, raw: unknown, path: readonly (string | number)[]): Lowered {
  const { input, active, coil, coupling, logic, supply } = board;
  const { bench, figures } = input;
  const circuit = `${input.id}.${number}`;
  const named = bench.pinNames(isMapping(raw) ? raw['pin'] : raw, isMapping(raw) ? [...path, 'pin'] : path)[0];
  if (named === undefined) return NOTHING;
  const pin = bench.outputPin(named.name, named.path, circuit, active);
  if (pin === undefined) return NOTHING;
  const plan: CircuitPlan = {
    id: circuit,
    owner: input.id,
    path,
    type: 'relay-board',
    always: false,
    wiring: {
      by: 'board',
      pin: pin.account,
      inductive: true,
      ...(coil && { coil: `${circuit}.coil`, figures: { coilVolts: coil.nominal } }),
      // Nobody knows what is inside a black box, and it is sold with all that its relays need.
      clamp: figures.says('clamp') ? 'fitted' : coupling === 'black-box' ? 'not-needed' : 'none',
      ...(coupling === 'none' && { bare: true as const }),
      ...(supply && { supply }),
      board: board.wiring,
    },
  };
  const alone = (accounts: Lowered['accounts']): Lowered => ({ circuits: [plan], networks: [], accounts });
  // Without a source nothing can be reckoned; that it has none is reported by a rule of its own.
  if (supply === undefined || (board.wiring.fedByLogic && logic === undefined)) return alone([]);
  const fitted = fittedAt(board, circuit, pin, raw, path);
  if (fitted.unknown.length > 0) return alone(fitted.unknown.map((part) => unknownResistor(part, circuit, path)));
  const channel: Channel = { board, circuit, path, pin, supply, fitted };
  const sides = sidesOf(channel);
  return sides === undefined
    ? NOTHING
    : {
        circuits: [{ ...plan, wiring: sides.reduce((wiring, side) => ({ ...wiring, ...side.wiring }), plan.wiring) }],
        networks: sides.flatMap((side) => side.networks),
        accounts: sides.flatMap((side) => side.accounts),
      };
}

function sidesOf(channel: Channel): readonly Side[] | undefined {
  const { coupling } = channel.board;
  switch (coupling) {
    case 'none':
      return [bareCoil(channel)];
    case 'black-box':
      return [blackBoxInput(channel), hiddenCoil(channel)];
    case 'opto':
    case 'transistor': {
      const driven = drivenCoil(channel);
      return driven && [driven];
    }
    default:
      return coupling satisfies never;
  }
}
