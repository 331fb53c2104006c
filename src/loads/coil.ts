/** Bare relay coils and valves' windings. */
import { coilAccounts, unsteadyAt } from './coil-accounts.js';
import { windingOf } from './coil-working.js';
import { coilFigures } from './coil-figures.js';
import type { LoadInput, LoadType, Lowered } from './lowering.js';
import { NOTHING } from './lowering.js';
import { lowerTwoTerminal } from './two-terminal.js';

function lower(input: LoadInput): Lowered {
  const coil = coilFigures(input.figures);
  if (coil === undefined) return NOTHING;
  return lowerTwoTerminal(input, {
    members: (circuit) => [
      {
        kind: 'resistance',
        part: `${circuit}.coil`,
        ohms: coil.ohms,
        copper: coil.reference,
        load: true,
        origin: coil.origin,
      },
    ],
    inductive: true,
    part: (circuit) => `${circuit}.coil`,
    accounts: (circuit, path, driver, feed) =>
      coilAccounts(coil, {
        circuit,
        part: `${circuit}.coil`,
        path,
        ...(driver?.shortfall && { shortfall: driver.shortfall }),
        ...(driver?.lossSteps && { lossSteps: driver.lossSteps }),
        ...(driver?.leak && { leak: driver.leak }),
        ...unsteadyAt(input.bench, feed),
        ...(driver?.leakSteps && { leakSteps: driver.leakSteps }),
      }),
    limitsItself: true,
    letsGo: true,
    figures: { coilVolts: coil.nominal },
    ...windingOf(coil),
  });
}

export const coil: LoadType = { type: 'coil', lower };
