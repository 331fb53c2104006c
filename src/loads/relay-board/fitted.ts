/**
 * What the builder fits at an input of a relay board: a resistor and a diode between pin and input, and resistors that hold
 * the pin: a pull-up to the pin's own rail or to a supply of its own, a pull-down to ground.
 */
import { closed } from '../../quantity/quantity.js';
import type { Curve, Figures } from '../figures.js';
import { isMapping } from '../figures.js';
import { junctionSpread } from '../laws.js';
import type { BoundPin, Hook } from '../lowering.js';
import type { Member } from '../branch-plan.js';
import { GROUND } from '../branch-plan.js';
import type { Board } from './board.js';

export interface Fitted {
  /** Between pin and input, from the pin outwards. */
  readonly between: readonly Member[];
  /** At the pin itself. */
  readonly hooks: readonly Hook[];
  /** Parts that are fitted and of which nobody knows the figure: nothing behind them can be reckoned. */
  readonly unknown: readonly string[];
}

/** A silicon diode of which nothing is stated, volts at 10 mA. */
const USUAL_DIODE = { min: 0.6, typ: 0.7, max: 1 };
/** A silicon diode is a little less than twice as soft as an ideal junction. */
const DIODE_IDEALITY = 1.8;

/** @param raw an entry of `inputs` */
export function fittedAt(
  board: Board,
  circuit: string,
  pin: BoundPin,
  raw: unknown,
  path: readonly (string | number)[],
): Fitted {
  if (!isMapping(raw)) return { between: [], hooks: [], unknown: [] };
  const { figures, bench } = board.input;
  const own = figures.within('inputs').within(String(path.at(-1)));
  const unknown: string[] = [];
  const resistor = (of: Figures, key: string, part: string, load?: true): Member[] => {
    const figure = of.figure(key, 'resistance');
    if (figure !== undefined)
      return [
        { kind: 'resistance', part, ohms: closed(figure.quantity), origin: figure.origin, ...(load && { load }) },
      ];
    if (of.masked(key)) unknown.push(part);
    return [];
  };
  /** What pulls against the level that switches it on takes from it; what pulls along helps. */
  const hook = (part: string, key: string, end: string | undefined, flows: 'in' | 'out'): Hook[] => {
    const against = (flows === 'in') === (board.active === 'low') ? true : undefined;
    const spelled = own.within(key);
    const detailed = spelled.says('resistance');
    const members = resistor(detailed ? spelled : own, detailed ? 'resistance' : key, part, against);
    return members.length === 0 || end === undefined
      ? []
      : [{ pin, active: board.active, flows, to: end, members, circuit }];
  };
  const upTo = own.within('pull-up').says('supply')
    ? bench.node(own.within('pull-up').word('supply'), [...path, 'pull-up', 'supply'])
    : pin.rail;
  const hooks = [
    ...hook(`${circuit}.pull-up`, 'pull-up', upTo, 'in'),
    ...hook(`${circuit}.pull-down`, 'pull-down', GROUND, 'out'),
  ];
  const series = resistor(own, 'series', `${circuit}.input-series`);
  const diode = seriesDiode(board, raw['series-diode'], circuit, path);
  return { between: [...series, ...diode], hooks, unknown };
}

/** A diode between pin and input, which points the way the input's current flows. @param raw a part's name, or its figures */
function seriesDiode(board: Board, raw: unknown, circuit: string, path: readonly (string | number)[]): Member[] {
  if (raw === undefined) return [];
  const spelled = isMapping(raw) ? (raw['part'] === undefined ? { type: 'diode', ...raw } : raw) : { part: raw };
  const part = `${circuit}.input-diode`;
  const found = board.input.bench.part('clamp', spelled, [...path, 'series-diode'], part);
  if (found === undefined) return [];
  const curve = found.figures.curve('forward-voltage', 'voltage', 'current');
  if (curve === undefined) found.figures.assume('forward voltage: 0.6 to 1 V at 10 mA, since nobody states it');
  const { origin } = curve ?? USUAL_CURVE;
  return [{ kind: 'junction', part, law: junctionSpread(curve ?? USUAL_CURVE, { ideality: DIODE_IDEALITY }), origin }];
}

const USUAL_CURVE: Curve = {
  points: [
    {
      at: 0.01,
      value: USUAL_DIODE,
      quantity: { dimension: 'voltage', ...USUAL_DIODE, exact: false, stated: '0.6 to 1 V' },
    },
  ],
  origin: { document: 'common practice, no source', basis: 'practice' },
};
