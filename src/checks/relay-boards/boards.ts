/** The relay boards of a project, each once. */
import type { BoardWiring } from '../../loads/circuit-plan.js';
import type { Project } from '../../project/project.js';

export function boardsOf(project: Project): { readonly owner: string; readonly board: BoardWiring }[] {
  const boards = new Map<string, BoardWiring>();
  for (const c of project.circuits) if (c.wiring.board) boards.set(c.owner, c.wiring.board);
  return [...boards].map(([owner, board]) => ({ owner, board }));
}

/** The question about a board that is a black box. */
export const hasCouplers = (owner: string): string =>
  `do couplers part the inputs of ${owner} from its coils (its \`input: { coupling: opto | transistor }\`)?`;
