/**
 * An optocoupler: what its LED carries, what its output can pass on of that (less when it is old), and what the output keeps
 * for itself. A relay board's input and a driver of type `opto` are the same thing and share it.
 */
import { endOfLifeShare, lowCurrentShare, warmShare } from '../../circuit/coupler.js';
import { interpolate } from '../../quantity/points.js';
import { branchSteps, sourcesOf } from '../branch-working.js';
import type { Curve, Figures } from '../figures.js';
import { junctionSpread } from '../laws.js';
import { rating } from '../limits.js';
import type { AccountPlan, LimitPlan, Reading, Step } from '../account-plan.js';
import type { Member, Origin } from '../branch-plan.js';

/** What an output keeps for itself when nobody says so, volts. */
const USUAL_SATURATION = { min: 0, typ: 0.1, max: 0.2 };

/** Transfer ratio over LED current. */
export interface Transfer {
  /** Least (typically the typical) ratio at an LED current in amperes, at the 25 °C at which it is stated. */
  readonly ratio: (current: number, s: Reading) => number;
  /** Most of it, for what still flows when it is off. */
  readonly most: (current: number, s: Reading) => number;
  /** Share of the ratio that is left at the end of its life, warm or cold; 1 in the typical build, which is new. */
  readonly left: (current: number, s: Reading) => number;
  readonly origin: Origin;
}

export interface Coupler {
  /** Forward law of its LED. */
  readonly drop: Curve;
  readonly ledMaximum?: LimitPlan;
  /** Undefined when nobody states it. */
  readonly transfer?: Transfer;
  readonly saturation?: Curve;
}

/**
 * The figures of a coupler, or undefined when not even its LED's drop is known.
 *
 * @param usual its ratio when nobody states it @param usualDrop its LED's forward voltage when nobody states it
 */
export function couplerOf(
  figures: Figures,
  usual?: () => Curve | undefined,
  usualDrop?: () => Curve,
): Coupler | undefined {
  const drop = figures.curve('led-drop', 'voltage', 'current') ?? usualDrop?.();
  if (drop === undefined) return undefined;
  const ratio = figures.curve('transfer-ratio', 'ratio', 'current') ?? usual?.();
  const ledMaximum = rating(figures, 'led-maximum-current', 'current');
  const saturation = figures.curve('saturation', 'voltage', 'current', { min: () => 0 });
  if (ratio) figures.assume(takenOf(ratio));
  return {
    drop,
    ...(ledMaximum && { ledMaximum }),
    ...(ratio && { transfer: transferLaw(ratio, figures.curve('ratio-end-of-life', 'ratio', 'current')) }),
    ...(saturation && { saturation }),
  };
}

/** A ratio that holds at one current only falls below it as couplers do; of several points the lowest two are extended. */
const isAlone = ({ points }: Curve): boolean => points.length === 1 && points[0]!.at > 0;

const takenOf = (ratio: Curve): string =>
  `transfer ratio: at the end of its life also 0.6 % less for each kelvin above 25 °C, 0.2 % below${isAlone(ratio) ? '; falling with the LED current below the one at which it is stated' : ''}, since no curve is stated`;

/** Beyond the highest current at which it is stated the ratio is not counted on to rise; it is never below nothing. */
function transferLaw(curve: Curve, endOfLife: Curve | undefined): Transfer {
  const at = (current: number) => interpolate(curve.points, current).value;
  const full = curve.points.at(-1)!.at;
  const share = (current: number): number =>
    endOfLife ? interpolate(endOfLife.points, current).value.min : endOfLifeShare(current, full);
  return {
    ratio: (current, s) => {
      const { min, typ } = at(Math.min(current, full));
      return Math.max(s.typical ? typ : min, 0) * (isAlone(curve) ? lowCurrentShare(current, full) : 1);
    },
    most: (current, s) => Math.max(s.typical ? at(current).typ : at(current).max, 0),
    left: (current, s) => (s.typical ? 1 : Math.min(Math.max(share(current), 0), 1) * warmShare(s.ambient)),
    origin: curve.origin,
  };
}

