/** An input that goes to the channel's own transistor through a resistor. */
import { closed } from '../../quantity/quantity.js';
import { bridgeStage } from '../drivers/bridge-stage.js';
import { pinDrive } from '../drivers/drive.js';
import { gateDriver } from '../drivers/gate-driver.js';
import { openDrain } from '../drivers/open-drain.js';
import type { StageType } from '../drivers/stage.js';
import type { Channel, Front } from './board.js';
import { indicatorOf } from './indicator.js';
import { tied } from './input-path.js';

/** Keys of a resistor that a transistor or coupler has at its own input. */
const OWN = ['base-resistor', 'gate-resistor', 'series'];

/** Outputs with a logic input. */
const LOGIC: readonly StageType[] = [openDrain, gateDriver, bridgeStage];

export function transistorInput(channel: Channel): Front | undefined {
  const { board, circuit, pin } = channel;
  const { inside } = board;
  const resistor = inside.figure('series', 'resistance');
  const { type, figures } = board.output![0]!;
  // A logic input takes its level as it is; all others have a resistor of their own, or need one before them.
  const needs = !LOGIC.includes(type);
  if (resistor === undefined && needs && !OWN.some((key) => figures.says(key))) {
    inside.problem(
      'series',
      `the transistor input of \`${board.input.id}\` needs the resistor before its transistor`,
      '`input: { series: 1 kΩ, … }`',
    );
    return undefined;
  }
  const before = [
    ...(resistor
      ? [
          {
            kind: 'resistance' as const,
            part: `${circuit}.series`,
            ohms: closed(resistor.quantity),
            origin: resistor.origin,
          },
        ]
      : []),
    ...(board.indicator === 'in-series' ? [indicatorOf(board, circuit)] : []),
  ];
  const { bare: _, ...drive } = pinDrive(pin, board.active);
  const path = ({ to, flows, members }: Parameters<typeof drive.tie>[0]) =>
    tied(channel, { to, flows, members: [...before, ...members] });
  return {
    drive: {
      ...drive,
      tie: (way) => {
        const { hooks, on, off } = path(way);
        return { hooks, on, off };
      },
    },
    inner: tied(channel, { to: '', flows: 'out', members: [] }).inner,
    networks: [],
    accounts: [],
  };
}
