/** The working of generated projects, evaluated by an expression library: with all digits, and as it is printed. */
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { ledgerOf } from '../../src/ledger/ledger.js';
import { substitute } from '../../src/reports/substitute.js';
import { projectOf, projects } from '../properties/projects.js';
import { formulaOf, resultOf, sumOf } from '../samples/printed-sum.js';
import { sized } from '../sizes.js';

/** Share of a result that the last bits of its numbers may take or give. */
const ROUNDING = 1e-9;

test('every step of working of generated projects comes to its result, with all digits and as printed', () => {
  let steps = 0;
  fc.assert(
    fc.property(projects(), (data) => {
      for (const account of ledgerOf(projectOf(data)).accounts)
        for (const step of account.steps()) {
          steps++;
          const { formula, with: numbers, gives } = step;
          const values = Object.fromEntries(Object.entries(numbers).map(([symbol, [value]]) => [symbol, value]));
          const exact = formulaOf(formula, values);
          if (!(Math.abs(exact - gives[0]) <= ROUNDING * Math.abs(gives[0]) + 1e-12))
            expect.fail(`${account.id}: ${formula} with ${JSON.stringify(values)} is ${exact}, not ${gives[0]}`);
          const { numbers: sum, result } = substitute(step);
          const { value, half } = resultOf(result);
          const printed = sumOf(sum);
          if (!(Math.abs(printed - value) <= half * 1.000001))
            expect.fail(`${account.id}: ${sum} = ${result}, but it comes to ${printed}`);
        }
    }),
    { numRuns: sized(15, 300) },
  );
  expect(steps).toBeGreaterThan(sized(300, 6000));
});
