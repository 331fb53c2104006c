/** What the builder fits at an input of a relay board: a pull-up to the pin's own rail or to a supply of its own. */
import { closed } from '../../quantity/quantity.js';
import { isMapping } from '../figures.js';
import type { BoundPin, Hook } from '../lowering.js';
import type { Member } from '../plan.js';
import type { Board } from './board.js';

export function fittedAt(
  board: Board,
  circuit: string,
  pin: BoundPin,
  raw: unknown,
  path: readonly (string | number)[],
): Hook[] {
  if (!isMapping(raw) || raw['pull-up'] === undefined) return [];
  const { figures, bench } = board.input;
  const inputs = figures.within('inputs').within(String(path.at(-1)));
  const spelled = inputs.within('pull-up');
  const figure = spelled.says('resistance')
    ? spelled.figure('resistance', 'resistance')
    : inputs.figure('pull-up', 'resistance');
  const to = spelled.says('supply') ? bench.node(spelled.word('supply'), [...path, 'pull-up', 'supply']) : pin.rail;
  if (figure === undefined || to === undefined) return [];
  const member: Member = {
    kind: 'resistance',
    part: `${circuit}.pull-up`,
    ohms: closed(figure.quantity),
    origin: figure.origin,
  };
  return [{ pin, active: board.active, flows: 'in', to, members: [member], circuit }];
}
