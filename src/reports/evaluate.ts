/**
 * Evaluates the formulas of working: + - * / ^, parentheses, numbers, symbols, and the functions below by the names that
 * programs commonly give them. The formulas are our own; a test holds this against another evaluator on all of them.
 */

const functions: { readonly [name: string]: (...values: readonly number[]) => number } = {
  abs: Math.abs,
  exp: Math.exp,
  /** Natural. */
  log: Math.log,
  log10: Math.log10,
  max: Math.max,
  min: Math.min,
  sqrt: Math.sqrt,
};

const token = /\s*(?:(\d+(?:\.\d*)?(?:e[+-]?\d+)?)|([\p{L}_][\p{L}\p{N}_]*)|([-+*/^(),]))/uy;

/** @returns NaN when the formula cannot be read or a symbol has no value */
export function evaluate(formula: string, values: { readonly [symbol: string]: number }): number {
  const tokens = tokensOf(formula);
  if (tokens === undefined) return NaN;
  let at = 0;
  const takes = (sign: string): boolean => tokens[at] === sign && ++at > 0;

  function sum(): number {
    let value = product();
    for (;;) {
      if (takes('+')) value += product();
      else if (takes('-')) value -= product();
      else return value;
    }
  }
  function product(): number {
    let value = signed();
    for (;;) {
      if (takes('*')) value *= signed();
      else if (takes('/')) value /= signed();
      else return value;
    }
  }
  const signed = (): number => (takes('-') ? -signed() : power());
  function power(): number {
    const base = atom();
    return takes('^') ? base ** signed() : base;
  }
  function atom(): number {
    const word = tokens![at++] ?? '';
    if (word === '(') return closed([sum()])[0]!;
    if (/^\d/.test(word)) return Number(word);
    if (tokens![at] !== '(') return Object.hasOwn(values, word) ? values[word]! : NaN;
    at++;
    const given = [sum()];
    while (takes(',')) given.push(sum());
    closed(given);
    return Object.hasOwn(functions, word) ? functions[word]!(...given) : NaN;
  }
  /** What stood in parentheses, if they are closed. */
  const closed = (given: readonly number[]): readonly number[] => (takes(')') ? given : [NaN]);

  const value = sum();
  return at === tokens.length ? value : NaN;
}

function tokensOf(formula: string): readonly string[] | undefined {
  const tokens: string[] = [];
  const text = formula.trim();
  token.lastIndex = 0;
  while (token.lastIndex < text.length) {
    const found = token.exec(text);
    if (found === null) return undefined;
    tokens.push(found[1] ?? found[2] ?? found[3]!);
  }
  return tokens;
}
