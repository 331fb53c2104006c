/**
 * An H-bridge as the output of a relay board: its input is logic, and the coil lies between two of its outputs. Both switches in
 * the coil's way keep one drop or one resistance together; switched off, both outputs stand at ground and nothing flows.
 */
import { closed } from '../../quantity/quantity.js';
import { rating } from '../limits.js';
import type { NetworkSketch } from '../lowering.js';
import type { Reading } from '../plan.js';
import { GROUND } from '../plan.js';
import { gateOf } from './gate.js';
import { bridgeSwitches } from './h-bridge.js';
import { heatAccount, heatOf } from './junction-heat.js';
import { readsLevels } from './logic-input.js';
import { carriedCurrent, carriesOf, offVoltage } from './ratings.js';
import type { Stage, StageSetting, StageType } from './stage.js';
import { stageAccount } from './stage.js';

function lower(setting: StageSetting): Stage {
  const { circuit, id, title, supply, figures, loads } = setting;
  const gate = gateOf(setting, 'low');
  const members = bridgeSwitches(figures, id);
  const base = stageAccount(setting);
  const bears = rating(figures, 'maximum-voltage', 'voltage', { margin: 'none' });
  const lost = (s: Reading): number => s.current(id) * s.across(id);
  const warm = heatAccount({ ...base, title: `${title}, junction` }, heatOf(figures, title), lost, [
    'hottest',
    'draw-most',
    'draw-least',
  ]);
  return {
    members: members.length > 0 ? members : [{ kind: 'drop', part: id, volts: { min: 0, typ: 0, max: 0 } }],
    networks: [...gate.networks, ...ownDraw(setting)],
    accounts: [
      ...readsLevels(setting, { ...base, loads }, gate),
      carriedCurrent(base, circuit, id, carriesOf(figures), title),
      ...(bears ? [offVoltage(base, circuit, supply, bears, title)] : []),
      members.length > 0
        ? warm
        : {
            ...warm,
            limits: [],
            read: () => undefined,
            missing: {
              figure: 'on-resistance',
              asks: `what do both switches of the bridge of ${circuit} keep together (its \`drop\` or \`on-resistance\`)?`,
            },
          },
    ],
    unlimited: [],
    steps: gate.steps,
    leak: () => 0,
    leakSteps: () => [],
  };
}

/** What it takes for itself, whether the coil is on or not. */
function ownDraw({ id, figures, supply }: StageSetting): NetworkSketch[] {
  const figure = figures.figure('quiescent', 'current');
  if (figure === undefined) return [];
  const part = `${id}.own`;
  const branch = {
    from: supply,
    to: GROUND,
    circuit: id,
    members: [{ kind: 'current' as const, part, amps: closed(figure.quantity), origin: figure.origin }],
  };
  return [{ id: part, circuits: [], side: 'load', inner: [], hooks: [], on: [branch], off: [branch] }];
}

export const bridgeStage: StageType = {
  conducts: (level) => level === 'high',
  gives: (conducts) => (conducts ? 'low' : 'open'),
  lower,
};
