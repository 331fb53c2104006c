/**
 * A signal needs a way back: an input without a coupler does nothing between separate grounds, nor does one with a coupler whose
 * LED lives from the supply of the coils, or returns to their ground.
 */
import { hasControllersGround } from '../../project/grounds.js';
import type { BoardWiring } from '../../loads/circuit-plan.js';
import type { Project } from '../../project/project.js';
import type { Finding, Judged, WiringRule } from '../finding.js';
import { boardsOf, hasCouplers } from './boards.js';

function find({ ledger: { project } }: Judged): Finding[] {
  return boardsOf(project).flatMap(({ owner, board }): Finding[] =>
    board.grounds === 'separate' && (board.coupling !== 'opto' || isApart(project, board))
      ? [
          {
            rule: 'ground-missing',
            family: 'relay boards',
            verdict: board.coupling === 'unknown' ? 'unproven' : 'breach',
            about: owner,
            path: ['loads', owner, 'grounds'],
            names: {
              ...(board.coupling === 'unknown' && { asks: hasCouplers(owner) }),
              ...(board.coupling === 'opto' && { terminal: board.terminals['coil-supply'] ?? 'one supply terminal' }),
            },
            related: [],
          },
        ]
      : [],
  );
}

/** Inputs and coils share a terminal, and what feeds it has a minus of its own. */
const isApart = (project: Project, board: BoardWiring): boolean =>
  board.oneTerminal && board.coil !== undefined && !hasControllersGround(project, board.coil);

export default { name: 'ground-missing', family: 'relay boards', find } satisfies WiringRule;
