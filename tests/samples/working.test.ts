/**
 * The working of every sample, evaluated by an expression library that knows nothing of this project: as data, with all
 * digits, and as it is printed, read back from the page.
 */
import { readdirSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { print } from '../../src/cli/print.js';
import { judge } from '../../src/checks/judge.js';
import { audit, builtIn, read } from '../../src/index.js';
import type { Report } from '../../src/index.js';
import { toJson } from '../../src/reports/json.js';
import { stepOf, sumWords } from '../../src/reports/sum-words.js';
import { workingFor } from '../../src/reports/working-for.js';
import { workingReport } from '../../src/reports/working.js';
import { sampleText } from './audited.js';
import { equationsOf, formulaOf, resultOf, sumOf } from './printed-sum.js';

const names = readdirSync(new URL('../../samples/', import.meta.url)).map((file) => file.replace(/\.yaml$/, ''));

/** Share of a result that the last bits of its numbers may take or give: twelve digits of each are told. */
const ROUNDING = 1e-8;

/** What is wrong with a printed sum and its printed result: nothing, when whoever does it again comes to the same. */
function faults(sum: string, result: string): readonly string[] {
  const { value, half } = resultOf(result);
  const again = sumOf(sum);
  return Math.abs(again - value) <= half * 1.000001 ? [] : [`${sum} = ${result}, but it comes to ${again}`];
}

describe.each(names)('in %s', (name) => {
  const { document } = read(sampleText(name), `${name}.yaml`);
  const told = audit(document!, { advice: false }).report!;
  const judgement = judge(document!.data, `${name}.yaml`, { catalogue: builtIn });
  if ('problems' in judgement) throw new Error(JSON.stringify(judgement.problems));
  const report = JSON.parse(toJson(told)) as Report;
  const working = [
    ...new Set([...report.accounts.map((a) => a.id), ...report.findings.flatMap((f) => [f.about, f.rule])]),
  ]
    .map((about) => ({ about, ...workingFor(judgement, about) }))
    .filter(({ steps }) => steps.length > 0);

  test('every formula, evaluated with its numbers, gives its result', () => {
    const steps = [...report.findings.flatMap((f) => f.working), ...working.flatMap((w) => w.steps)];
    expect(steps.length).toBeGreaterThan(5);
    for (const { formula, with: numbers, gives } of steps) {
      const values = Object.fromEntries(Object.entries(numbers).map(([symbol, [value]]) => [symbol, value]));
      const again = formulaOf(formula.split(' = ').at(-1)!, values);
      if (!(Math.abs(again - gives[0]) <= ROUNDING * Math.abs(gives[0]) + 1e-12))
        expect.fail(`${formula} with ${JSON.stringify(values)} is ${again}, not ${gives[0]}`);
    }
  });

  test('every working that is printed, read back and done again, comes to what is printed', () => {
    let sums = 0;
    for (const each of working) {
      const equations = equationsOf(print(workingReport(each, 'sample.yaml'), { width: 80, colour: false }));
      expect(equations.length, each.about).toBe(each.steps.length);
      for (const [, ...sides] of equations) {
        // The formula comes first; a figure that was only given is not said twice.
        if (sides.length < 3) continue;
        sums++;
        expect(faults(sides[1]!, sides[2]!)).toEqual([]);
      }
    }
    expect(sums).toBeGreaterThan(3);
  });

  test('every sum in one line beside a finding comes to what it says', () => {
    const wrong = told.findings.flatMap((finding) => {
      const account = told.accounts.find(
        (a) => a.id === finding.account && a.quantity === finding.quantity && a.direction === finding.direction,
      );
      const step = stepOf(finding, account);
      if (step === undefined) return [];
      const [sum, result] = sumWords(step, account).split(' = ') as [string, string];
      // What is said of the figures, not what is summed: whose they are, how many.
      return faults(sum.replace(/ \((?:\d+ more|\p{L}[^()]*)\)/gu, ''), result.replace(/, typically.*/, ''));
    });
    expect(wrong).toEqual([]);
  });
});
