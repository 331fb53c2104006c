/** The proof that a driver lets go of a load that has no account of its own for that, as a coil has. */
import type { AccountPlan, Reading } from '../account-plan.js';
import type { Driver } from './driver.js';

/** What still flows is next to nothing below this share of what the load takes. Common practice, no source. */
const NEXT_TO_NOTHING = 0.1;

/** @param expected amperes that the load takes when it is on */
export function releaseAccount(
  circuit: string,
  path: readonly (string | number)[],
  expected: number,
  driver: Driver,
): AccountPlan[] {
  const { leak, leakSteps } = driver;
  if (leak === undefined || expected <= 0) return [];
  return [
    {
      id: `${circuit}.off`,
      kind: 'driver',
      title: `${circuit}, switched off`,
      quantity: 'current',
      direction: 'at-most',
      circuits: [circuit],
      path: [...path, 'driver'],
      recipes: ['let-go-worst', 'let-go-best'],
      read: leak,
      limits: [
        {
          value: NEXT_TO_NOTHING * expected,
          stated: `a tenth of what ${circuit} takes`,
          grade: 'practice',
          isFunction: true,
          margin: 'none',
          origin: { document: 'common practice, no source', basis: 'practice' },
          condition: 'what still flows when it is switched off',
        },
      ],
      steps: (s: Reading) => [
        ...(leakSteps?.(s) ?? []),
        {
          name: 'I_off',
          says: 'what still flows in the load, as far as the load itself lets it',
          formula: 'I',
          with: { I: [leak(s), 'A'] },
          gives: [leak(s), 'A'],
        },
      ],
    },
  ];
}
