/** Junction spreads from forward-voltage points. */
import type { FitOptions, ForwardPoint, Junction } from '../circuit/junction.js';
import { fitJunction, junctionVoltage } from '../circuit/junction.js';
import type { Curve } from './figures.js';
import type { JunctionSpread } from './branch-plan.js';

/** Current at which a forward voltage without a condition is taken to be stated, amperes. */
const USUAL_CURRENT = 0.02;

/**
 * Fits a junction through the lowest, typical and highest forward voltages of a curve.
 *
 * @param curve forward voltages in volts at currents in amperes
 */
export function junctionSpread(curve: Curve, options: FitOptions = {}): JunctionSpread {
  const known = fitted.get(curve) ?? spreadOf(curve, options);
  fitted.set(curve, known);
  return known;
}

/** A curve has one law, whoever asks for it. */
const fitted = new WeakMap<Curve, JunctionSpread>();

function spreadOf(curve: Curve, options: FitOptions): JunctionSpread {
  const fit = (end: 'min' | 'typ' | 'max', fixedSlope?: number): Junction => {
    // A point tells of the ends it states; only where none does, the others stand in.
    const stated = curve.points.filter((p) => p.quantity[end] !== undefined);
    const points = stated.length > 0 ? stated : curve.points;
    return fitJunction(
      points.map((p): ForwardPoint => ({ current: p.at > 0 ? p.at : USUAL_CURRENT, voltage: p.value[end] })),
      fixedSlope === undefined ? options : { ...options, fixedSlope },
    );
  };
  const [min, typ, max] = [fit('min'), fit('typ'), fit('max')];
  if (drop(min) <= drop(typ) && drop(typ) <= drop(max)) return { min, typ, max };
  const slope = Math.min(min.slope, typ.slope, max.slope);
  return { min: fit('min', slope), typ: fit('typ', slope), max: fit('max', slope) };
}

/**
 * Amperes down to which the part of a spread that drops more has to go on dropping more: what seeps through a coupler that
 * is off. Laws fitted each by itself, to points from 1 mA upwards, cross on the way down to it when their slopes differ; what
 * differs between the parts of one type are saturation and series resistance, so that such a spread has one slope.
 */
const SEEPING = 1e-10;
const drop = (law: Junction): number => junctionVoltage(law, SEEPING);
