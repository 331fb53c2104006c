/**
 * What pins turn into heat: in the output stage of each its current squared times its resistance; of a whole chip, what it takes
 * itself besides. Currents are most with the lowest resistance, and heat is most with the highest: a corner takes the one for
 * the currents and the other one for the heat, so that the sum is no less than it can be.
 */
import type { Step } from '../loads/account-plan.js';
import { meanSteps } from '../loads/pulses.js';
import type { PinAccountPlan } from '../project/pin-plan.js';
import type { FittedMember } from './fitted.js';
import type { Solution } from './solution.js';

/** One pin: amperes through it, whichever way, and ohms. */
interface Heated {
  readonly amps: number;
  readonly ohms: number;
}

/** A pin's resistance for its heat in a corner: the other end of its range, or as the build has it. */
function ohmsOf({ member, ohms }: FittedMember, s: Solution): number {
  if (member.kind !== 'pin' || s.typical || s.corner.build !== undefined) return ohms;
  return member.ohms.min + member.ohms.max - ohms;
}

/** @param networks those that its pins lie in */
function heatedPins(s: Solution, wanted: ReadonlySet<string>, networks: readonly number[]): Heated[] {
  return networks.flatMap((k) => {
    const { fitted, currents } = s.network(k);
    return fitted.plans.flatMap((p, b): Heated[] => {
      const pin = fitted.members[b]!.find((m) => m.member.kind === 'pin');
      if (p.pin === undefined || pin === undefined || !wanted.has(p.pin.pin)) return [];
      return [{ amps: Math.abs(currents[b]!), ohms: ohmsOf(pin, s) }];
    });
  });
}

/** Watts. */
export function heatOf(
  s: Solution,
  { own, heat }: PinAccountPlan,
  pins: ReadonlySet<string>,
  networks: number[],
): number {
  const chip = own.reduce((sum, { part }) => sum + s.current(part) * s.voltage(heat!.rail), 0);
  return heatedPins(s, pins, networks).reduce((sum, { amps, ohms }) => sum + amps * amps * ohms, chip);
}

export function heatSteps(s: Solution, plan: PinAccountPlan, pins: ReadonlySet<string>, networks: number[]): Step[] {
  const values: Record<string, readonly [number, string]> = {};
  const heated = heatedPins(s, pins, networks);
  const terms = heated.flatMap(({ amps, ohms }, k): string[] => {
    if (amps === 0) return [];
    const [i, r] = heated.length === 1 ? ['I', 'R_pin'] : [`I_${k + 1}`, `R_${k + 1}`];
    values[i] = [amps, 'A'];
    values[r] = [ohms, 'Ω'];
    return [`${i}^2 * ${r}`];
  });
  for (const { part } of plan.own) {
    values['I_chip'] = [s.current(part), 'A'];
    values['V_supply'] = [s.voltage(plan.heat!.rail), 'V'];
    terms.push('I_chip * V_supply');
  }
  return [
    {
      name: 'P',
      says: `what ${heated.length === 1 ? 'the pin turns' : 'its pins turn'} into heat, with the highest resistance${plan.own.length > 0 ? ', and what it takes itself' : ''}`,
      formula: terms.join(' + ') || '0',
      with: values,
      gives: [heatOf(s, plan, pins, networks), 'W'],
    },
    ...meanSteps(s, 'P_mean', 'its mean over a period of the pulses', 'W', (at) => heatOf(at, plan, pins, networks)),
  ];
}
