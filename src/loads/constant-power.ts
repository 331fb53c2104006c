/**
 * Loads with a converter of their own: they take the same power from whatever they get, so that their current rises as the
 * supply falls, and a supply that is too soft for them collapses.
 */
import { closed } from '../quantity/quantity.js';
import { USUAL_EXCESS } from './draw.js';
import type { LoadInput, LoadType, Lowered } from './lowering.js';
import { NOTHING } from './lowering.js';
import { lowerTwoTerminal } from './two-terminal.js';

function lower(input: LoadInput): Lowered {
  const { figures, entry, id } = input;
  const figure = figures.figure('power', 'power');
  if (figure === undefined) {
    figures.problem('power', `\`${id}\` has no power to reckon with`, '`power: 3 W`');
    return NOTHING;
  }
  if (entry['driver'] === undefined && (entry['pin'] ?? entry['pins']) !== undefined) {
    figures.problem(
      'pin',
      `\`${id}\` has a converter of its own, which no pin can feed`,
      '`supply:`, with or without a `driver:`',
    );
    return NOTHING;
  }
  const watts = closed(figure.quantity, { max: (typ) => USUAL_EXCESS * typ, min: () => 0 });
  return lowerTwoTerminal(input, {
    members: (circuit) => [{ kind: 'power', part: `${circuit}.load`, watts, origin: figure.origin }],
    inductive: false,
    part: (circuit) => `${circuit}.load`,
    accounts: () => [],
    limitsItself: true,
  });
}

export const constantPower: LoadType = { type: 'constant-power', lower };
