/** Modules: sensors, radios, displays. Idle outside the modes that name them, active inside, with peaks on top. */
import type { Interval } from '../quantity/interval.js';
import { exactly } from '../quantity/interval.js';
import { closed } from '../quantity/quantity.js';
import { USUAL_EXCESS } from './constant-current.js';
import type { Figures } from './figures.js';
import { isMapping } from './figures.js';
import type { LoadInput, LoadType, Lowered } from './lowering.js';
import { NOTHING } from './lowering.js';
import { lowerTwoTerminal } from './two-terminal.js';

/** A draw with its open bounds closed on the side that is safe; what was assumed is listed. */
function drawOf(figures: Figures, key: string): Interval | undefined {
  const figure = figures.figure(key, 'current');
  if (figure === undefined) return undefined;
  const { quantity } = figure;
  if (quantity.max === undefined)
    figures.assume(
      `${key} current: up to ${USUAL_EXCESS} times the stated ${quantity.stated}, since no highest is stated`,
    );
  return closed(quantity, { max: (typ) => USUAL_EXCESS * typ, min: () => 0 });
}

function lower(input: LoadInput): Lowered {
  const { figures, entry, bench, path } = input;
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
  if (isMapping(entry['signals']))
    for (const [role, pin] of Object.entries(entry['signals']))
      bench.signalPin(pin, [...path, 'signals', role], input.id, role);
  return lowerTwoTerminal(input, {
    members: (circuit) => [
      { kind: 'current', part: `${circuit}.load`, amps: active, ...(peak !== undefined && { peak }) },
    ],
    idle: (circuit) => [{ kind: 'current', part: `${circuit}.load`, amps: idle }],
    inductive: false,
    part: (circuit) => `${circuit}.load`,
    accounts: () => [],
    limitsItself: true,
  });
}

export const module: LoadType = { type: 'module', lower };
