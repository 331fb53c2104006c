/** Builds that each figure pushes outwards: what random builds hardly ever reach, these do. */
import type { Project } from '../../src/project/project.js';
import type { Reader } from './readers.js';
import type { Build } from './reckoning.js';
import { reckon } from './reckoning.js';

/** A build by name of figure; what is not named lies in the middle. */
const build = (shares: ReadonlyMap<string, number>): Build => ({ share: (figure) => shares.get(figure) ?? 0.5 });

/** The names of the figures that a reckoning asks for. */
function figuresOf(project: Project, on: ReadonlySet<string>): string[] {
  const names = new Set<string>();
  reckon(project, on, {
    share: (figure) => {
      names.add(figure);
      return 0.5;
    },
  });
  return [...names];
}

/**
 * The highest and the lowest that each account comes to, every figure at the end that pushes it there by itself, and turned
 * over once more where that goes further.
 *
 * @param enough share of an upper bound that is as good as the bound: no more is tried then
 */
export function extremesOf(
  project: Project,
  readers: readonly Reader[],
  on: ReadonlySet<string>,
  enough: number,
): { low: number; high: number }[] {
  const read = (shares: ReadonlyMap<string, number>, of: readonly Reader[]): number[] => {
    const reckoned = reckon(project, on, build(shares));
    return of.map((r) => r.read(reckoned)!);
  };
  const up = readers.map(() => new Map<string, number>());
  for (const figure of figuresOf(project, on)) {
    const [low, high] = [read(new Map([[figure, 0]]), readers), read(new Map([[figure, 1]]), readers)];
    readers.forEach((_, k) => up[k]!.set(figure, high[k]! >= low[k]! ? 1 : 0));
  }
  return readers.map((reader, k) => {
    const down = new Map([...up[k]!].map(([figure, share]) => [figure, 1 - share]));
    const value = (shares: ReadonlyMap<string, number>): number => read(shares, [reader])[0]!;
    let high = value(up[k]!);
    // What one figure does may hang on where the others are: a converter takes less from a higher supply, a coil more.
    const bound = reader.account.draw!.max * enough;
    for (const figure of [...up[k]!.keys()]) {
      if (high >= bound) break;
      const turned = new Map(up[k]!).set(figure, 1 - up[k]!.get(figure)!);
      if (value(turned) <= high) continue;
      up[k] = turned;
      high = value(turned);
    }
    return { high, low: value(down) };
  });
}
