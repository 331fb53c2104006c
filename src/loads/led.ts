/** LEDs: a junction, and the current it bears. */
import { branchSteps } from './branch-working.js';
import { junctionSpread } from './laws.js';
import type { LoadInput, LoadType, Lowered } from './lowering.js';
import { NOTHING } from './lowering.js';
import { rating } from './limits.js';
import type { AccountPlan } from './plan.js';
import { lowerTwoTerminal } from './two-terminal.js';

function lower(input: LoadInput): Lowered {
  const { figures } = input;
  const curve = figures.curve('forward-voltage', 'voltage', 'current');
  if (curve === undefined) {
    figures.problem(
      'forward-voltage',
      `\`${input.id}\` has no forward voltage to reckon with`,
      '`forward-voltage: 1.8 to 2.2 V`, or a `part:` from the catalogue',
    );
    return NOTHING;
  }
  const law = junctionSpread(curve);
  const limit = rating(figures, 'maximum-current', 'current');
  const account = (circuit: string, path: readonly (string | number)[]): AccountPlan => ({
    id: circuit,
    kind: 'input',
    title: `LED ${circuit}`,
    quantity: 'current',
    direction: 'at-most',
    circuits: [circuit],
    path,
    recipes: ['draw-most', 'draw-least'],
    read: (s) => s.current(`${circuit}.led`),
    limits: limit ? [limit] : [],
    books: [{ circuit, part: `${circuit}.led` }],
    ...(!limit && {
      missing: {
        figure: 'maximum-current',
        asks: `what current may the LED of ${circuit} carry (its \`maximum-current\`)?`,
      },
    }),
    steps: (s) => branchSteps(s.branch(`${circuit}.led`), `current of the LED`),
  });
  return lowerTwoTerminal(input, {
    members: (circuit) => [{ kind: 'junction', part: `${circuit}.led`, law, origin: curve.origin }],
    inductive: false,
    part: (circuit) => `${circuit}.led`,
    accounts: (circuit, path) => [account(circuit, path)],
    limitsItself: false,
  });
}

export const led: LoadType = { type: 'led', lower };
