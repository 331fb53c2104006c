/** A fitted supply jumper, or one terminal for both, makes logic supply and coil supply one net: two supplies on it drive each other. */
import { sameNode } from '../../project/same-node.js';
import type { Finding, Judged, WiringRule } from '../finding.js';
import { boardsOf } from './boards.js';

function find({ ledger: { project } }: Judged): Finding[] {
  return boardsOf(project).flatMap(({ owner, board }): Finding[] =>
    (board.jumper === 'fitted' || board.oneTerminal) &&
    board.logic !== undefined &&
    board.coil !== undefined &&
    !sameNode(project, board.logic, board.coil)
      ? [
          {
            rule: 'jumper-joins-supplies',
            family: 'relay boards',
            verdict: 'breach',
            about: owner,
            path: ['loads', owner, board.oneTerminal ? 'coil-supply' : 'jumper'],
            names: {
              logic: board.logic,
              coil: board.coil,
              ...(board.oneTerminal && { terminal: board.terminals['coil-supply'] ?? 'its supply terminal' }),
            },
            related: [],
          },
        ]
      : [],
  );
}

export default { name: 'jumper-joins-supplies', family: 'relay boards', find } satisfies WiringRule;
