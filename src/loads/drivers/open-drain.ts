/** A part with an open-drain or open-collector output as a stage: a logic input, and a switch to ground with a loss of its own. */
import { closed } from '../../quantity/quantity.js';
import type { Figures } from '../figures.js';
import { inputAtBoot } from '../at-boot.js';
import { rating } from '../limits.js';
import type { Reading } from '../account-plan.js';
import type { Member } from '../branch-plan.js';
import { GROUND } from '../branch-plan.js';
import { heatAccount, heatOf } from './junction-heat.js';
import { carriedCurrent, carriesOf, offVoltage } from './ratings.js';
import { saturationMembers } from './saturation.js';
import type { Stage, StageSetting, StageType } from './stage.js';
import { stageAccount } from './stage.js';

/** What a logic input takes when nobody says so, amperes. Common practice, no source. */
const USUAL_INPUT = { min: 0, typ: 1e-6, max: 10e-6 };

function lower(setting: StageSetting): Stage {
  const { circuit, prefix, id, title, supply, drive, figures } = setting;
  const part = `${prefix}.input`;
  const amps = figures.interval('input-current', 'current') ?? USUAL_INPUT;
  figures.assume(`the logic input of the ${title} reads the levels it gets, and takes up to 10 µA unless stated`);
  const tied = drive.tie({ circuit, to: GROUND, flows: 'out', members: [{ kind: 'current', part, amps }] });
  const members = output(figures, id);
  const base = stageAccount(setting);
  const bears = rating(figures, 'maximum-voltage', 'voltage', { margin: 'none' });
  const warm = heatAccount(
    { ...base, title: `${title}, junction` },
    heatOf(figures, title),
    (s) => s.current(id) * s.across(id),
    ['hottest', 'draw-most', 'draw-least'],
  );
  const stated = figures.says('on-resistance') || figures.says('saturation');
  const dark = figures.interval('leakage', 'current')?.max ?? 0;
  const leak = (s: Reading): number => (s.typical ? 0 : dark);
  return {
    members,
    networks: [{ id, circuits: [circuit], side: 'control', inner: [], ...tied }],
    accounts: [
      ...(drive.bare === undefined ? [] : inputAtBoot(circuit, setting.path, part, drive.rail)),
      carriedCurrent(base, circuit, id, carriesOf(figures), title),
      ...(bears ? [offVoltage(base, circuit, supply, bears, title)] : []),
      stated
        ? warm
        : {
            ...warm,
            limits: [],
            read: () => undefined,
            missing: {
              figure: 'saturation',
              asks: `what does the ${title} keep for itself (its \`saturation\` or \`on-resistance\`)?`,
            },
          },
    ],
    unlimited: [],
    steps: () => [],
    leak,
    leakSteps: (s) => [
      {
        name: 'I_off',
        says: 'what its output lets through when it is off',
        formula: 'I_leakage',
        with: { I_leakage: [leak(s), 'A'] },
        gives: [leak(s), 'A'],
      },
    ],
  };
}

/** What the output keeps; a closed switch where nobody says so. */
function output(figures: Figures, part: string): readonly Member[] {
  const resistance = figures.figure('on-resistance', 'resistance');
  if (resistance) {
    const ohms = closed(resistance.quantity, { min: () => 0 });
    return [{ kind: 'resistance', part, ohms, origin: resistance.origin }];
  }
  const members = saturationMembers(figures.curve('saturation', 'voltage', 'current'), part);
  return members.length > 0 ? members : [{ kind: 'drop', part, volts: { min: 0, typ: 0, max: 0 } }];
}

export const openDrain: StageType = {
  conducts: (level, _, lit) => level === (lit ?? 'high'),
  gives: (conducts) => (conducts ? 'low' : 'open'),
  lower,
};
