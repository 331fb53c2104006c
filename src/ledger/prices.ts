/**
 * A bound on what circuits under interlocks weigh together, by prices: each interlock is lifted, and what breaks it pays. With
 * any prices of zero or more no allowed state weighs more than the priced one, and with good ones the bound is as near as the
 * relaxed program's. (Lagrangian relaxation with subgradient steps after Polyak, textbook methods; from memory.)
 */

/** Σ of coefficients times states, at most so much. */
export interface Row {
  readonly terms: readonly { readonly circuit: number; readonly times: number }[];
  readonly most: number;
}

export interface Prices {
  /** What the prices themselves come to. */
  readonly base: number;
  /** What each circuit weighs, less what its rows make it pay. */
  readonly left: ReadonlyMap<number, number>;
}

const STEPS = 2000;
/** Steps without a better bound after which they become half as long. */
const PATIENCE = 30;

/** @param weights of the circuits in dispute, by number @param known weight of some allowed state */
export function pricesOf(weights: ReadonlyMap<number, number>, rows: readonly Row[], known: number): Prices {
  const circuits = [...weights.keys()];
  const price = rows.map(() => 0);
  const left = new Map(weights);
  let best: Prices = { base: 0, left: new Map(left) };
  let bound = Infinity;
  let [length, idle] = [1.5, 0];
  for (let step = 0; step < STEPS; step++) {
    for (const k of circuits) left.set(k, weights.get(k)!);
    rows.forEach(({ terms }, r) => {
      if (price[r] === 0) return;
      for (const { circuit, times } of terms) left.set(circuit, left.get(circuit)! - times * price[r]!);
    });
    const base = rows.reduce((sum, { most }, r) => sum + price[r]! * most, 0);
    const value = circuits.reduce((sum, k) => sum + Math.max(left.get(k)!, 0), base);
    if (value < bound * (1 - 1e-9)) {
      [bound, idle] = [value, 0];
      best = { base, left: new Map(left) };
    } else if (++idle >= PATIENCE) {
      [length, idle] = [length / 2, 0];
    }
    const over = rows.map(({ terms, most }) =>
      terms.reduce((sum, { circuit, times }) => sum + (left.get(circuit)! > 0 ? times : 0), -most),
    );
    const size = over.reduce((sum, o, r) => sum + (o < 0 && price[r] === 0 ? 0 : o * o), 0);
    if (size === 0 || value <= known) break;
    const by = (length * (value - known)) / size;
    over.forEach((o, r) => (price[r] = Math.max(price[r]! + by * o, 0)));
  }
  return best;
}
