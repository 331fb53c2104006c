/** Resistive loads: a heater mat, a lamp that is warm, a plain resistor. */
import { closed } from '../quantity/quantity.js';
import type { LoadInput, LoadType, Lowered } from './lowering.js';
import { NOTHING } from './lowering.js';
import { resistorBears, resistorPower } from './resistor-power.js';
import { lowerTwoTerminal } from './two-terminal.js';

function lower(input: LoadInput): Lowered {
  const { figures } = input;
  const figure = figures.figure('resistance', 'resistance');
  if (figure === undefined) {
    figures.problem('resistance', `\`${input.id}\` has no resistance to reckon with`, '`resistance: 330 Ω ±5 %`');
    return NOTHING;
  }
  const ohms = closed(figure.quantity);
  if (ohms.min <= 0) {
    figures.problem('resistance', 'a resistance has to be above zero', '330 Ω');
    return NOTHING;
  }
  const limit = resistorBears(figures, `the resistor ${input.id}`, figures);
  return lowerTwoTerminal(input, {
    members: (circuit) => [
      { kind: 'resistance', part: `${circuit}.resistor`, ohms, load: true, origin: figure.origin },
    ],
    inductive: false,
    part: (circuit) => `${circuit}.resistor`,
    accounts: (circuit, path) => [resistorPower(`${circuit}.resistor`, circuit, path, limit, ohms)],
    limitsItself: true,
  });
}

export const resistor: LoadType = { type: 'resistor', lower };
