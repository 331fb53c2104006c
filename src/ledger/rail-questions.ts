/** Questions at the ends of the supply tree: what supplies are asked for besides current, and where rails stand. */
import type { LimitPlan, Step } from '../loads/plan.js';
import { chargedFrom } from '../project/capacitances.js';
import type { Capacitance, Project, TreeNode } from '../project/project.js';
import { flowsOf } from './bookings.js';
import { figureOf } from './builds.js';
import type { TreeQuestion } from './question.js';
import type { Solution } from './solution.js';
import type { Solver } from './solver.js';
import { standingSteps } from './working.js';

export function railQuestions({ circuitry: { project } }: Solver): TreeQuestion[] {
  return project.nodes.flatMap((node) => [
    ...(node.power ? [powerOf(node, node.power)] : []),
    ...(node.chargeable ? chargeOf(project, node, node.chargeable) : []),
    ...standing(project, node),
  ]);
}

/** Where a rail, an inlet or a supply stands, against the windows of what is on it: at most with little on, at least in peaks. */
function standing(project: Project, node: TreeNode): TreeQuestion[] {
  const windows = project.windows.filter((w) => w.node === node.id);
  const voltage = {
    ...asked(node),
    title: `${node.title}, voltage`,
    quantity: 'voltage' as const,
    read: (s: Solution): number => s.voltage(node.id),
    isVoltage: true as const,
    steps: (s: Solution) => standingSteps(node, s),
  };
  const [low, high] = [windows.flatMap((w) => w.low), windows.flatMap((w) => w.high)];
  return [
    ...(low.length === 0 ? [] : [{ ...voltage, direction: 'at-least' as const, limits: low }]),
    ...(high.length === 0 ? [] : [{ ...voltage, direction: 'at-most' as const, limits: high }]),
  ];
}

/** Watts that a supply is asked for at its terminals. */
function powerOf(node: TreeNode, limit: LimitPlan): TreeQuestion {
  const amps = (s: Solution): number => flowsOf(s).get(node.id) ?? 0;
  return {
    ...asked(node),
    title: `${node.title}, power`,
    quantity: 'power',
    direction: 'at-most',
    limits: [limit],
    read: (s) => s.voltage(node.id) * amps(s),
    steps: (s) => [
      {
        name: 'P',
        says: 'voltage at its terminals times the current out of it',
        formula: 'V * I',
        with: { V: [s.voltage(node.id), 'V'], I: [amps(s), 'A'] },
        gives: [s.voltage(node.id) * amps(s), 'W'],
      },
    ],
  };
}

/** Coulombs that a supply has to bring up when it comes on: all the capacitance on it, charged to its voltage. */
function chargeOf(project: Project, node: TreeNode, most: LimitPlan): TreeQuestion[] {
  const charged = chargedFrom(project, node.id);
  const highest = most.value;
  if (charged.length === 0 || typeof highest !== 'number') return [];
  const added = charged.filter((c) => !c.builtIn).reduce((sum, c) => sum + c.farads.max, 0);
  const farads = (s: Solution, c: Capacitance): number =>
    s.taken(c.farads, figureOf(c.about, 'capacitance'), s.corner.sources);
  const whole = (s: Solution): number => charged.reduce((sum, c) => sum + farads(s, c), 0);
  // What a board of the catalogue has by itself is its maker's affair.
  const failing = added <= highest ? 'note' : most.grade === 'operating' ? 'breach' : 'strain';
  const limit: LimitPlan = {
    ...most,
    value: (s) => highest * s.voltage(node.id),
    condition: `${most.stated} at its voltage`,
    failing: () => failing,
  };
  const steps = (s: Solution): Step[] => [
    {
      name: 'C',
      says: 'all the capacitance on it',
      formula: charged.map((_, k) => `C_${k + 1}`).join(' + '),
      with: Object.fromEntries(charged.map((c, k) => [`C_${k + 1}`, [farads(s, c), 'F'] as const])),
      gives: [whole(s), 'F'],
      sources: charged.map(
        (c) => `${c.about}: ${c.origin.document}${c.origin.where === undefined ? '' : `, ${c.origin.where}`}`,
      ),
    },
    {
      name: 'Q',
      says: 'charged to its voltage',
      formula: 'C * V',
      with: { C: [whole(s), 'F'], V: [s.voltage(node.id), 'V'] },
      gives: [whole(s) * s.voltage(node.id), 'C'],
    },
  ];
  return [
    {
      ...asked(node),
      title: `${node.title}, capacitance to charge`,
      quantity: 'charge',
      direction: 'at-most',
      limits: [limit],
      read: (s) => whole(s) * s.voltage(node.id),
      isVoltage: true,
      steps,
    },
  ];
}

const asked = (node: TreeNode) => ({
  id: node.id,
  kind: node.kind === 'joint' ? ('rail' as const) : node.kind,
  path: node.path,
  at: node.id,
});
