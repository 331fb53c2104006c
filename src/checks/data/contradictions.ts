/**
 * Which figures a reading contradicts: those on the way to it by which it is moved the most, each with the value that it
 * would have to have by itself. Found by solving the project again with that value.
 */
import { gaugesOf } from '../../ledger/gauge.js';
import type { Ledger } from '../../ledger/ledger.js';
import type { Candidate } from '../../ledger/solver.js';
import { solver } from '../../ledger/solver.js';
import type { FigureAt } from '../../project/altered.js';
import { withFigure } from '../../project/altered.js';
import type { Project, ReadingPlan } from '../../project/project.js';
import type { Dimension } from '../../quantity/dimension.js';
import type { Interval } from '../../quantity/interval.js';

/** A figure that the reading contradicts. */
export interface Contradiction {
  readonly what: string;
  readonly dimension: Dimension;
  readonly stated: Interval;
  /** It is the drop of a switch, which is more when that is not driven enough. */
  readonly loses?: true;
  /** What it would have to be, SI. */
  readonly needed: number;
}

/** A figure more than this many times off is no explanation. */
const FAR = 5;
/** No more of them are told. */
const MOST = 3;
/** No more of what draws from a node is tried. */
const MOST_DRAWING = 24;
const STEPS = 40;

type Suspect = Omit<Contradiction, 'needed'> & { readonly figure: FigureAt };

/** @param candidate the corner that comes nearest to the reading @param target what the meter showed, SI */
export function contradictionsOf(
  { project }: Ledger,
  reading: ReadingPlan,
  candidate: Candidate,
  target: number,
): Contradiction[] {
  const read = (altered: Project): number | undefined => {
    const bench = solver(altered);
    const [gauge] = gaugesOf(bench, reading);
    if (gauge === undefined) return undefined;
    const numbers = gauge.circuits.map((id) => bench.circuitry.circuitIndex.get(id)!);
    const focus = numbers.length === 0 ? bench.nobody : bench.focus(numbers);
    try {
      return gauge.read(bench.solve({ ...candidate, focus }));
    } catch {
      // What does not come to rest explains nothing.
      return undefined;
    }
  };
  return suspectsOf(project, reading)
    .flatMap((suspect) => {
      const needed = neededFor(suspect, (value) => read(withFigure(project, suspect.figure, value)), target);
      return needed === undefined ? [] : [{ ...suspect, needed }];
    })
    .sort((a, b) => distance(a) - distance(b))
    .slice(0, MOST);
}

/** How far off a figure would have to be, as a ratio: one that moves the meter much needs to be off by little. */
function distance({ stated, needed }: Pick<Contradiction, 'stated' | 'needed'>): number {
  const near = needed < stated.min ? stated.min : stated.max;
  return near > 0 && needed > 0 ? Math.abs(Math.log(needed / near)) : Math.abs(needed - near);
}

/** The value nearest to the stated ones at which the meter shows the target, by bisection; undefined when there is none. */
function neededFor(
  { stated }: Suspect,
  read: (value: number) => number | undefined,
  target: number,
): number | undefined {
  const over = (value: number): number | undefined => {
    const shown = read(value);
    return shown === undefined ? undefined : shown - target;
  };
  const ways = [
    [stated.min, stated.min > 0 ? stated.min / FAR : 0],
    // What loses next to nothing may lose volts when it is not driven.
    [stated.max, Math.max(stated.max * FAR, 1)],
  ] as const;
  for (const [from, to] of ways) {
    const [near, far] = [over(from), over(to)];
    if (near === undefined || far === undefined || Math.sign(near) === Math.sign(far)) continue;
    let [a, b] = [from, to];
    for (let k = 0; k < STEPS && Math.abs(b - a) > 1e-4 * Math.max(Math.abs(a), Math.abs(b)); k++) {
      const middle = (a + b) / 2;
      const shown = over(middle);
      if (shown === undefined) return undefined;
      if (Math.sign(shown) === Math.sign(near)) a = middle;
      else b = middle;
    }
    return (a + b) / 2;
  }
  return undefined;
}

/** The figures on the way to a reading: its own branch, and what feeds that. */
function suspectsOf(project: Project, { of, quantity }: ReadingPlan): Suspect[] {
  const all = project.networks.flatMap((n) => n.on);
  const branches = all.filter((b) => b.members.some((m) => m.part === of.id));
  const sum = (of.sort === 'node' || of.sort === 'link') && quantity !== 'voltage';
  // A sum may be off by any of those that draw from it; those that do not leave the meter where it was.
  const drawing = all
    .flatMap((b) => b.members)
    .filter((m) => m.kind === 'current' || m.kind === 'filament' || m.kind === 'power' || ('load' in m && m.load));
  const parts = (sum ? drawing.slice(0, MOST_DRAWING) : branches.flatMap((b) => b.members)).flatMap((m): Suspect[] => {
    const figure: FigureAt = { sort: 'part', part: m.part };
    switch (m.kind) {
      case 'resistance':
        return [{ figure, what: `the resistance of ${m.part}`, dimension: 'resistance', stated: m.ohms }];
      case 'pin':
        return [{ figure, what: `the output resistance of ${m.part}`, dimension: 'resistance', stated: m.ohms }];
      case 'drop':
        return [{ figure, what: `what ${m.part} loses`, dimension: 'voltage', stated: m.volts, loses: true }];
      case 'power':
        return [{ figure, what: `what ${m.part} takes`, dimension: 'power', stated: m.watts }];
      case 'filament':
      case 'current':
        return [{ figure, what: `what ${m.part} draws`, dimension: 'current', stated: m.amps }];
      case 'curve': {
        const ends = (end: keyof Interval): number[] => m.points.map((p) => p.volts[end]);
        const stated = { min: Math.min(...ends('min')), typ: ends('typ')[0]!, max: Math.max(...ends('max')) };
        return [{ figure, what: `what ${m.part} loses`, dimension: 'voltage', stated, loses: true }];
      }
      case 'junction':
        return [];
      default:
        return m satisfies never;
    }
  });
  const ends = of.sort === 'node' || of.sort === 'link' ? [of.id] : branches.flatMap((b) => [b.from, b.to]);
  return [...parts, ...[...new Set(ends)].flatMap((end) => feedOf(project, end))];
}

/** The supply of a node, and what lies between. */
function feedOf(project: Project, id: string): Suspect[] {
  const node = project.nodes.find((n) => n.id === id);
  const volts = node?.volts;
  // What is between an ideal source and a supply's terminals is told by the supply's name.
  const name = id.replace(/:inside$/, '');
  const own: Suspect[] = volts
    ? [{ figure: { sort: 'node', id }, what: `the voltage of ${name}`, dimension: 'voltage', stated: volts }]
    : [];
  const link = project.links.find((l) => l.to === id || l.id === id);
  if (link === undefined) return own;
  const ohms: Suspect[] = link.ohms
    ? [
        {
          figure: { sort: 'link', id: link.id, key: 'ohms' },
          what: link.inner ? `the ${link.title}` : `the resistance of ${link.id}`,
          dimension: 'resistance',
          stated: link.ohms,
        },
      ]
    : [];
  const output: Suspect[] = link.volts
    ? [
        {
          figure: { sort: 'link', id: link.id, key: 'volts' },
          what: `the output of ${link.id}`,
          dimension: 'voltage',
          stated: link.volts,
        },
      ]
    : [];
  return [...own, ...ohms, ...output, ...feedOf(project, link.from)];
}
