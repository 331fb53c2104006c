/**
 * What accounts come to when not everything is at its worst at once: sampled builds, or the root of the sum of squares of
 * what each figure does by itself. Each account is asked in its own worst moment. Verdicts stay those of the extremes.
 *
 * Figures that only the proof of a driver or coil uses (gain, transfer ratio, thermal resistance, pull-in) are no part of
 * the circuit that is solved; they stay at the end that the proof takes.
 */
import type { Interval } from '../quantity/interval.js';
import type { Account } from './account.js';
import type { Build } from './builds.js';
import { drawnBuilds, evenly, uncertainFigures } from './builds.js';
import type { Corner } from './corner.js';
import { TYPICAL } from './corner.js';
import type { Ledger } from './ledger.js';
import type { Moment } from './moment.js';
import type { Solution } from './solution.js';

/** How often something lies below: 0.135 %, 50 % and 99.865 %, which of a normal distribution are three sigma each way. */
export const PERCENTILES = [0.135, 50, 99.865] as const;

export type Method =
  { readonly method: 'rss' } | { readonly method: 'monte-carlo'; readonly builds: number; readonly seed: number };

/** SI. */
export interface Statistics {
  readonly low: number;
  readonly middle: number;
  readonly high: number;
}

/** An account's worst moment, and how to read the account off a solution of it. */
export interface Sampling {
  readonly moment: Moment;
  /** The place whose ambient it reads. */
  readonly place?: string;
  /** Stall and start currents flow. */
  readonly peak: boolean;
  readonly read: (s: Solution) => number | undefined;
}

/** The statistics of every account with a known draw. */
export function statisticsOf(ledger: Ledger, method: Method): ReadonlyMap<Account, Statistics> {
  const asked = ledger.accounts.flatMap((account) => {
    const sampling = account.draw && account.sampling();
    return sampling ? [{ account, ...sampling }] : [];
  });
  // Accounts of one moment are read off the same solutions.
  const groups = new Map<string, Asked[]>();
  for (const each of asked) {
    const key = `${each.moment.on.join('')}${each.peak}${each.place ?? ''}`;
    groups.set(key, [...(groups.get(key) ?? []), each]);
  }
  const figures = uncertainFigures(ledger.project);
  const found = new Map<Account, Statistics>();
  for (const group of groups.values()) {
    const [{ moment, peak, place }] = group as [Asked, ...Asked[]];
    const readAll = (build: Build): (number | undefined)[] => {
      const solution = ledger.solver.solveBuild(moment, cornerOf(build, peak, place));
      return group.map(({ read }) => read(solution));
    };
    const statistics =
      method.method === 'rss' ? rootOfSquares(readAll, figures) : percentiles(readAll, figures, method);
    group.forEach(({ account }, k) => {
      const known = statistics[k];
      if (known) found.set(account, method.method === 'rss' ? inside(known, account.draw!) : known);
    });
  }
  return found;
}

/** A root of squares takes what figures do for straight and can point past the extremes, which nothing passes. */
const inside = ({ low, middle, high }: Statistics, { min, max }: Interval): Statistics => ({
  low: Math.max(low, min),
  middle: Math.min(Math.max(middle, min), max),
  high: Math.min(high, max),
});

interface Asked extends Sampling {
  readonly account: Account;
}

const cornerOf = (build: Build, peak: boolean, place: string | undefined): Corner => ({
  ...TYPICAL,
  build,
  ...(peak && { load: 'peak' }),
  ...(place !== undefined && { place }),
});

type ReadAll = (build: Build) => (number | undefined)[];

/** About the build with all figures typical: the root of the sum of squares of what each adds, and of what each takes. */
function rootOfSquares(readAll: ReadAll, figures: readonly string[]): (Statistics | undefined)[] {
  const middle = readAll(evenly(0.5));
  const squares = middle.map(() => ({ up: 0, down: 0 }));
  for (const moved of figures)
    for (const share of [0, 1])
      readAll({ share: (figure) => (figure === moved ? share : 0.5) }).forEach((value, k) => {
        const shift = (value ?? NaN) - (middle[k] ?? NaN);
        squares[k]![shift > 0 ? 'up' : 'down'] += shift * shift;
      });
  return middle.map((at, k) => {
    const { up, down } = squares[k]!;
    if (at === undefined || Number.isNaN(up + down)) return undefined;
    return { low: at - Math.sqrt(down), middle: at, high: at + Math.sqrt(up) };
  });
}

function percentiles(
  readAll: ReadAll,
  figures: readonly string[],
  { builds, seed }: Method & { readonly method: 'monte-carlo' },
): (Statistics | undefined)[] {
  const samples: (number | undefined)[][] = [];
  for (const build of drawnBuilds(figures, builds, seed)) samples.push(readAll(build));
  return (samples[0] ?? []).map((_, k) => {
    const values = samples.flatMap((sample) => sample[k] ?? []).sort((a, b) => a - b);
    if (values.length < samples.length) return undefined;
    const [low, middle, high] = PERCENTILES.map((percent) => quantile(values, percent / 100)) as [
      number,
      number,
      number,
    ];
    return { low, middle, high };
  });
}

/** Between the two values that a share of sorted values lies between, in a straight line. */
function quantile(sorted: readonly number[], share: number): number {
  const at = share * (sorted.length - 1);
  const below = sorted[Math.floor(at)]!;
  return below + (at - Math.floor(at)) * (sorted[Math.ceil(at)]! - below);
}
