/** Couplers isolate only while nothing else joins the two sides: a fitted jumper, joined grounds, one supply for both. */
import { hasControllersGround } from '../../project/grounds.js';
import { beforeCables, sameNode } from '../../project/same-node.js';
import type { Finding, Judged, WiringRule } from '../finding.js';
import { boardsOf, hasCouplers } from './boards.js';

function find({ ledger: { project } }: Judged): Finding[] {
  return boardsOf(project).flatMap(({ owner, board }): Finding[] => {
    const wanted = board.isolation === 'wanted';
    if (board.coupling === 'unknown')
      return wanted ? [defeated(owner, 'unproven', { why: '', asks: hasCouplers(owner) })] : [];
    if (board.coupling !== 'opto') {
      const names = { why: 'it has no couplers' };
      return wanted ? [defeated(owner, 'strain', names)] : [];
    }
    const why =
      board.jumper === 'fitted'
        ? 'its supply jumper is fitted'
        : board.grounds === 'joined'
          ? 'its grounds are joined'
          : board.logic !== undefined && board.coil !== undefined && sameNode(project, board.logic, board.coil)
            ? 'one supply feeds both sides'
            : board.coil !== undefined && hasControllersGround(project, board.coil)
              ? `the minus of ${beforeCables(project, board.coil)} is the controller’s ground`
              : undefined;
    return why === undefined ? [] : [defeated(owner, wanted ? 'strain' : 'note', { why })];
  });
}

const defeated = (owner: string, verdict: 'strain' | 'unproven' | 'note', names: Finding['names']): Finding => ({
  rule: 'isolation-defeated',
  family: 'relay boards',
  verdict,
  about: owner,
  path: ['loads', owner],
  names,
  related: [],
});

export default { name: 'isolation-defeated', family: 'relay boards', find } satisfies WiringRule;