/** Its LED in a branch. */
export const ledMember = ({ drop }: Coupler, part: string): Member => ({
  kind: 'junction',
  part,
  law: junctionSpread(drop),
  origin: drop.origin,
});

/** Its output in a branch, conducting. */
export function outputMember({ saturation }: Coupler, part: string): Member {
  const volts = saturation?.points[0]?.value ?? USUAL_SATURATION;
  return { kind: 'drop', part, volts, ...(saturation && { origin: saturation.origin }) };
}

/** Volts that the output keeps at the most (typically the typical ones) while its load asks little of it. */
export function saturationAt({ saturation }: Coupler, s: Reading): number {
  const volts = saturation?.points[0]?.value ?? USUAL_SATURATION;
  return s.typical ? volts.typ : volts.max;
}

/** Amperes that the output can pass on of what its LED gets. @param led the LED's part */
export const passedOn = ({ transfer }: Coupler, led: string, s: Reading): number =>
  transfer ? transfer.ratio(s.current(led), s) * s.current(led) : 0;

/** The sum behind that. @param told symbol of the LED's current */
export function passedOnSteps(coupler: Coupler, led: string, s: Reading, told = 'I'): Step[] {
  const { transfer } = coupler;
  if (transfer === undefined) return [];
  const current = s.current(led);
  return [
    {
      name: 'I_coupler',
      says: `what the coupler passes on: its ${s.typical ? 'typical' : 'least'} ratio at that LED current`,
      formula: `ratio * ${told}`,
      with: { ratio: [transfer.ratio(current, s), ''], [told]: [current, 'A'] },
      gives: [passedOn(coupler, led, s), 'A'],
      sources: sourcesOf(led, transfer.origin),
    },
  ];
}

/** What the output may make at most of the current that its LED keeps when it is off. @param told symbol of that current */
export function keptOnSteps({ transfer }: Coupler, led: string, s: Reading, told = 'I'): Step[] {
  if (transfer === undefined) return [];
  const current = s.current(led);
  return [
    {
      name: 'I_coupler',
      says: 'what the coupler with the highest ratio makes of it',
      formula: `ratio * ${told}`,
      with: { ratio: [transfer.most(current, s), ''], [told]: [current, 'A'] },
      gives: [transfer.most(current, s) * current, 'A'],
      sources: sourcesOf(led, transfer.origin),
    },
  ];
}

/** The accounts of a coupler's input: what its LED carries, and the question for its ratio where nobody states it. */
export function ledAccounts(
  { ledMaximum, transfer }: Coupler,
  {
    led,
    id = led,
    circuit,
    path,
    off,
  }: {
    readonly led: string;
    readonly id?: string;
    readonly circuit: string;
    readonly path: AccountPlan['path'];
    readonly off?: true;
  },
): AccountPlan[] {
  const carries: AccountPlan = {
    id,
    kind: 'input',
    title: `coupler input of ${circuit}`,
    quantity: 'current',
    direction: 'at-most',
    circuits: [circuit],
    path,
    recipes: ['draw-most', 'draw-least'],
    ...(off && { off }),
    read: (s) => s.current(led),
    limits: ledMaximum ? [ledMaximum] : [],
    books: [{ circuit, part: led }],
    ...(!ledMaximum && {
      missing: {
        figure: 'led-maximum-current',
        asks: `what current may the coupler LED of ${circuit} carry (its \`led-maximum-current\`)?`,
      },
    }),
    steps: (s) => branchSteps(s.branch(led), 'current through the coupler’s LED at its most', 'I_led'),
  };
  return transfer ? [carries] : [carries, noRatio(id, circuit, path)];
}

const noRatio = (id: string, circuit: string, path: AccountPlan['path']): AccountPlan => ({
  id,
  kind: 'input',
  title: `coupler of ${circuit}, transfer ratio`,
  quantity: 'current',
  direction: 'at-least',
  circuits: [circuit],
  path,
  recipes: ['drive-worst'],
  read: () => undefined,
  limits: [],
  missing: {
    figure: 'transfer-ratio',
    asks: `what is the current transfer ratio of the coupler of ${circuit} at the current it really gets (its \`transfer-ratio\`)?`,
  },
  steps: () => [],
});
