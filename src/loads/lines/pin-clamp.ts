/** The junctions at an input that lead what is pushed in beyond its supply to the supply, and what is pulled below ground to ground. */
import { fitJunction } from '../../circuit/junction.js';
import type { JunctionSpread } from '../branch-plan.js';

/**
 * Forward voltage of a pin's clamp at 1 mA and 25 °C, volts. The least is what one maker reckons with (Microchip, application
 * note on a zero-cross detector with a pin's clamping diodes, section Hardware: 0.5 V over the diode); the rest is common
 * practice for a silicon junction, no source.
 */
export const CLAMP_VOLTS = { min: 0.5, typ: 0.65, max: 0.8 };

const at = (voltage: number) => fitJunction([{ current: 1e-3, voltage }], { ideality: 1 });

export const PIN_CLAMP: JunctionSpread = {
  min: at(CLAMP_VOLTS.min),
  typ: at(CLAMP_VOLTS.typ),
  max: at(CLAMP_VOLTS.max),
};

export const CLAMP_ASSUMED = `a pin’s clamp to its supply begins to carry: ${CLAMP_VOLTS.min} / ${CLAMP_VOLTS.typ} / ${CLAMP_VOLTS.max} V at 1 mA, since nobody states it`;
