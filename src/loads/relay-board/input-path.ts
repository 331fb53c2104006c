/**
 * The network at a channel's input: the pin with what the builder fitted, then from the input terminal the board's own path,
 * and beside it what hangs on the terminal, too: resistors to either side, an indicator with a branch of its own.
 */
import { closed } from '../../quantity/quantity.js';
import type { Hook, NetworkSketch } from '../lowering.js';
import type { BranchPlan, Member } from '../branch-plan.js';
import { GROUND } from '../branch-plan.js';
import type { Channel } from './board.js';
import { indicatorBranch } from './indicator.js';

/** Node of a channel's input terminal, where more than one thing hangs on it behind what is fitted. */
const terminalOf = (circuit: string): string => `${circuit}:input`;

/** Where the path of a coupler's LED ends: at ground when it is active high, at what feeds the inputs when it is active low. */
export const farEnd = ({ board }: Channel): string => (board.active === 'high' ? GROUND : board.logic!);

/** Which way the current of an input flows when it is on: out of the pin, or into it. */
export const flowOf = ({ board }: Channel): 'out' | 'in' => (board.active === 'high' ? 'out' : 'in');

/** A path from the input terminal. */
interface Path {
  readonly to: string;
  readonly flows: 'out' | 'in';
  /** From the terminal onwards. */
  readonly members: readonly Member[];
}

/** What ties a path to the channel's pin, with all that hangs on pin and terminal besides. */
export function tied(channel: Channel, path: Path): Pick<NetworkSketch, 'inner' | 'hooks' | 'on' | 'off'> {
  const { board, circuit, pin, fitted } = channel;
  const near = fitted.between;
  const beside = besideOf(channel);
  const hung = ({ to, flows, members }: Path): Hook => ({
    pin,
    active: board.active,
    flows,
    to,
    members: flows === 'out' ? members : members.toReversed(),
    circuit,
  });
  if (beside.length === 0 || near.length === 0) {
    // With nothing between them the pin is the terminal.
    const whole = { ...path, members: [...near, ...path.members] };
    return { inner: [], hooks: [hung(whole), ...beside.map(hung), ...fitted.hooks], on: [], off: [] };
  }
  const terminal = terminalOf(circuit);
  const branches = [path, ...beside].map(({ to, flows, members }): BranchPlan =>
    flows === 'out'
      ? { from: terminal, to, members, circuit }
      : { from: to, to: terminal, members: members.toReversed(), circuit },
  );
  const hook = hung({ to: terminal, flows: path.flows, members: near });
  return { inner: [terminal], hooks: [hook, ...fitted.hooks], on: branches, off: branches };
}

/** What hangs on the input terminal beside the board's path. */
function besideOf(channel: Channel): Path[] {
  const { board, circuit } = channel;
  const resistor = (key: 'pull-up' | 'pull-down'): Member[] => {
    const figure = board.inside.figure(key, 'resistance');
    const part = `${circuit}.board-${key}`;
    // What pulls against the level that switches it on takes from it.
    const against = (key === 'pull-up') === (board.active === 'low');
    return figure
      ? [
          {
            kind: 'resistance',
            part,
            ohms: closed(figure.quantity),
            origin: figure.origin,
            ...(against && { load: true }),
          },
        ]
      : [];
  };
  const [up, down] = [resistor('pull-up'), resistor('pull-down')];
  return [
    ...(up.length > 0 && board.logic !== undefined ? [{ flows: 'in', to: board.logic, members: up } as const] : []),
    ...(down.length > 0 ? [{ flows: 'out', to: GROUND, members: down } as const] : []),
    ...(board.indicator === 'parallel'
      ? [
          {
            flows: board.active === 'high' ? 'out' : 'in',
            to: farEnd(channel),
            members: indicatorBranch(board, circuit),
          } as const,
        ]
      : []),
  ];
}
