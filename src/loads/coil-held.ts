/** Whether a coil that has pulled in stays so: what flows in it for good, against what is sure to hold it. */
import { branchSteps } from './branch-working.js';
import type { CoilSetting } from './coil-accounts.js';
import type { CoilFigures } from './coil-figures.js';
import type { Holding } from './coil-voltages.js';
import { pulledBy, pulledSteps } from './coil-pulsed.js';
import type { AccountPlan, Reading, Step } from './account-plan.js';

/** What keeps it pulled in: its current counts, whatever its temperature. */
export function heldAccount(
  coil: CoilFigures,
  holding: Holding,
  setting: CoilSetting,
  base: Pick<AccountPlan, 'id' | 'kind' | 'circuits' | 'path'>,
): AccountPlan {
  const { part, circuit } = setting;
  const amps = (s: Reading): number => {
    const across = s.across(part);
    return across <= 0 ? 0 : (s.current(part) * Math.max(across - (setting.shortfall?.(s) ?? 0), 0)) / across;
  };
  /** Under pulses their mean, as the mean voltage makes it. */
  const held = (s: Reading): number => {
    const across = s.across(part);
    return s.duty(circuit) === 1 || across <= 0 ? amps(s) : (amps(s) * pulledBy(s, setting, across)) / across;
  };
  const heldSteps = (s: Reading): Step[] =>
    s.duty(circuit) === 1
      ? []
      : [
          ...pulledSteps(s, setting, s.across(part)),
          {
            name: 'I_mean',
            says: 'what that mean makes flow',
            formula: 'I_coil * V_mean / V_coil',
            with: {
              I_coil: [amps(s), 'A'],
              V_mean: [pulledBy(s, setting, s.across(part)), 'V'],
              V_coil: [s.across(part), 'V'],
            },
            gives: [held(s), 'A'],
          },
        ];
  const needed = (s: Reading): readonly [number, number] =>
    s.typical ? [holding.volts.typ, coil.ohms.typ] : [holding.volts.max, coil.ohms.min];
  return {
    ...base,
    title: `coil of ${setting.circuit}, held`,
    quantity: 'current',
    direction: 'at-least',
    recipes: setting.shortfall
      ? ['draw-least', 'starved', 'drive-worst', 'draw-most']
      : ['draw-least', 'starved', 'draw-most'],
    read: held,
    limits: [
      {
        value: (s) => needed(s)[0] / needed(s)[1],
        stated: holding.stated,
        grade: 'operating',
        isFunction: true,
        margin: 'none',
        origin: holding.origin,
        condition: `what holds it, over its resistance at ${coil.reference} °C`,
      },
    ],
    steps: (s) => [
      ...(setting.lossSteps?.(s) ?? []),
      ...branchSteps(s.branch(part), 'current that flows in it for good', 'I_coil'),
      ...heldSteps(s),
      {
        name: 'I_held',
        says: 'current that is sure to hold it, whatever its temperature',
        formula: 'V_holding / R',
        with: { V_holding: [needed(s)[0], 'V'], R: [needed(s)[1], 'Ω'] },
        gives: [needed(s)[0] / needed(s)[1], 'A'],
      },
    ],
  };
}
