/** The input of a stage that reads levels: a gate driver, a bridge. Above its highest threshold it is surely high, below its lowest low. */
import { closed } from '../../quantity/quantity.js';
import type { AccountPlan, LimitPlan, Reading } from '../account-plan.js';
import type { Gate } from './gate.js';
import type { StageSetting } from './stage.js';

export type LogicAccount = Pick<AccountPlan, 'id' | 'kind' | 'circuits' | 'path' | 'loads'>;

/** Both of its levels, each an account. */
export const readsLevels = (setting: StageSetting, base: LogicAccount, gate: Gate): readonly AccountPlan[] => [
  reads('high', setting, base, gate),
  reads('low', setting, { ...base, id: `${setting.prefix}.off` }, gate),
];

/** Whether its input is understood: high above its highest threshold, low below its lowest. */
function reads(
  level: 'high' | 'low',
  { title, figures, conducts, drive }: StageSetting,
  base: LogicAccount,
  gate: Gate,
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
  const resting = conducts === 'on' ? ('off' as const) : ('on' as const);
  /** An input that floats may stand anywhere. */
  const atRest = (s: Reading): number => (gate.floats(resting) ? s.voltage(drive.rail) : gate.rest(s));
  const off = (level === 'high') === (conducts === 'off');
  return {
    ...base,
    title: `${title}, input ${level === 'high' ? 'voltage' : 'at rest'}`,
    quantity: 'voltage',
    direction: level === 'high' ? 'at-least' : 'at-most',
    recipes: level === 'high' || !off ? ['drive-worst', 'drive-best'] : ['let-go-worst', 'let-go-best'],
    ...(off && { off }),
    read: level === 'high' ? gate.volts : atRest,
    limits: limit ? [limit] : [],
    ...(!limit && {
      missing: {
        figure: 'threshold',
        asks: `between which voltages does the input of ${title} switch (its \`threshold\`)?`,
      },
    }),
    steps: level === 'high' ? gate.steps : gate.restSteps,
  };
}
