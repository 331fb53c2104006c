/** A gate driver as a stage: it reads its input as high or low and swings its output to its own supply or to ground. */
import { closed } from '../../quantity/quantity.js';
import { rating } from '../limits.js';
import type { NetworkSketch } from '../lowering.js';
import type { AccountPlan, LimitPlan } from '../account-plan.js';
import { GROUND } from '../branch-plan.js';
import { gateOf } from './gate.js';
import { inputBears, inputClamp } from './input-clamp.js';
import type { LogicAccount } from './logic-input.js';
import { readsLevels } from './logic-input.js';
import type { Stage, StageSetting, StageType } from './stage.js';

/** What the output of a gate driver has when nobody states it, ohms. Common practice, no source. */
const USUAL_OUTPUT = { min: 1, typ: 5, max: 15 };

function lower(setting: StageSetting): Stage | undefined {
  const { circuit, id, path, title, figures, loads, input, feed } = setting;
  const problem = (says: string, expected: string): undefined => {
    input.bench.problem({ path: [...path], on: 'key', says, expected });
    return undefined;
  };
  if (loads.length === 0)
    return problem('a gate driver has no load of its own', 'a MOSFET in the stage after it, or that MOSFET alone');
  const named = figures.word('supply');
  if (named === undefined && feed === undefined)
    return problem('a gate driver swings to a supply that nobody names', '`supply:` with the name of a supply or rail');
  const rail = named === undefined ? feed : input.bench.node(named, [...path, 'supply']);
  if (rail === undefined) return undefined;
  const gate = gateOf(setting, 'low');
  const { drive } = setting;
  const seat = {
    figures,
    circuit,
    path,
    rail,
    pinRail: drive.rail,
    pin: drive.pin,
    owner: title,
    told: `the input of ${title}`,
  };
  // On a relay board, and behind another stage, nothing of it hangs on a pin.
  const from = feed === undefined ? gate.at : undefined;
  const clamp = from && inputClamp({ ...seat, from });
  const output = figures.interval('on-resistance', 'resistance');
  if (output === undefined)
    figures.assume(
      `output resistance of ${title}: ${USUAL_OUTPUT.min} to ${USUAL_OUTPUT.max} Ω, since nobody states it`,
    );
  const bears = rating(figures, 'maximum-voltage', 'voltage', { margin: 'none' });
  const base = {
    id,
    kind: 'driver' as const,
    circuits: [circuit],
    path,
    loads,
  };
  return {
    rail,
    members: [{ kind: 'resistance', part: id, ohms: output ?? USUAL_OUTPUT }],
    networks: [
      ...gate.networks.map((n) => (clamp ? { ...n, whenDead: clamp.whenDead } : n)),
      ...ownDraw(setting, rail),
    ],
    ...(clamp && { ends: clamp.ends }),
    accounts: [
      ...readsLevels(setting, base, gate),
      ...(from ? inputBears(seat, `${circuit}.input`, input.bench) : []),
      ...(bears ? [supplied(base, title, rail, bears)] : []),
    ],
    unlimited: [],
    steps: gate.steps,
    leak: () => 0,
    leakSteps: () => [],
  };
}

/** The supply that it bears. */
const supplied = (base: LogicAccount, title: string, rail: string, limit: LimitPlan): AccountPlan => ({
  ...base,
  title: `${title}, supply`,
  quantity: 'voltage',
  direction: 'at-most',
  recipes: ['lightest', 'starved'],
  read: (s) => s.voltage(rail),
  limits: [limit],
  steps: (s) => [
    {
      name: 'V',
      says: 'its own supply',
      formula: 'V',
      with: { V: [s.voltage(rail), 'V'] },
      gives: [s.voltage(rail), 'V'],
    },
  ],
});

/** What it takes for itself. */
function ownDraw({ id, figures }: StageSetting, rail: string): NetworkSketch[] {
  const figure = figures.figure('quiescent', 'current');
  if (figure === undefined) return [];
  const part = `${id}.own`;
  const branch = {
    from: rail,
    to: GROUND,
    circuit: id,
    members: [{ kind: 'current' as const, part, amps: closed(figure.quantity), origin: figure.origin }],
  };
  return [{ id: part, circuits: [], side: 'load', inner: [], hooks: [], on: [branch], off: [branch] }];
}

export const gateDriver: StageType = {
  conducts: (level) => level === 'high',
  gives: (conducts) => (conducts ? 'high' : 'low'),
  lower,
};
