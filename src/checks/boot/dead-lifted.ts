/**
 * A dead rail that is fed through pins and inputs keeps what lives from it half alive: it works by accident, or not at all, and
 * does not start anew when its supply comes back.
 */
import { formatValue } from '../../quantity/print.js';
import type { LiftedRail } from '../../ledger/lifted.js';
import { SURELY_OFF, isLifted } from '../../ledger/lifted.js';
import type { Finding, WiringRule } from '../finding.js';

const finding = ({ dead, stated, rail, volts, on, through, steps }: LiftedRail, path: Finding['path']): Finding => {
  const [most] = [...on].sort((a, b) => b.volts - a.volts);
  const runs = on.filter(({ works, volts }) => works !== undefined && volts >= works).map((w) => w.about);
  return {
    rule: 'dead-lifted',
    family: 'boot',
    verdict: stated ? 'strain' : 'note',
    about: rail,
    path,
    names: {
      dead: dead.join(', '),
      rail,
      from: formatValue(volts.min, 'voltage'),
      to: formatValue(volts.max, 'voltage'),
      through: through.join(', '),
      on: on.map((w) => w.about).join(', '),
      off: formatValue(SURELY_OFF, 'voltage'),
      ...(runs.length > 0 && { runs: runs.join(', ') }),
      ...(most?.works !== undefined && { works: formatValue(most.works, 'voltage') }),
    },
    related: [],
    steps,
  };
};

export default {
  name: 'dead-lifted',
  family: 'boot',
  find: ({ ways, ledger: { project } }) =>
    ways.lifted
      .filter(isLifted)
      .map((lifted) => finding(lifted, project.nodes.find((n) => n.id === lifted.rail)?.path ?? [])),
} satisfies WiringRule;
