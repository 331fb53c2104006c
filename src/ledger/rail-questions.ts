/** Questions at the ends of the supply tree: what supplies are asked for besides current, and where rails stand. */
import type { LimitPlan, Step } from '../loads/account-plan.js';
import { chargedFrom } from '../project/capacitances.js';
import type { Project } from '../project/project.js';
import type { Capacitance, DipPlan, TreeNode } from '../project/tree-plan.js';
import { flowsOf } from './bookings.js';
import { figureOf } from './builds.js';
import type { TreeQuestion } from './question.js';
import type { Relieving } from './relieved.js';
import { unseen } from './relieved.js';
import { heldVoltage, limitedDip } from './reservoirs.js';
import type { Solution } from './solution.js';
import type { Solver } from './solver.js';
import { standingSteps } from './working.js';

/** @param relief what capacitors give of peaks */
export function railQuestions({ circuitry: { project } }: Solver, relief: Relieving): TreeQuestion[] {
  const nodes = project.nodes.flatMap((node) => [
    ...(node.power ? [powerOf(node, node.power, relief)] : []),
    ...(node.chargeable ? chargeOf(project, node, node.chargeable) : []),
    ...standing(project, node),
    ...(node.battery?.empty ? [sagOf(node, node.battery.empty)] : []),
  ]);
  return [...nodes, ...project.dips.map(dipOf)];
}

/** Volts that a node stands lower at where its source is limited in current, below what its resistances say. */
function shortfall(s: Solution, node: string, before = s.before?.()): number {
  if (before === undefined) return 0;
  return Math.max(heldVoltage(s, before, node) - (before.voltage(node) - limitedDip(s, before, node)), 0);
}

/**
 * Where a battery at its typical voltage stands with what is drawn: one that falls below the voltage at which it counts as
 * empty cannot give its charge, however much of it is left.
 */
function sagOf(node: TreeNode, limit: LimitPlan): TreeQuestion {
  const inside = `${node.id}:inside`;
  const lost = (s: Solution): number => s.voltage(inside) - s.heldAt(node.id) + shortfall(s, node.id);
  const open = (s: Solution): number =>
    s.circuitry.project.nodes.find((n) => n.id === inside)?.volts?.typ ?? s.voltage(inside);
  return {
    ...asked(node),
    id: `${node.id}.end-voltage`,
    kind: 'battery',
    title: `battery ${node.id}, under load`,
    quantity: 'voltage',
    direction: 'at-least',
    limits: [limit],
    read: (s) => open(s) - lost(s),
    isVoltage: true,
    steps: (s) => [
      {
        name: 'V_loaded',
        says: 'its typical voltage, less what is lost inside at what it gives',
        formula: 'V_typ - V_lost',
        with: { V_typ: [open(s), 'V'], V_lost: [lost(s), 'V'] },
        gives: [open(s) - lost(s), 'V'],
      },
    ],
  };
}

/**
 * How far the supply of a load dips in peaks, from where it stood just before: what stalls has been running until then, and
 * what starts has not been on.
 */
function dipOf({ about, node, limit, path }: DipPlan): TreeQuestion {
  const from = (s: Solution, before: Solution): readonly [number, number] => [
    before.voltage(node),
    heldVoltage(s, before, node) - shortfall(s, node, before),
  ];
  /** Volts before and at the end, where they lie furthest apart. */
  const furthest = (s: Solution): readonly [number, number] => {
    const [before, off] = [s.before?.(), s.unstarted?.()];
    const running = before ? from(s, before) : ([s.voltage(node), s.voltage(node)] as const);
    const starting = off ? from(s, off) : running;
    return starting[0] - starting[1] > running[0] - running[1] ? starting : running;
  };
  const dip = (s: Solution): number => {
    const [stood, ends] = furthest(s);
    return stood - ends;
  };
  return {
    id: `${about}.input`,
    kind: 'input',
    title: `supply of ${about}, dip`,
    path,
    at: node,
    quantity: 'voltage',
    direction: 'at-most',
    limits: [limit],
    read: dip,
    isVoltage: true,
    sinks: true,
    steps: (s) => [
      {
        name: 'V_dip',
        says: 'where its supply stood just before, less where it stands at the end of the peaks',
        formula: 'V_before - V_end',
        with: { V_before: [furthest(s)[0], 'V'], V_end: [furthest(s)[1], 'V'] },
        gives: [dip(s), 'V'],
      },
    ],
  };
}

/** Where a rail, an inlet or a supply stands, against the windows of what is on it: at most with little on, at least in peaks. */
function standing(project: Project, node: TreeNode): TreeQuestion[] {
  const windows = project.windows.filter((w) => w.node === node.id);
  // A regulator that is a supply by itself has accounts of its input under its name.
  const regulator = project.links.some((l) => l.id === node.id && l.volts !== undefined);
  const voltage = {
    ...asked(node),
    id: regulator ? `${node.id}.output` : node.id,
    title: `${node.title}, voltage`,
    quantity: 'voltage' as const,
    read: (s: Solution): number => s.heldAt(node.id) - shortfall(s, node.id),
    isVoltage: true as const,
    steps: (s: Solution) => standingSteps(node.id, s, shortfall(s, node.id)),
  };
  const [low, high] = [windows.flatMap((w) => w.low), windows.flatMap((w) => w.high)];
  return [
    ...(low.length === 0 ? [] : [{ ...voltage, direction: 'at-least' as const, limits: low }]),
    ...(high.length === 0 ? [] : [{ ...voltage, direction: 'at-most' as const, limits: high }]),
  ];
}

/** Watts that a supply is asked for at its terminals. */
function powerOf(node: TreeNode, limit: LimitPlan, relief: Relieving): TreeQuestion {
  const amps = (s: Solution): number => (flowsOf(s).get(node.id) ?? 0) - unseen(relief(s, node.id));
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
