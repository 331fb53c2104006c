/** The evaluator of working against another one, on formulas of every shape. */
import fc from 'fast-check';
import { all, create } from 'mathjs/number';
import { describe, expect, it } from 'vitest';
import { evaluate } from '../../src/reports/evaluate.js';

const math = create(all!);

const VALUES = { V: 5.25, V_led: 1.9, R_1: 330, I: 0.0151, ΔT: 25, zero: 0 };

/** Formulas of numbers, symbols, the four operations, powers, minus signs, parentheses and functions. */
const { formula } = fc.letrec<{ formula: string }>((tie) => ({
  formula: fc.oneof(
    { maxDepth: 5, withCrossShrink: true },
    fc.constantFrom(...Object.keys(VALUES), '2', '0.5', '234.5', '1e-3'),
    fc
      .tuple(tie('formula'), fc.constantFrom(' + ', ' - ', ' * ', ' / ', '+', '-'), tie('formula'))
      .map((each) => each.join('')),
    tie('formula').map((inner) => `(${inner})`),
    tie('formula').map((inner) => `-${inner}`),
    tie('formula').map((inner) => `(${inner})^2`),
    tie('formula').map((inner) => `I^-(${inner} / 1000)`),
    fc
      .tuple(fc.constantFrom('sqrt', 'abs', 'exp'), tie('formula'))
      .map(([name, inner]) => `${name}(abs(${inner}) / 100)`),
    fc.tuple(fc.constantFrom('log', 'log10'), tie('formula')).map(([name, inner]) => `${name}(1 + abs(${inner}))`),
    fc
      .tuple(fc.constantFrom('min', 'max'), tie('formula'), tie('formula'))
      .map(([name, a, b]) => `${name}(${a}, ${b})`),
  ),
}));

describe('a formula', () => {
  it('comes to what another evaluator says', () => {
    fc.assert(
      fc.property(formula, (text) => {
        const expected = math.evaluate(text, { ...VALUES }) as number;
        const got = evaluate(text, VALUES);
        if (Number.isNaN(expected)) expect(got).toBeNaN();
        else if (!Number.isFinite(expected)) expect(got).toBe(expected);
        else expect(Math.abs(got - expected)).toBeLessThanOrEqual(1e-12 * Math.abs(expected));
      }),
      { numRuns: 2000 },
    );
  });

  it.each([
    ['a symbol without a value', 'V / R_unknown'],
    ['a function that is none', 'sine(V)'],
    ['a symbol named like a property of every object', 'constructor + 1'],
    ['two numbers side by side', '2 V'],
    ['a parenthesis that does not close', '(V - 1'],
    ['a sign that is none', 'V % 2'],
    ['nothing', ''],
    ['an operation without its second half', 'V -'],
  ])('with %s comes to nothing', (_, text) => {
    expect(evaluate(text, VALUES)).toBeNaN();
  });
});
