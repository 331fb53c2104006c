/**
 * Buzzers. One that is known by its current brings its own oscillator along; one that is known by its resistance is the bare
 * magnetic transducer, a coil like any other.
 */
import { closed } from '../quantity/quantity.js';
import { drawOf } from './draw.js';
import type { LoadInput, LoadType, Lowered } from './lowering.js';
import { NOTHING } from './lowering.js';
import type { Member } from './branch-plan.js';
import { lowerTwoTerminal } from './two-terminal.js';

/** Temperature that a winding's resistance is stated at, °C. */
const REFERENCE = 20;

function lower(input: LoadInput): Lowered {
  const { figures, id } = input;
  const resistance = figures.figure('resistance', 'resistance');
  const amps = resistance ? undefined : drawOf(figures, 'current');
  const ohms = resistance && closed(resistance.quantity);
  if (amps === undefined && (ohms === undefined || ohms.min <= 0)) {
    figures.problem(
      ohms ? 'resistance' : 'current',
      `\`${id}\` has neither a current nor a resistance to reckon with`,
      '`current: 30 mA`, or `resistance: 42 Ω` of a bare magnetic one',
    );
    return NOTHING;
  }
  const origin = (resistance ?? figures.figure('current', 'current')!).origin;
  const member = (part: string): Member =>
    ohms
      ? { kind: 'resistance', part, ohms, copper: REFERENCE, load: true, origin }
      : { kind: 'current', part, amps: amps!, origin };
  return lowerTwoTerminal(input, {
    members: (circuit) => [member(`${circuit}.buzzer`)],
    inductive: ohms !== undefined,
    part: (circuit) => `${circuit}.buzzer`,
    accounts: () => [],
    limitsItself: true,
  });
}

export const buzzer: LoadType = { type: 'buzzer', lower };
