/** Loads that draw a stated current, whatever the voltage: boards, the rest that is not itemised. */
import { drawOf } from './draw.js';
import type { LoadInput, LoadType, Lowered } from './lowering.js';
import { NOTHING } from './lowering.js';
import { lowerTwoTerminal } from './two-terminal.js';

function lower(input: LoadInput): Lowered {
  const { figures } = input;
  const figure = figures.figure('current', 'current');
  if (figure === undefined) {
    figures.problem('current', `\`${input.id}\` has no current to reckon with`, '`current: 40 mA`');
    return NOTHING;
  }
  const amps = drawOf(figures, 'current')!;
  return lowerTwoTerminal(input, {
    members: (circuit) => [{ kind: 'current', part: `${circuit}.load`, amps, origin: figure.origin }],
    inductive: false,
    part: (circuit) => `${circuit}.load`,
    accounts: () => [],
    limitsItself: true,
  });
}

export const constantCurrent: LoadType = { type: 'constant-current', lower };
/** The rest that is not itemised. */
export const other: LoadType = { type: 'other', lower };
