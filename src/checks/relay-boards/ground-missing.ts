/** A signal needs a way back: an input without a coupler, or an active-high one, does nothing between separate grounds. */
import type { Finding, Judged, WiringRule } from '../finding.js';
import { boardsOf, hasCouplers } from './boards.js';

function find({ ledger: { project } }: Judged): Finding[] {
  return boardsOf(project).flatMap(({ owner, board }): Finding[] =>
    board.coupling !== 'opto' && board.grounds === 'separate'
      ? [
          {
            rule: 'ground-missing',
            family: 'relay boards',
            verdict: board.coupling === 'unknown' ? 'unproven' : 'breach',
            about: owner,
            path: ['loads', owner, 'grounds'],
            names: board.coupling === 'unknown' ? { asks: hasCouplers(owner) } : {},
            related: [],
          },
        ]
      : [],
  );
}

export default { name: 'ground-missing', family: 'relay boards', find } satisfies WiringRule;
