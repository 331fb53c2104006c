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
    accounts: (circuit, path, driver, feed, bypass, clamp) =>
      coilAccounts(coil, {
        circuit,
        part: `${circuit}.coil`,
        path,
        ...(driver?.shortfall && { shortfall: driver.shortfall }),
        ...(driver?.lossSteps && { lossSteps: driver.lossSteps }),
        ...(driver?.leak && { leak: driver.leak }),
        ...(bypass && { bypass }),
        ...(clamp && { keeps: clamp.keeps }),
        ...unsteadyAt(input.bench, feed),
        ...(driver?.leakSteps && { leakSteps: driver.leakSteps }),
      }),
    limitsItself: true,
    acts: operateTime(input),
    letsGo: true,
    figures: { coilVolts: coil.nominal },
    ...windingOf(coil),
  });
}

/** Small relays pull in within 5 to 15 ms. Common practice, no source. */
const USUAL_OPERATE_TIME = 15e-3;

/** Seconds in which it has pulled in; asked only behind a bypassed resistor. */
function operateTime({ figures }: LoadInput): number {
  const stated = figures.interval('operate-time', 'time')?.max;
  if (stated === undefined && figures.within('series').says('bypass'))
    figures.assume('it pulls in within 15 ms, since nobody states its operate time');
  return stated ?? USUAL_OPERATE_TIME;
}

export const coil: LoadType = { type: 'coil', lower };
