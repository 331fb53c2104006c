/** What takes so many watts whatever it gets, with its figures put in; behind a chopper they come of the current that it holds. */
import { copperFactor } from '../circuit/copper.js';
import type { Held } from '../loads/account-plan.js';
import type { HeldCurrent, Member } from '../loads/branch-plan.js';
import { wattsOf } from '../loads/held.js';
import type { Interval } from '../quantity/interval.js';
import type { HeldPart } from './builds.js';
import type { FittedMember } from './fitted.js';
import { fittedMember } from './fitted.js';

/** @param take the value of a figure in this corner or build @param celsius ambient, °C */
export function fitPower(
  member: Member & { readonly kind: 'power' },
  take: (figure: Interval, what?: HeldPart) => number,
  celsius: number,
): FittedMember {
  if (member.held === undefined) return fittedMember(member, { watts: take(member.watts) });
  const held = heldAt(member.held, take, celsius);
  return fittedMember(member, { watts: wattsOf(held), held });
}

function heldAt(
  { windings, amps, ohms, copper, rise, bridge, shaft }: HeldCurrent,
  take: (figure: Interval, what: HeldPart) => number,
  celsius: number,
): Held {
  return {
    windings,
    amps: take(amps, 'current'),
    ohms: take(ohms, 'winding') * copperFactor(celsius + take(rise, 'rise'), copper),
    bridge: take(bridge, 'bridge'),
    shaft: take(shaft, 'shaft'),
  };
}
