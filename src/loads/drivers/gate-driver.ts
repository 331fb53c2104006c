/** A gate driver as a stage: it reads its input as high or low and swings its output to its own supply or to ground. */
import { closed } from '../../quantity/quantity.js';
import { rating } from '../limits.js';
import type { NetworkSketch } from '../lowering.js';
import type { AccountPlan, LimitPlan, Reading } from '../plan.js';
import { GROUND } from '../plan.js';
import { gateOf } from './gate.js';
import type { Stage, StageSetting, StageType } from './stage.js';

/** What the output of a gate driver has when nobody states it, ohms. Common practice, no source. */
const USUAL_OUTPUT = { min: 1, typ: 5, max: 15 };

function lower(setting: StageSetting): Stage | undefined {
  const { circuit, prefix, id, path, title, figures, loads, input } = setting;
  const problem = (says: string, expected: string): undefined => {
    input.bench.problem({ path: [...path], on: 'key', says, expected });
    return undefined;
  };
  if (loads.length === 0)
    return problem('a gate driver has no load of its own', 'a MOSFET in the stage after it, or that MOSFET alone');
  const named = figures.word('supply');
  if (named === undefined)
    return problem('a gate driver swings to a supply that nobody names', '`supply:` with the name of a supply or rail');
  const rail = input.bench.node(named, [...path, 'supply']);
  if (rail === undefined) return undefined;
  const gate = gateOf(setting, 'low');
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
    networks: [...gate.networks, ...ownDraw(setting, rail)],
    accounts: [
      reads('high', setting, base, gate),
      reads('low', setting, { ...base, id: `${prefix}.off` }, gate),
      ...(bears ? [supplied(base, title, rail, bears)] : []),
    ],
    unlimited: [],
    steps: gate.steps,
    leak: () => 0,
    leakSteps: () => [],
  };
}

/** The supply that it bears. */
const supplied = (base: Base, title: string, rail: string, limit: LimitPlan): AccountPlan => ({
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

type Base = Pick<AccountPlan, 'id' | 'kind' | 'circuits' | 'path' | 'loads'>;

/** Whether its input is understood: high above its highest threshold, low below its lowest. */
function reads(
  level: 'high' | 'low',
  { title, figures, conducts }: StageSetting,
  base: Base,
  gate: ReturnType<typeof gateOf>,
): AccountPlan {
  const threshold = figures.figure('threshold', 'voltage');
  const volts = threshold && closed(threshold.quantity);
  const limit: LimitPlan | undefined = threshold &&
    volts && {
      value: (s: Reading) => (s.typical ? volts.typ : level === 'high' ? volts.max : volts.min),
      stated: threshold.quantity.stated,
      grade: 'operating',
      isFunction: true,
      margin: 'function-voltage',
      origin: threshold.origin,
      condition: `input threshold: ${level} ${level === 'high' ? 'above its highest' : 'below its lowest'}`,
    };
  const off = (level === 'high') === (conducts === 'off');
  return {
    ...base,
    title: `${title}, input ${level === 'high' ? 'voltage' : 'at rest'}`,
    quantity: 'voltage',
    direction: level === 'high' ? 'at-least' : 'at-most',
    recipes: level === 'high' || !off ? ['drive-worst', 'drive-best'] : ['let-go-worst', 'let-go-best'],
    ...(off && { off }),
    read: gate.volts,
    limits: limit ? [limit] : [],
    ...(!limit && {
      missing: {
        figure: 'threshold',
        asks: `between which voltages does the input of ${title} switch (its \`threshold\`)?`,
      },
    }),
    steps: gate.steps,
  };
}

export const gateDriver: StageType = {
  conducts: (level) => level === 'high',
  gives: (conducts) => (conducts ? 'high' : 'low'),
  lower,
};
