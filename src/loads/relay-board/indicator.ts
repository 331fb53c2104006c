/** The indicators of a relay board: in series with the input, or on a branch of their own beside it or across the coil. */
import type { Interval } from '../../quantity/interval.js';
import { closed } from '../../quantity/quantity.js';
import type { Dimension } from '../../quantity/dimension.js';
import type { Curve, Figure } from '../figures.js';
import { junctionSpread } from '../laws.js';
import type { Member } from '../branch-plan.js';
import type { Board } from './board.js';

/** Small red, yellow and green indicators, volts at 2 mA; and the resistor of one on 5 V, ohms. */
const USUAL_DROP: Interval = { min: 1.6, typ: 1.85, max: 2.2 };
const USUAL_RESISTOR: Interval = { min: 470, typ: 1000, max: 2200 };
const PRACTICE = { document: 'common practice, no source', basis: 'practice' } as const;
const stated = (dimension: Dimension, value: Interval, text: string) => ({
  dimension,
  ...value,
  exact: false,
  stated: text,
});

/** The indicator's junction alone. */
export function indicatorOf(board: Board, circuit: string): Member & { readonly kind: 'junction' } {
  const curve = board.inside.curve('indicator-drop', 'voltage', 'current') ?? usualDrop(board);
  return { kind: 'junction', part: `${circuit}.indicator`, law: junctionSpread(curve), origin: curve.origin };
}

/** An indicator with its own resistor: what it takes, others do not get. */
export function indicatorBranch(board: Board, circuit: string): Member[] {
  const { quantity, origin } = board.inside.figure('indicator-series', 'resistance') ?? usualResistor(board);
  const part = `${circuit}.indicator-series`;
  return [
    { kind: 'resistance', part, ohms: closed(quantity), load: true, origin },
    { ...indicatorOf(board, circuit), load: true },
  ];
}

function usualDrop({ inside }: Board): Curve {
  inside.assume('its indicators drop 1.6 to 2.2 V at 2 mA, since nobody states it');
  return USUAL_CURVE;
}

const USUAL_CURVE: Curve = {
  points: [{ at: 0.002, value: USUAL_DROP, quantity: stated('voltage', USUAL_DROP, '1.6 to 2.2 V') }],
  origin: PRACTICE,
};

function usualResistor({ inside }: Board): Figure {
  inside.assume('the resistors of its indicators are 470 Ω to 2.2 kΩ, since nobody states them');
  return { quantity: stated('resistance', USUAL_RESISTOR, '470 Ω to 2.2 kΩ'), origin: PRACTICE };
}
