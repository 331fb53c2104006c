/**
 * An input with a coupler: logic supply, resistor, indicator and coupler's LED in series with the pin; behind the coupler,
 * from the coils' supply, the base of the output transistor.
 */
import { closed } from '../../quantity/quantity.js';
import { branchSteps } from '../branch-working.js';
import { couplerOf, ledAccounts, ledMember, outputMember, passedOn, passedOnSteps } from '../drivers/coupler.js';
import type { Transistor } from '../drivers/transistor.js';
import { mostGain } from '../drivers/transistor.js';
import { junctionSpread } from '../laws.js';
import type { Hook, NetworkSketch } from '../lowering.js';
import type { BranchPlan, Member, Reading, Step } from '../plan.js';
import { GROUND } from '../plan.js';
import type { Channel, Stage } from './board.js';
import { usualRatio } from './coupler.js';

export function optoStage(channel: Channel, transistor: Transistor): Stage | undefined {
  const { board, circuit, path, pin, supply, fitted } = channel;
  const inside = board.input.figures.within('input');
  const output = board.input.figures.within('output');
  const led = `${circuit}.input`;
  const coupler = couplerOf(inside, () => usualRatio(board, inside));
  const resistor = inside.figure('series', 'resistance');
  const indicator = board.indicator === 'in-series' ? inside.curve('indicator-drop', 'voltage', 'current') : undefined;
  if (coupler === undefined || resistor === undefined) {
    inside.problem(
      coupler === undefined ? 'led-drop' : 'series',
      `the coupler input of \`${board.input.id}\` needs \`series\` and \`led-drop\``,
      '`input: { series: 1 kΩ, led-drop: 1.2 V, … }`',
    );
    return undefined;
  }
  const { transfer } = coupler;
  const chain: Member[] = [
    { kind: 'resistance', part: `${circuit}.series`, ohms: closed(resistor.quantity), origin: resistor.origin },
    ...(indicator
      ? [
          {
            kind: 'junction' as const,
            part: `${circuit}.indicator`,
            law: junctionSpread(indicator),
            origin: indicator.origin,
          },
        ]
      : []),
    ledMember(coupler, led),
  ];
  const hook: Hook =
    board.active === 'low'
      ? { pin, active: 'low', flows: 'in', to: board.logic!, members: chain, circuit }
      : { pin, active: 'high', flows: 'out', to: GROUND, members: chain, circuit };
  const base = `${circuit}.base`;
  const baseResistor = output.figure('base-resistor', 'resistance');
  const coupled: BranchPlan = {
    from: supply,
    to: GROUND,
    circuit,
    members: [
      outputMember(coupler, `${circuit}.coupler`),
      ...(baseResistor
        ? [
            {
              kind: 'resistance' as const,
              part: `${circuit}.base-resistor`,
              ohms: closed(baseResistor.quantity),
              origin: baseResistor.origin,
            },
          ]
        : []),
      {
        kind: 'junction',
        part: base,
        law: transistor.base,
        ...(transistor.baseOrigin && { origin: transistor.baseOrigin }),
      },
    ],
  };
  const network = (id: string, rest: Partial<NetworkSketch>): NetworkSketch => ({
    id,
    circuits: [circuit],
    side: 'control',
    inner: [],
    hooks: [],
    on: [],
    off: [],
    ...rest,
  });
  // A coupler gives its ratio's worth of current, or what the base resistor lets through, whichever is less.
  const through = (s: Reading, share = 1): number => Math.min(s.current(base), share * passedOn(coupler, led, s));
  return {
    networks: [
      network(`${circuit}.input`, { hooks: [hook, ...fitted] }),
      network(`${circuit}.base`, { on: [coupled] }),
    ],
    accounts: ledAccounts(coupler, { led, circuit, path }),
    baseCurrent: (s) => through(s),
    baseSteps: (s) => [
      ...branchSteps(s.branch(led), 'current through the coupler’s LED'),
      ...passedOnSteps(coupler, led, s),
      ...branchSteps(s.branch(base), 'what the base resistor lets through'),
    ],
    ...(transfer && { aged: (s: Reading) => through(s, transfer.left(s.current(led), s)) }),
    leak: (s) =>
      transfer && transistor.gain ? transfer.most(s.current(led), s) * s.current(led) * mostGain(transistor, s) : 0,
    leakSteps: (s) => [
      ...branchSteps(s.branch(led), 'current that the coupler’s LED keeps'),
      ...(transfer && transistor.gain
        ? [
            {
              name: 'I_off',
              says: 'what the coupler and the transistor make of it at most, before the coil limits it',
              formula: 'ratio * gain * I',
              with: {
                ratio: [transfer.most(s.current(led), s), ''],
                gain: [mostGain(transistor, s), ''],
                I: [s.current(led), 'A'],
              },
              gives: [transfer.most(s.current(led), s) * mostGain(transistor, s) * s.current(led), 'A'],
            } satisfies Step,
          ]
        : []),
    ],
  };
}
