/** Meter readings held against the books: each is an account of its own, with the bounds between which it had to stand. */
import type { Project, ReadingPlan } from '../project/project.js';
import type { Account } from './account.js';
import type { GaugeBounds } from './gauge.js';
import { boundsOf, gaugesOf } from './gauge.js';
import type { ModeSearch } from './moments.js';
import { RUNAWAY } from './moments.js';
import type { Solver } from './solver.js';

/** Share of a bound that is rounding. */
const DUST = 1e-9;

/** The bounds of a reading: in its mode, or over all modes where it names none. */
export function boundsOfReading(
  solver: Solver,
  reading: ReadingPlan,
  modes: readonly ModeSearch[],
): { readonly mode: ModeSearch; readonly bounds: GaugeBounds } | undefined {
  const gauges = gaugesOf(solver, reading);
  return modes
    .filter((m) => m.name !== RUNAWAY && (reading.mode === undefined || m.name === reading.mode))
    .flatMap((mode) =>
      gauges.flatMap((gauge) => {
        const bounds = boundsOf(solver, gauge, mode);
        return bounds ? [{ mode, bounds }] : [];
      }),
    )
    .reduce<{ mode: ModeSearch; bounds: GaugeBounds } | undefined>((all, next) => {
      if (all === undefined) return next;
      const [a, b] = [all.bounds, next.bounds];
      const low = b.draw.min < a.draw.min ? b : a;
      const high = b.draw.max > a.draw.max ? b : a;
      const draw = { min: low.draw.min, typ: a.draw.typ, max: high.draw.max };
      return { mode: all.mode, bounds: { draw, least: low.least, most: high.most, typical: a.typical } };
    }, undefined);
}

/** Which side of the bounds a reading lies; undefined inside. A reading with a tolerance is inside when any of it is. */
export function sideOf(value: ReadingPlan['value'], draw: GaugeBounds['draw']): 'below' | 'above' | undefined {
  const room = DUST * Math.max(Math.abs(draw.min), Math.abs(draw.max));
  if (value.max < draw.min - room) return 'below';
  return value.min > draw.max + room ? 'above' : undefined;
}

/** What feeds a place: the next one to hold the meter to. */
function feedOf({ networks, links, nodes }: Project, id: string): string | undefined {
  const branch = networks.flatMap((n) => [...n.on, ...n.off]).find((b) => b.members.some((m) => m.part === id));
  const isNode = (end: string): boolean => nodes.some((n) => n.id === end && n.kind !== 'joint');
  if (branch) return [branch.from, branch.to].find(isNode);
  const link = links.find((l) => !l.inner && (l.id === id || l.to === id));
  return link && isNode(link.from) ? link.from : undefined;
}

/** The accounts of a project's readings. @param modes those that are looked at */
export function measuredAccounts(solver: Solver, modes: readonly ModeSearch[]): Account[] {
  const { project } = solver.circuitry;
  return project.measured.flatMap((reading, k): Account[] => {
    if (reading.mode !== undefined && !modes.some((m) => m.name === reading.mode)) return [];
    const found = boundsOfReading(solver, reading, modes);
    const { of, quantity, path } = reading;
    const base = {
      id: `measured.${k + 1}`,
      kind: 'measured' as const,
      title: `reading of ${of.id}, ${quantity}`,
      quantity,
      direction: 'at-most' as const,
      path,
      reading,
      moment: [],
      bound: false,
      limits: [],
      entries: [],
      sampling: () => undefined,
    };
    const feed = feedOf(project, of.id);
    const asks =
      feed === undefined
        ? `is ${of.id} wired as the file says, and does the meter show the same again?`
        : `what does the meter show at ${feed} in the same mode, and is ${of.id} wired as the file says?`;
    const missing = { figure: 'measured', asks };
    if (found === undefined)
      return [{ ...base, mode: reading.mode ?? '', missing, steps: () => [], solutions: () => ({}) }];
    const { bounds, mode } = found;
    const side = sideOf(reading.value, bounds.draw);
    const [least, most, typical] = [bounds.least, bounds.most, bounds.typical].map((c) => solver.solve(c));
    const told = side === 'above' ? most! : least!;
    return [
      {
        ...base,
        mode: mode.name,
        draw: bounds.draw,
        ...(side && { missing, nearest: side === 'above' ? bounds.most : bounds.least }),
        steps: () => gaugesOf(solver, reading)[0]!.steps(told),
        solutions: () => ({ least: least!, most: most!, typical: typical! }),
      },
    ];
  });
}
