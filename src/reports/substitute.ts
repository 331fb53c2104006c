/** One step of working with the numbers put in. */
import { evaluate } from './evaluate.js';
import { asGiven, figure, given } from './figures.js';
import type { ReportStep } from './report.js';

export interface Substitution {
  /** What is worked out: `I` of `I = V / R`; the step's name when the formula has no left side. */
  readonly left: string;
  readonly formula: string;
  readonly numbers: string;
  readonly result: string;
  /** Digits that the numbers are given to. */
  readonly digits: number;
}

/** A symbol of a formula: letters, digits and underscores. */
const symbols = /[\p{L}_][\p{L}\p{N}_]*/gu;

/** A formula is written in ASCII, so that programs can evaluate it, and read with the signs of print. */
const typeset = (formula: string): string =>
  formula.replaceAll('*', '·').replaceAll('-', '−').replaceAll('^2', '²').replaceAll('^3', '³');

/** `{ formula: 'I = V / R', with: { V: [5, 'V'], R: [100, 'Ω'] }, gives: [0.05, 'A'] }` → '5 V / 100 Ω', '50 mA'. */
export function substitute(step: ReportStep): Substitution {
  const [left, ...rest] = step.formula.split(' = ');
  const formula = rest.length > 0 ? rest.join(' = ') : step.formula;
  const digits = digitsFor(formula, step);
  const numbers = formula.replace(symbols, (symbol, at: number) => {
    // Functions are written like symbols, but have no number.
    const known = Object.hasOwn(step.with, symbol) ? step.with[symbol] : undefined;
    if (!known) return symbol;
    const text = given(...known, digits);
    // '− −5 V' and '2 V²' would both be read wrongly without parentheses.
    return (known[0] < 0 && at > 0) || formula[at + symbol.length] === '^' ? `(${text})` : text;
  });
  return {
    left: rest.length > 0 && left ? left : step.name,
    formula: typeset(formula),
    numbers: typeset(numbers),
    result: figure(...step.gives),
    digits,
  };
}

/** Three where they are enough; two voltages that nearly cancel each other need more. */
const FEW = 3;
const MOST = 9;

/** The least digits of the numbers with which whoever does the sum again comes to the result as it is printed. */
function digitsFor(formula: string, { with: numbers, gives: [value, unit] }: ReportStep): number {
  const result = figure(value, unit);
  for (let digits = FEW; digits <= MOST; digits++) {
    const printed = Object.entries(numbers).map(([symbol, number]) => [symbol, asGiven(...number, digits)]);
    const again = evaluate(formula, Object.fromEntries(printed));
    if (!Number.isNaN(again) && figure(again, unit) === result) return digits;
  }
  return FEW;
}
