/**
 * A dead rail that is fed through pins and inputs keeps what lives from it half alive: it works by accident, or not at all, and
 * does not start anew when its supply comes back.
 */
import { formatValue } from '../../quantity/print.js';
import type { LiftedRail } from '../../ledger/lifted.js';
import { SURELY_OFF, isLifted, mayBeLifted } from '../../ledger/lifted.js';
import type { Finding, WiringRule } from '../finding.js';
import { oncePerThing } from '../once.js';

const finding = (lifted: LiftedRail, path: Finding['path']): Finding => {
  const { dead, stated, rail, usual, most, on, through, steps } = lifted;
  const likely = isLifted(lifted);
  const [highest] = [...on].sort((a, b) => b.volts - a.volts);
  const alive = on.filter(({ works, volts }) => works !== undefined && volts >= works);
  const runs = alive.map((w) => w.about);
  return {
    rule: 'dead-lifted',
    family: 'boot',
    verdict: stated && likely ? 'strain' : 'note',
    about: rail,
    path,
    names: {
      dead: dead.join(', '),
      rail,
      usual: formatValue(usual.typ, 'voltage'),
      most: formatValue(most, 'voltage'),
      ...(most > NEARLY * usual.typ && { apart: 'yes' }),
      through: through.join(', '),
      on: on.map((w) => w.about).join(', '),
      off: formatValue(SURELY_OFF, 'voltage'),
      ...(runs.length > 0 && { runs: runs.join(', ') }),
      ...(alive.some(({ works }) => usual.typ < works!) && { perhaps: 'yes' }),
      ...(highest?.works !== undefined && { works: formatValue(highest.works, 'voltage') }),
    },
    related: [],
    steps,
  };
};

/** Two voltages that differ by less are told as one. */
const NEARLY = 1.1;

export default {
  name: 'dead-lifted',
  family: 'boot',
  find: ({ ways, ledger: { project } }) =>
    oncePerThing(
      ways.lifted
        .filter(mayBeLifted)
        .map((lifted) => finding(lifted, project.nodes.find((n) => n.id === lifted.rail)?.path ?? [])),
    ),
} satisfies WiringRule;
