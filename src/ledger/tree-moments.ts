/** The worst moments of the supply tree: the states in which most flows to a node. */
import type { Link } from '../project/tree-plan.js';
import type { Corner } from './corner.js';
import type { Focus, Moment } from './moment.js';
import type { ModeSearch } from './moments.js';
import { heaviest, keyOf, turnedOver } from './moments.js';
import type { Question } from './question.js';
import type { Reach, Whole } from './reach.js';
import { reachOf, wholeOf } from './reach.js';
import type { Solver } from './solver.js';
import { turnedRest } from './tree-corners.js';

export type Reaches = (at: string, heated: Link | undefined) => Reach;

/** What hangs on each node that is asked about, read off the solution with all on where that is needed. */
export function reachesOf(solver: Solver, corner: Corner, reach = reachOf): Reaches {
  const known = new Map<string, Reach>();
  const on = Uint8Array.from(solver.circuitry.project.circuits, () => 1);
  let solved: Whole | undefined;
  const whole = (): Whole =>
    (solved ??= wholeOf(solver.solve({ moment: { mode: 'all', on }, corner, focus: solver.nobody })));
  return (at, heated) => {
    const key = `${at} ${heated?.id ?? ''}`;
    const found = known.get(key) ?? reach(solver, whole, at, heated);
    known.set(key, found);
    return found;
  };
}

/** The moments to try of a mode for what flows to a node. */
export type MomentsAt = (
  mode: ModeSearch,
  at: string,
  heated: Link | undefined,
  read: Question['read'],
  focus: Focus,
) => readonly Moment[];

/** The moments to try of a mode: the mode itself, or the allowed states in which most flows in a telling corner. */
export function momentsOf(
  solver: Solver,
  telling: readonly { readonly corner: Corner; readonly reach: Reaches }[],
): MomentsAt {
  const { project } = solver.circuitry;
  const known = new Map<string, readonly Moment[]>();
  type Read = Question['read'];
  /** The state with those circuits turned over of which it is not sure what they do, where that makes it worse. */
  const turned = (
    mode: ModeSearch,
    moment: Moment,
    torn: readonly number[],
    read: Read,
    corner: Corner,
    focus: Focus,
  ): Moment => {
    const size = (m: Moment): number => read(solver.solve({ moment: m, corner, focus })) ?? -Infinity;
    return torn.reduce((best, c) => {
      const other = turnedOver(project, mode, best, c);
      return other && size(other) > size(best) ? other : best;
    }, moment);
  };
  const search = (
    mode: ModeSearch,
    at: string,
    heated: Link | undefined,
    read: Read,
    focus: Focus,
  ): readonly Moment[] => {
    if (mode.on) return [{ mode: mode.name, on: mode.on }];
    const found = telling.flatMap(({ corner, reach }) => {
      const { adds, torn } = reach(at, heated);
      const tried = focus === solver.nobody ? corner : turnedRest(corner);
      return weightings(solver, adds()).flatMap((weights) =>
        heaviest(project, mode, weights, new Set()).map((m) => turned(mode, m, torn(), read, tried, focus)),
      );
    });
    return [...new Map(found.map((m) => [m.on.join(), m])).values()];
  };
  return (mode, at, heated, read, focus) => {
    const key = `${keyOf(mode)}|${at}|${heated?.id ?? ''}`;
    const moments = known.get(key) ?? search(mode, at, heated, read, focus);
    known.set(key, moments);
    return moments;
  };
}

/** What circuits add, and, where some pulse, what they add on average: heat asks for the one, peaks for the other. */
function weightings(solver: Solver, adds: readonly number[]): readonly (readonly number[])[] {
  if (solver.circuitry.pulsing.length === 0) return [adds];
  return [adds, adds.map((amps, circuit) => amps * dutyOf(solver, circuit))];
}

/** The most of a period that a circuit is on when it is. */
export const dutyOf = ({ circuitry: { pulsing } }: Solver, circuit: number): number =>
  pulsing.find((p) => p.circuits.includes(circuit))?.duty.max ?? 1;
