/**
 * An input with a coupler: logic supply, resistor, indicator and coupler's LED in series with the pin; behind the coupler,
 * from the coils' supply, the base of the output transistor.
 */
import { closed } from '../../quantity/quantity.js';
import { branchSteps } from '../branch-working.js';
import { transferLaw } from '../drivers/coupler.js';
import type { Transistor } from '../drivers/transistor.js';
import { mostGain } from '../drivers/transistor.js';
import { junctionSpread } from '../laws.js';
import { rating } from '../limits.js';
import type { Hook, NetworkSketch } from '../lowering.js';
import type { AccountPlan, BranchPlan, Member, Reading, Step } from '../plan.js';
import { GROUND } from '../plan.js';
import type { Channel, Stage } from './board.js';
import { noRatio, saturationDrop, usualRatio } from './coupler.js';

export function optoStage(channel: Channel, transistor: Transistor): Stage | undefined {
  const { board, circuit, path, pin, supply, fitted } = channel;
  const inside = board.input.figures.within('input');
  const output = board.input.figures.within('output');
  const led = `${circuit}.input`;
  const drop = inside.curve('led-drop', 'voltage', 'current');
  const ratio = inside.curve('transfer-ratio', 'ratio', 'current') ?? usualRatio(board, inside);
  const resistor = inside.figure('series', 'resistance');
  const indicator = board.indicator === 'in-series' ? inside.curve('indicator-drop', 'voltage', 'current') : undefined;
  if (drop === undefined || resistor === undefined) {
    inside.problem(
      drop === undefined ? 'led-drop' : 'series',
      `the coupler input of \`${board.input.id}\` needs \`series\` and \`led-drop\``,
      '`input: { series: 1 kΩ, led-drop: 1.2 V, … }`',
    );
    return undefined;
  }
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
    { kind: 'junction', part: led, law: junctionSpread(drop), origin: drop.origin },
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
      saturationDrop(inside, `${circuit}.coupler`),
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
  const given = ratio && transferLaw(ratio);
  const limit = rating(inside, 'led-maximum-current', 'current');
  const carries: AccountPlan = {
    id: led,
    kind: 'input',
    title: `coupler input of ${circuit}`,
    quantity: 'current',
    direction: 'at-most',
    circuits: [circuit],
    path,
    recipes: ['draw-most', 'draw-least'],
    read: (s) => s.current(led),
    limits: limit ? [limit] : [],
    books: [{ circuit, part: led }],
    ...(!limit && {
      missing: {
        figure: 'led-maximum-current',
        asks: `what current may the coupler LED of ${circuit} carry (its \`led-maximum-current\`)?`,
      },
    }),
    steps: (s) => branchSteps(s.branch(led), 'current through the coupler’s LED'),
  };
  // A coupler gives its ratio's worth of current, or what the base resistor lets through, whichever is less.
  const through = (s: Reading, share = 1): number =>
    Math.min(s.current(base), given ? share * given.ratio(s.current(led), s) * s.current(led) : 0);
  return {
    networks: [
      network(`${circuit}.input`, { hooks: [hook, ...fitted] }),
      network(`${circuit}.base`, { on: [coupled] }),
    ],
    accounts: given ? [carries] : [carries, noRatio(circuit, path)],
    baseCurrent: (s) => through(s),
    baseSteps: (s) => [
      ...branchSteps(s.branch(led), 'current through the coupler’s LED'),
      ...(given
        ? [
            {
              name: 'I_coupler',
              says: 'what the coupler can pass on',
              formula: 'ratio * I',
              with: { ratio: [given.ratio(s.current(led), s), ''], I: [s.current(led), 'A'] },
              gives: [given.ratio(s.current(led), s) * s.current(led), 'A'],
              sources: [
                `${circuit}.input: ${ratio.origin.document}${ratio.origin.where ? `, ${ratio.origin.where}` : ''}`,
              ],
            } satisfies Step,
          ]
        : []),
      ...branchSteps(s.branch(base), 'what the base resistor lets through'),
    ],
    ...(given && { aged: (s: Reading) => through(s, given.left(s.current(led), s)) }),
    leak: (s) =>
      given && transistor.gain ? given.most(s.current(led), s) * s.current(led) * mostGain(transistor, s) : 0,
    leakSteps: (s) => [
      ...branchSteps(s.branch(led), 'current that the coupler’s LED keeps'),
      ...(given && transistor.gain
        ? [
            {
              name: 'I_off',
              says: 'what the coupler and the transistor make of it at most, before the coil limits it',
              formula: 'ratio * gain * I',
              with: {
                ratio: [given.most(s.current(led), s), ''],
                gain: [mostGain(transistor, s), ''],
                I: [s.current(led), 'A'],
              },
              gives: [given.most(s.current(led), s) * mostGain(transistor, s) * s.current(led), 'A'],
            } satisfies Step,
          ]
        : []),
    ],
  };
}
