/** An input that goes to the base of the channel's transistor through a resistor. */
import { closed } from '../../quantity/quantity.js';
import { branchSteps } from '../branch-working.js';
import type { Transistor } from '../drivers/transistor.js';
import { mostGain } from '../drivers/transistor.js';
import type { Hook } from '../lowering.js';
import type { Member } from '../plan.js';
import { GROUND } from '../plan.js';
import type { Channel, Stage } from './board.js';

/** A board whose input goes to the base of its transistor through a resistor. */
export function transistorStage(channel: Channel, transistor: Transistor): Stage | undefined {
  const { board, circuit, pin, fitted } = channel;
  const inside = board.input.figures.within('input');
  const resistor = inside.figure('series', 'resistance');
  if (resistor === undefined) {
    inside.problem(
      'series',
      `the transistor input of \`${board.input.id}\` needs its base resistor`,
      '`input: { series: 1 kΩ, … }`',
    );
    return undefined;
  }
  if (board.active === 'low') {
    inside.problem('active', 'a transistor input that is active low is not computed yet', '`active: high`');
    return undefined;
  }
  const base = `${circuit}.base`;
  const members: Member[] = [
    { kind: 'resistance', part: `${circuit}.series`, ohms: closed(resistor.quantity), origin: resistor.origin },
    {
      kind: 'junction',
      part: base,
      law: transistor.base,
      ...(transistor.baseOrigin && { origin: transistor.baseOrigin }),
    },
  ];
  const hook: Hook = { pin, active: 'high', flows: 'out', to: GROUND, members, circuit };
  return {
    networks: [
      {
        id: `${circuit}.input`,
        circuits: [circuit],
        side: 'control',
        inner: [],
        hooks: [hook, ...fitted],
        on: [],
        off: [],
      },
    ],
    accounts: [],
    baseCurrent: (s) => s.current(base),
    baseSteps: (s) => branchSteps(s.branch(base), 'current from the pin into the base'),
    leak: (s) => (transistor.gain ? s.current(base) * mostGain(transistor, s) : 0),
    leakSteps: (s) => branchSteps(s.branch(base), 'current that the base keeps'),
  };
}
