/** Loads that draw a stated current, whatever the voltage: boards, the rest that is not itemised. */
import { closed } from '../quantity/quantity.js';
import type { LoadInput, LoadType, Lowered } from './lowering.js';
import { NOTHING } from './lowering.js';
import { lowerTwoTerminal } from './two-terminal.js';

/** Somebody's typical draw, with no bound beside it, may be exceeded by half (rule 8 of the format). */
export const USUAL_EXCESS = 1.5;

function lower(input: LoadInput): Lowered {
  const { figures } = input;
  const figure = figures.figure('current', 'current');
  if (figure === undefined) {
    figures.problem('current', `\`${input.id}\` has no current to reckon with`, '`current: 40 mA`');
    return NOTHING;
  }
  const amps = closed(figure.quantity, { max: (typ) => USUAL_EXCESS * typ, min: () => 0 });
  return lowerTwoTerminal(input, {
    members: (circuit) => [{ kind: 'current', part: `${circuit}.load`, amps, origin: figure.origin }],
    inductive: false,
    part: (circuit) => `${circuit}.load`,
    accounts: () => [],
    limitsItself: true,
  });
}

export const constantCurrent: LoadType = { type: 'constant-current', lower };
