/**
 * What a thing with a draw of its own takes of a rail that only leaks feed. Nobody states what it does far below its voltage:
 * likely it takes the less the lower that stands, at the least nothing before it works. (At the most it takes all that comes,
 * which is a rail that is held at 0 V.)
 */
import type { Member } from '../loads/branch-plan.js';
import { exactly } from '../quantity/interval.js';
import { INPUT_OHMS, READ_AT } from './loose-pins.js';

/** What a member takes there. @param works volts from which it works, where stated */
export type Appetite = (member: Member, works: number | undefined) => Member;

/** In proportion to what it takes at 5 V. */
export const inProportion: Appetite = (member) => {
  const { part } = member;
  if (member.kind !== 'current' && member.kind !== 'power') return member;
  const taken = member.kind === 'current' ? member.amps : member.watts;
  // Where nobody states the least, half the typical stands in.
  const least = taken.min > 0 ? taken.min : taken.typ / 2;
  const ohms = (figure: number): number =>
    figure > 0 ? Math.min((member.kind === 'current' ? READ_AT : READ_AT ** 2) / figure, INPUT_OHMS) : INPUT_OHMS;
  return {
    kind: 'resistance',
    part,
    ohms: { min: ohms(taken.max), typ: ohms(taken.typ), max: ohms(least) },
    load: true,
  };
};

/** Nothing at all: what it takes before it works nobody states. */
export const nothing: Appetite = (member) =>
  member.kind === 'current' || member.kind === 'power'
    ? { kind: 'resistance', part: member.part, ohms: exactly(INPUT_OHMS), load: true }
    : member;

/** Nothing, but for what works from some volts on: that takes the least of its range there, and as a resistance would below. */
export const leastFrom =
  (volts: number): Appetite =>
  (member, works) => {
    if (works !== volts || (member.kind !== 'current' && member.kind !== 'power')) return nothing(member, works);
    const amps = member.kind === 'current' ? member.amps.min : member.watts.min / works;
    return {
      kind: 'resistance',
      part: member.part,
      ohms: exactly(amps > 0 ? Math.min(works / amps, INPUT_OHMS) : INPUT_OHMS),
      load: true,
    };
  };
