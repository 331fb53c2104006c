/**
 * Whether linear regulators regulate: their input, less what they need between input and output, has to be at or above the
 * lower bound of their output (rule 16 of the format). What it comes to when they do not hangs on the windows behind them.
 */
import { USUAL_DROPOUT } from '../circuit/regulator.js';
import type { Failing, LimitPlan, Reading } from '../loads/account-plan.js';
import { chargedBy } from '../project/capacitances.js';
import type { Project } from '../project/project.js';
import type { Link, SupplyWindow } from '../project/tree-plan.js';
import type { TreeQuestion } from './question.js';
import type { Solution } from './solution.js';
import type { Solver } from './solver.js';

export const regulationQuestions = ({ circuitry: { project } }: Solver): TreeQuestion[] =>
  project.links.flatMap((link) => (link.kind === 'linear-regulator' ? [regulation(project, link)] : []));

function regulation(project: Project, link: Link): TreeQuestion {
  const nodes = chargedBy(project.links, link.to);
  const windows = project.windows.filter((w) => nodes.has(w.node));
  const unknown = link.dropout === undefined;
  const dropout = (s: Solution): number => (unknown ? USUAL_DROPOUT : s.dropoutOf(link));
  const lower = link.volts!.min;
  const limit: LimitPlan = {
    value: lower,
    stated: 'lower bound of its output',
    margin: 'window',
    ...(link.origin && { origin: link.origin }),
    ...(unknown
      ? { grade: 'practice', asks: `how far above its output has the input of ${link.id} to be (its \`dropout\`)?` }
      : { grade: 'operating', isFunction: true, failing: (s) => failing(windows, s) }),
  };
  const left = (s: Solution): number => s.heldAt(link.from) - dropout(s);
  return {
    id: link.id,
    kind: 'regulator',
    title: `${link.title}, regulation`,
    path: link.path,
    at: link.from,
    quantity: 'voltage',
    direction: 'at-least',
    limits: [limit],
    read: left,
    isVoltage: true,
    steps: (s) => [
      {
        name: 'V_left',
        says: unknown ? 'its input, less the most that such a part needs' : 'its input, less what it needs for itself',
        formula: 'V_in - V_dropout',
        with: { V_in: [s.heldAt(link.from), 'V'], V_dropout: [dropout(s), 'V'] },
        gives: [left(s), 'V'],
        ...(link.origin && {
          sources: [
            `${link.id}: ${link.origin.document}${link.origin.where === undefined ? '' : `, ${link.origin.where}`}`,
          ],
        }),
      },
    ],
  };
}

/** Out of regulation, but inside every window: a note at the worst corner, a strain when a typical build is; else as the window. */
function failing(windows: readonly SupplyWindow[], s: Reading): Failing {
  const inside = ({ node, min = 0, max = Infinity }: SupplyWindow): boolean => {
    const volts = s.voltage(node);
    return volts >= min && volts <= max;
  };
  if (windows.length === 0) return 'strain';
  if (windows.every(inside)) return s.typical ? 'strain' : 'note';
  return s.typical ? 'breach' : 'strain';
}
