/** The relay boards of a project, each once. */
import type { BoardWiring } from '../../loads/plan.js';
import type { Project } from '../../project/project.js';

export function boardsOf(project: Project): { readonly owner: string; readonly board: BoardWiring }[] {
  const boards = new Map<string, BoardWiring>();
  for (const c of project.circuits) if (c.wiring.board) boards.set(c.owner, c.wiring.board);
  return [...boards].map(([owner, board]) => ({ owner, board }));
}
