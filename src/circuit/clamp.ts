/**
 * What a clamp across a winding does, by its type and by which way round it sits. Switched on, the supply stands across it;
 * switched off, the winding drives its current through it the other way.
 *
 * - A diode, or a zener by itself, passes the winding's current forward and blocks the supply: a zener up to its breakdown,
 *   beyond which it conducts all the time. Its breakdown does not speed anything up.
 * - A diode in series with a zener that faces it breaks down for the winding's current and blocks the supply.
 * - A bidirectional suppressor (`tvs`) or a varistor breaks down either way, whichever way round it is fitted.
 * - Fitted the wrong way round, a diode or a zener is a short across the winding as soon as it is switched on; the pair
 *   of diode and zener blocks the winding's current, so that it clamps nothing.
 */

export type ClampType = 'diode' | 'schottky' | 'zener' | 'diode-zener' | 'tvs' | 'varistor';

export interface ClampAction {
  /** What it does when it sits as it is fitted. */
  readonly acts: 'clamps' | 'shorts' | 'clamps-nothing';
  /** What the winding's current meets at switching off, as a sum: junctions and breakdowns. */
  readonly forward: boolean;
  readonly breakdown: boolean;
  /** The supply has to stay below its breakdown while the switch is closed. */
  readonly breaksDownOn: boolean;
}

export function clampAction(type: ClampType, reversed: boolean): ClampAction {
  switch (type) {
    case 'diode':
    case 'schottky':
      return { acts: reversed ? 'shorts' : 'clamps', forward: true, breakdown: false, breaksDownOn: false };
    case 'zener':
      return { acts: reversed ? 'shorts' : 'clamps', forward: true, breakdown: false, breaksDownOn: true };
    case 'diode-zener':
      return { acts: reversed ? 'clamps-nothing' : 'clamps', forward: true, breakdown: true, breaksDownOn: reversed };
    case 'tvs':
    case 'varistor':
      return { acts: 'clamps', forward: false, breakdown: true, breaksDownOn: true };
    default:
      return type satisfies never;
  }
}
