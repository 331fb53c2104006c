/** The coupler of a channel: what is taken of it when nobody says. */
import type { Curve, Figures } from '../figures.js';
import type { Board } from './board.js';

/** Class C couplers, ratio at LED current (rule 9 of the format; the ratios at small currents are common practice, no source). */
const CLASS_C: Curve['points'] = [
  { at: 0.001, value: { min: 1.2, typ: 1.8, max: 2.4 } },
  { at: 0.002, value: { min: 1.6, typ: 2.4, max: 3.2 } },
  { at: 0.005, value: { min: 2, typ: 3, max: 4 } },
].map((p) => ({
  ...p,
  quantity: { dimension: 'ratio', ...p.value, exact: false, stated: `${p.value.min * 100} to ${p.value.max * 100} %` },
}));

/** At its rated logic voltage a board's couplers are taken to be of class C; at another nothing is known of them. */
export function usualRatio(board: Board, inside: Figures): Curve | undefined {
  const rated = Math.min(board.coil?.nominal ?? 5, 5);
  const volts = board.logic === undefined ? 0 : board.input.bench.nominal(board.logic);
  if (inside.masked('transfer-ratio') || Math.abs(volts - rated) > 0.1 * rated) return undefined;
  inside.assume('its couplers are of class C (200 % at 5 mA), since nobody states their transfer ratio');
  return { points: CLASS_C, origin: { document: 'common practice, no source', basis: 'practice' } };
}

/** A coupler's LED is an infrared one: volts at 5 mA. */
const USUAL_DROP = { min: 1, typ: 1.15, max: 1.4 };

/** The forward voltage that is taken when nobody states it. */
export function usualDrop({ inside }: Board): Curve {
  inside.assume('the LEDs of its couplers drop 1 to 1.4 V at 5 mA, since nobody states it');
  return USUAL_CURVE;
}

const USUAL_CURVE: Curve = {
  points: [
    {
      at: 0.005,
      value: USUAL_DROP,
      quantity: { dimension: 'voltage', ...USUAL_DROP, exact: false, stated: '1 to 1.4 V' },
    },
  ],
  origin: { document: 'common practice, no source', basis: 'practice' },
};
