/** Modules: sensors, radios, displays. Idle outside the modes that name them, active inside, with peaks on top. */
import { exactly } from '../quantity/interval.js';
import { drawOf, lastsOf, withPeak } from './draw.js';
import type { LoadInput, LoadType, Lowered } from './lowering.js';
import { NOTHING } from './lowering.js';
import { lowerTwoTerminal } from './two-terminal.js';

export function lowerModule(input: LoadInput): Lowered {
  const { figures } = input;
  const active = drawOf(figures, 'active') ?? drawOf(figures, 'idle');
  if (active === undefined) {
    figures.problem(
      'active',
      `\`${input.id}\` has no current to reckon with`,
      '`active: 20 mA`, or a `part:` from the catalogue',
    );
    return NOTHING;
  }
  const idle = drawOf(figures, 'idle') ?? exactly(0);
  const peak = drawOf(figures, 'peak')?.max;
  const lasts = peak === undefined ? undefined : lastsOf(figures, 'peak-time', 'a burst');
  const taken = withPeak(active, peak, lasts, figures.interval('peak-every', 'time')?.min);
  return lowerTwoTerminal(input, {
    members: (circuit) => [{ kind: 'current', part: `${circuit}.load`, ...taken }],
    idle: (circuit) => [{ kind: 'current', part: `${circuit}.load`, amps: idle }],
    inductive: false,
    part: (circuit) => `${circuit}.load`,
    accounts: () => [],
    limitsItself: true,
  });
}

export const module: LoadType = { type: 'module', lower: lowerModule };
