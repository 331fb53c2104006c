/**
 * An H-bridge as the output of a relay board: its input is logic, and the coil lies between two of its outputs. Both switches in
 * the coil's way keep one drop or one resistance together; switched off, both outputs stand at ground and nothing flows.
 */
import { rating } from '../limits.js';
import { gateOf } from './gate.js';
import { bridgeDraw, bridgeHeat, bridgeSwitches } from './h-bridge.js';
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
  return {
    members: members.length > 0 ? members : [{ kind: 'drop', part: id, volts: { min: 0, typ: 0, max: 0 } }],
    networks: [...gate.networks, ...bridgeDraw(figures, id, supply)],
    accounts: [
      ...readsLevels(setting, { ...base, loads }, gate),
      carriedCurrent(base, circuit, id, carriesOf(figures), title),
      ...(bears ? [offVoltage(base, circuit, supply, bears, title)] : []),
      bridgeHeat({ ...base, title: `${title}, junction` }, figures, members, (s) => s.current(id) * s.across(id)),
    ],
    unlimited: [],
    steps: gate.steps,
    leak: () => 0,
    leakSteps: () => [],
  };
}

export const bridgeStage: StageType = {
  conducts: (level) => level === 'high',
  gives: (conducts) => (conducts ? 'low' : 'open'),
  lower,
};
