/** Windows of supply voltages: those of chips and of boards' inlets, which their rails are held to, and those of loads. */
import type { Figure, Figures } from '../loads/figures.js';
import type { LimitPlan } from '../loads/account-plan.js';
import { closed } from '../quantity/quantity.js';
import type { DipPlan, SupplyWindow } from './tree-plan.js';

/** Something that has to hold for a thing on the rail to work at all. */
const working = (figure: Figure, value: LimitPlan['value'], condition: string): LimitPlan => ({
  value,
  stated: figure.quantity.stated,
  grade: figure.origin.basis === 'practice' ? 'practice' : 'operating',
  isFunction: true,
  margin: 'window',
  origin: figure.origin,
  condition,
});

/**
 * A chip's: the voltages at which it works, the one at which its brown-out detector resets it, and the most that it bears.
 *
 * @param figures the board's, where those are narrower, before the chip's
 */
export function chipWindow(figures: Figures, about: string, node: string): SupplyWindow[] {
  const supply = figures.within('supply');
  const operating = supply.figure('operating', 'voltage');
  const absolute = supply.figure('absolute', 'voltage');
  const brownOut = figures.figure('brown-out', 'voltage');
  const window = operating && sides(operating, `supply window of ${about}`);
  const resets = brownOut && closed(brownOut.quantity);
  const low: LimitPlan[] = [
    ...(window?.low ?? []),
    ...(resets ? [working(brownOut, (s) => (s.typical ? resets.typ : resets.max), `brown-out level of ${about}`)] : []),
  ];
  const most = absolute?.quantity.max;
  const high: LimitPlan[] = [
    ...(window?.high ?? []),
    ...(absolute && most !== undefined
      ? [
          {
            value: most,
            stated: absolute.quantity.stated,
            grade: 'absolute' as const,
            margin: 'none' as const,
            origin: absolute.origin,
            condition: `what ${about} survives`,
          },
        ]
      : []),
  ];
  if (low.length + high.length === 0) return [];
  const { min = 0, max } = operating?.quantity ?? {};
  return [{ about, node, min: Math.max(min, resets?.max ?? 0), ...(max !== undefined && { max }), low, high }];
}

/** The most that a board's inlet takes. Whether what comes in is enough is seen on the rails behind it. */
export function inletWindow(figures: Figures, node: string): SupplyWindow[] {
  const figure = figures.figure('voltage', 'voltage');
  const max = figure?.quantity.max;
  if (figure === undefined || max === undefined || figure.quantity.exact) return [];
  return [{ about: node, node, max, low: [], high: sides(figure, 'supply window of the inlet').high }];
}

/** That of a load, which it is held to itself. */
export function loadWindow(figures: Figures, about: string, node: string): SupplyWindow[] {
  const figure = figures.figure('supply-voltage', 'voltage');
  if (figure === undefined) return [];
  const { min, max } = figure.quantity;
  return [{ about, node, ...(min !== undefined && { min }), ...(max !== undefined && { max }), low: [], high: [] }];
}

function sides(figure: Figure, condition: string): Pick<SupplyWindow, 'low' | 'high'> {
  const { min, max } = figure.quantity;
  return {
    low: min === undefined ? [] : [working(figure, min, condition)],
    high: max === undefined ? [] : [working(figure, max, condition)],
  };
}

/** How far the supply of a load may dip: a rating of the load's, judged as a function. */
export function loadDip(figures: Figures, about: string, node: string): DipPlan[] {
  const figure = figures.figure('maximum-dip', 'voltage');
  if (figure === undefined) return [];
  const { min, typ } = closed(figure.quantity);
  const limit: LimitPlan = {
    value: (s) => (s.typical ? typ : min),
    stated: figure.quantity.stated,
    grade: figure.origin.basis === 'practice' ? 'practice' : 'operating',
    isFunction: true,
    margin: 'window',
    origin: figure.origin,
    condition: 'from where its supply stood just before',
  };
  return [{ about, node, limit, path: figures.path }];
}
