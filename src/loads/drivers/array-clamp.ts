/** The clamp diodes of an array, from each of its channels to its common pin. */
import { junctionAt, junctionVoltage } from '../../circuit/junction.js';
import type { Figures } from '../figures.js';
import { junctionSpread } from '../laws.js';
import type { Reading } from '../account-plan.js';
import type { Member } from '../branch-plan.js';

/** A clamp diode of silicon at a small and at a working current when nobody states it, volts. */
const USUAL_CLAMP = [
  { at: 0.001, value: { min: 0.55, typ: 0.65, max: 0.75 } },
  { at: 0.35, value: { min: 1, typ: 1.5, max: 2 } },
].map((p) => ({ ...p, quantity: { dimension: 'voltage' as const, ...p.value, exact: false, stated: 'usual' } }));

const curveOf = (figures: Figures) =>
  figures.curve('clamp-forward-voltage', 'voltage', 'current') ?? {
    points: USUAL_CLAMP,
    origin: { document: 'common practice, no source', basis: 'practice' as const },
  };

/** One of them, where a load's current flows on through it. */
export function clampMember(figures: Figures, circuit: string): Member {
  const curve = curveOf(figures);
  return { kind: 'junction', part: `${circuit}.array-clamp`, law: junctionSpread(curve), origin: curve.origin };
}

/** Most volts across one of them at so many amperes; in the typical build the typical. */
export function clampVolts(figures: Figures): (amps: number, s: Reading) => number {
  const law = junctionSpread(curveOf(figures));
  return (amps, s) => (amps <= 0 ? 0 : junctionVoltage(junctionAt(law[s.typical ? 'typ' : 'max'], s.ambient), amps));
}
