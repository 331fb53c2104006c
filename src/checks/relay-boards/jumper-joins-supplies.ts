/** A fitted supply jumper makes logic supply and coil supply one net: two supplies on it drive each other. */
import { sameNode } from '../../project/same-node.js';
import type { Finding, Judged, WiringRule } from '../finding.js';
import { boardsOf } from './boards.js';

function find({ ledger: { project } }: Judged): Finding[] {
  return boardsOf(project).flatMap(({ owner, board }): Finding[] =>
    board.jumper === 'fitted' &&
    board.logic !== undefined &&
    board.coil !== undefined &&
    !sameNode(project, board.logic, board.coil)
      ? [
          {
            rule: 'jumper-joins-supplies',
            family: 'relay boards',
            verdict: 'breach',
            about: owner,
            path: ['loads', owner, 'jumper'],
            names: { logic: board.logic, coil: board.coil },
            related: [],
          },
        ]
      : [],
  );
}

export default { name: 'jumper-joins-supplies', family: 'relay boards', find } satisfies WiringRule;
