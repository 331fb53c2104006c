import { type Dimension, PREFIXES, UNITS, type Unit, unitsOf } from './dimension.js';

/** A unit with its prefix: `mAh` is 10^-3 · 3600 coulomb. */
export interface Scale {
  readonly unit: Unit;
  readonly power: number;
}

const scales = new Map<string, Scale[]>();
for (const unit of UNITS) {
  for (const symbol of unit.symbols) {
    add(symbol, unit, unit.power);
    for (const prefix of unit.prefixes) {
      const power = unit.power + (PREFIXES.get(prefix) ?? 0);
      add(prefix + symbol, unit, power);
      if (prefix === 'µ') add(`u${symbol}`, unit, power);
    }
  }
}

function add(symbol: string, unit: Unit, power: number): void {
  const same = scales.get(symbol);
  if (same) same.push({ unit, power });
  else scales.set(symbol, [{ unit, power }]);
}

/** What a symbol means where this dimension is wanted: `m` is a metre, and `C` a coulomb or a degree, by the dimension. */
export function scaleOf(symbol: string, dimension: Dimension): Scale | undefined {
  return scales.get(symbol)?.find((scale) => scale.unit.dimension === dimension);
}

/** The first dimension that knows the symbol, for saying what was found instead. */
export function dimensionOf(symbol: string): Dimension | undefined {
  return scales.get(symbol)?.[0]?.unit.dimension;
}

/** The symbol that was probably meant: `mA` for `MA`, `kΩ` for the bare prefix in `10 k`. */
export function nearSymbol(symbol: string, dimension: Dimension): string | undefined {
  const base = unitsOf(dimension)[0]?.symbols[0] ?? '';
  const asPrefix = [symbol, symbol.toLowerCase()].map((prefix) => prefix + base);
  const recased = [...scales.keys()].filter((known) => known.toLowerCase() === symbol.toLowerCase());
  return [...recased, ...asPrefix].find((candidate) => scaleOf(candidate, dimension));
}
