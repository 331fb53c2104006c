/** Junction spreads from forward-voltage points. */
import type { ForwardPoint } from '../circuit/junction.js';
import { fitJunction } from '../circuit/junction.js';
import type { Curve } from './figures.js';
import type { JunctionSpread } from './plan.js';

/** Current at which a forward voltage without a condition is taken to be stated, amperes. */
const USUAL_CURRENT = 0.02;

/**
 * Fits a junction through the lowest, typical and highest forward voltages of a curve.
 *
 * @param curve forward voltages in volts at currents in amperes
 */
export function junctionSpread(curve: Curve, options: Parameters<typeof fitJunction>[1] = {}): JunctionSpread {
  const known = fitted.get(curve) ?? spreadOf(curve, options);
  fitted.set(curve, known);
  return known;
}

/** A curve has one law, whoever asks for it. */
const fitted = new WeakMap<Curve, JunctionSpread>();

function spreadOf(curve: Curve, options: Parameters<typeof fitJunction>[1]): JunctionSpread {
  const fit = (end: 'min' | 'typ' | 'max') => {
    // A point tells of the ends it states; only where none does, the others stand in.
    const stated = curve.points.filter((p) => p.quantity[end] !== undefined);
    const points = stated.length > 0 ? stated : curve.points;
    return fitJunction(
      points.map((p): ForwardPoint => ({ current: p.at > 0 ? p.at : USUAL_CURRENT, voltage: p.value[end] })),
      options,
    );
  };
  return { min: fit('min'), typ: fit('typ'), max: fit('max') };
}
