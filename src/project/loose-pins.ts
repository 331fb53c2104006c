/**
 * Pins that no firmware drives yet. One that the chip pulls is a pin with the pull's resistance; one that floats gives a
 * microampere of leakage, which goes to whichever side is the worse: in the off state of its circuits towards the level that
 * switches them on, in the on state away from it. What stays off against the one is surely off, and what stays on against
 * the other surely on (rule 21 of the format).
 */
import { PIN_CLAMP } from '../loads/lines/pin-clamp.js';
import type { BoundPin, Hook, PinAtBoot } from '../loads/lowering.js';
import type { BranchPlan, CurvePoint, Member } from '../loads/branch-plan.js';
import { GROUND } from '../loads/branch-plan.js';
import { exactly } from '../quantity/interval.js';
import type { Hanging } from './assemble.js';
import { DRIVEN, hangingAt, nodeOf, throughPins } from './assemble.js';

/** Amperes of leakage that decide about what floats (rule 21 of the format). */
export const LEAKAGE = 1e-6;

/** A leak reaches to its supply and never back: up to its amperes it keeps a millivolt, beyond them all there is. */
const LEAK: readonly CurvePoint[] = [
  { amps: 0, volts: exactly(1e-9) },
  { amps: LEAKAGE, volts: exactly(1e-3) },
  { amps: 1.001 * LEAKAGE, volts: exactly(100) },
];

/** Ohms of a logic input that takes next to nothing. */
export const INPUT_OHMS = 1e12;
/** An input that is stated to take more than so many amperes is none of those. */
const LOGIC = 1e-4;
/** Volts at which what takes a current of its own is read as a resistance: at less it takes less. Common practice, no source. */
export const READ_AT = 5;

/** What takes a current or power of its own cannot take it from a pin that gives none: it is as a resistor there. */
export function yielding(member: Member): Member {
  const { part } = member;
  switch (member.kind) {
    case 'current':
      return {
        kind: 'resistance',
        part,
        ohms: exactly(member.amps.max > LOGIC ? READ_AT / member.amps.max : INPUT_OHMS),
        load: true,
      };
    case 'power':
      return { kind: 'resistance', part, ohms: exactly(READ_AT ** 2 / Math.max(member.watts.max, 1e-6)), load: true };
    default:
      return member;
  }
}

/** Ohms of a wire: a branch between two nodes needs a resistance to be solved. */
const WIRE = exactly(1e-3);

/** Members with a wire where no resistor stands among them. */
export const wired = (members: readonly Member[], part: string): readonly Member[] =>
  members.some((m) => m.kind === 'resistance' && m.ohms.min > 0)
    ? members
    : [...members, { kind: 'resistance', part, ohms: WIRE }];

/** Whether a pin's state leaves it to what hangs on it where it stands. */
export const isLoose = ({ state }: Pick<PinAtBoot, 'state'>): boolean =>
  state === 'floating' || state === 'pulled-up' || state === 'pulled-down';

const UNKNOWN: PinAtBoot = { state: 'floating', clamped: true };
export const bootOf = (pin: BoundPin): PinAtBoot => pin.boot ?? UNKNOWN;

/** What a loose pin puts between its side and its node. */
function looseMember(pin: BoundPin): Member {
  const { state, pull, origin } = bootOf(pin);
  if (state === 'floating' || pull === undefined) return { kind: 'curve', part: pin.account, points: LEAK };
  return { kind: 'pin', part: pin.account, ohms: pull, ...(origin && { origin }) };
}

/** @param leaks where a pin that floats leaks to */
function looseBranches(hooks: readonly Hook[], leaks: 'high' | 'low', first: number): readonly BranchPlan[] {
  const { pin, circuit } = hooks[0]!;
  const { state, clamped } = bootOf(pin);
  const level = state === 'pulled-up' ? 'high' : state === 'pulled-down' ? 'low' : leaks;
  const node = nodeOf(pin.account);
  const hanging = hooks.map((hook, k) =>
    hangingAt(node, hook, wired(hook.members.map(yielding), `${pin.account}.lead-${k + 1}`)),
  );
  const through = throughPins(hooks[0]!, level, first, hanging, looseMember);
  // Its clamp is of account where something could draw it above its supply.
  const above = clamped && hooks.some(({ to }) => to !== GROUND && to !== pin.rail);
  const clamp: BranchPlan = {
    from: node,
    to: pin.rail,
    circuit,
    members: [{ kind: 'junction', part: `${pin.account}.clamp`, law: PIN_CLAMP }],
  };
  return [...through, ...hanging, ...(above ? [clamp] : [])];
}

/** As pins are until firmware runs; a pin that pulses is at either level, as if firmware drove it. */
export const AT_BOOT: Hanging = {
  asNode: (hooks) => isLoose(bootOf(hooks[0]!.pin)) || DRIVEN.asNode(hooks),
  branches(hooks, on, first) {
    const { pin, active } = hooks[0]!;
    const { state } = bootOf(pin);
    if (isLoose({ state })) {
      // A pin used open-drain that has let go has a branch of its own for that.
      if (hooks[0]!.open === true && state === 'floating' && !on) return [];
      return looseBranches(hooks, on ? other(active) : active, first);
    }
    return DRIVEN.branches(hooks, state === 'pulses' || state === 'any' ? on : state === active, first);
  },
};

const other = (level: 'high' | 'low'): 'high' | 'low' => (level === 'high' ? 'low' : 'high');

/** As pins are at the moment of a reset: strapping pins are inputs that leak to the side that they must not be on. */
export const strappedTo = (straps: ReadonlyMap<string, 'high' | 'low'>): Hanging => {
  const strapOf = (hooks: readonly Hook[]) => straps.get(hooks[0]!.pin.account);
  /** Whatever it does afterwards, at a reset it is an input with the pull that it has. */
  const asInput = (hook: Hook): Hook => {
    const boot = bootOf(hook.pin);
    return isLoose(boot) ? hook : { ...hook, pin: { ...hook.pin, boot: { ...boot, state: 'floating' } } };
  };
  return {
    asNode: (hooks) => strapOf(hooks) !== undefined || AT_BOOT.asNode(hooks),
    branches(hooks, on, first) {
      const level = strapOf(hooks);
      return level === undefined
        ? AT_BOOT.branches(hooks, on, first)
        : looseBranches(hooks.map(asInput), other(level), first);
    },
  };
};
