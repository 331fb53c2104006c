/**
 * A dead rail that is fed through pins and inputs keeps what lives from it half alive: it works by accident, or not at all, and
 * does not start anew when its supply comes back.
 */
import { formatValue } from '../../quantity/print.js';
import type { LiftedRail } from '../../ledger/lifted.js';
import type { Finding, WiringRule } from '../finding.js';

/**
 * Volts that a rail has to be below for what hangs on it to be surely off, and to start from its reset when the supply comes
 * back. Source: Atmel, ATmega48P/88P/168P/328P, 8025I, Table 26-3: the power-on reset works only after the supply has been below
 * 0.6 / 1.3 / 1.6 V. Other chips state no such figure: common practice, no source.
 */
const SURELY_OFF = 0.6;

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
      .filter(({ volts, on }) => volts.max > SURELY_OFF && on.length > 0)
      .map((lifted) => finding(lifted, project.nodes.find((n) => n.id === lifted.rail)?.path ?? [])),
} satisfies WiringRule;
