/** What resolving a project gathers on its way: problems, assumptions, notes. */
import type { Path, Problem } from '../source/place.js';
import type { Remarks, Unsourced } from '../loads/figures.js';
import type { Assumption } from './project.js';

export interface Gathered extends Remarks {
  readonly problems: readonly Problem[];
  readonly assumptions: readonly Assumption[];
  /** Figures of profiles that were read and that no document backs. */
  readonly figuresUnsourced: () => readonly Unsourced[];
  /** How many of the project's own figures have no tolerance. */
  readonly exactCount: () => number;
}

export function gathering(): Gathered {
  const problems: Problem[] = [];
  const assumptions: Assumption[] = [];
  const said = new Set<string>();
  const exact = new Set<string>();
  const unsourced = new Map<string, Unsourced>();
  return {
    problems,
    assumptions,
    exactCount: () => exact.size,
    figuresUnsourced: () => [...unsourced.values()],
    unsourced: (figure) => void unsourced.set(figure.figure, figure),
    problem(problem) {
      const key = `${problem.path.join(' ')}|${problem.says}`;
      if (!said.has(key)) problems.push(problem);
      said.add(key);
    },
    assume(about, says, path) {
      const key = `${about}|${says}`;
      if (!said.has(key)) assumptions.push({ about, says, ...(path && { path }) });
      said.add(key);
    },
    exact(path: Path) {
      exact.add(path.join(' '));
    },
  };
}
