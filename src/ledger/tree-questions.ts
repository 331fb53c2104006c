/** The supply tree: what flows through supplies, inlets, fuses, diodes, regulators and rails, and what that heats. */
import { linearLoss } from '../circuit/regulator.js';
import type { LimitPlan } from '../loads/plan.js';
import type { Link, TreeNode } from '../project/project.js';
import type { Shares } from './bookings.js';
import { booksOf, total } from './bookings.js';
import type { Corner, End, Lean } from './corner.js';
import type { ModeSearch } from './moments.js';
import { heaviest } from './moments.js';
import type { Question } from './question.js';
import type { Solution } from './solution.js';
import type { Candidate, Solver } from './solver.js';
import { heatSteps, sumSteps } from './working.js';

/** Everything leans one way; supplies and regulator outputs are tried at both ends, as is the ambient. */
const corners = (lean: Lean, ends: readonly End[]): Corner[] =>
  (['low', 'high'] as const).flatMap((sources) =>
    ends.flatMap((outputs) =>
      (['cold', 'hot'] as const).map((ambient) => ({
        ambient,
        sources,
        outputs,
        losses: sources === 'high' ? ('low' as const) : ('high' as const),
        load: lean,
        control: lean,
        rest: lean,
      })),
    ),
  );

const BOTH: readonly End[] = ['low', 'high'];
const SETS = {
  /** Nothing hangs behind a regulator: where its output stands makes no difference. */
  plain: { low: corners('low', ['high']), high: corners('high', ['high']), peak: corners('peak', ['high']) },
  regulated: { low: corners('low', BOTH), high: corners('high', BOTH), peak: corners('peak', BOTH) },
};

export function treeQuestions(solver: Solver): Question[] {
  const { project } = solver.circuitry;
  const hasPeaks = project.networks.some((n) =>
    n.on.some((b) => b.members.some((m) => m.kind === 'current' && m.peak !== undefined)),
  );
  const regulated = drawsBehindRegulator(solver);
  const ask = (base: Omit<Question, 'candidates'>, peaks: boolean): Question => ({
    ...base,
    candidates: (mode) => candidatesOf(solver, mode, base.read, peaks && hasPeaks, regulated),
  });
  const nodes = project.nodes.flatMap((node) => {
    if (node.kind === 'joint') return [];
    const outward = project.links.some((l) => l.to === node.id) || node.volts !== undefined;
    return outward ? [...nodeQuestions(node).map((q) => ask(q, node.kind !== 'rail'))] : [];
  });
  const links = project.links.flatMap((link) =>
    linkQuestions(solver, link).map((q) => ask(q, q.kind !== 'fuse' && q.quantity === 'current')),
  );
  return [...nodes, ...links];
}

function candidatesOf(
  solver: Solver,
  mode: ModeSearch,
  read: Question['read'],
  peaks: boolean,
  regulated: boolean,
): Candidate[] {
  const { low, high, peak } = SETS[regulated ? 'regulated' : 'plain'];
  const { circuitry, nobody } = solver;
  const many = (on: Uint8Array, bound?: true): Candidate[] =>
    [...low, ...high, ...(peaks ? peak : [])].map((corner) => ({
      moment: { mode: mode.name, on, ...(bound && { bound }) },
      corner,
      focus: nobody,
    }));
  if (mode.on) return many(mode.on);
  // What each circuit alone adds to the sum; more load never lowers what a source gives.
  const { circuits } = circuitry.project;
  const rest = Uint8Array.from(circuits, (c) => (c.always ? 1 : 0));
  const alone = (on: Uint8Array): number =>
    read(solver.solve({ moment: { mode: mode.name, on }, corner: high[high.length - 1]!, focus: nobody })) ?? 0;
  if ((mode.interlocks ?? []).length === 0) return many(rest.map(() => 1));
  const idle = alone(rest);
  const weights = Float64Array.from(circuits, (_, k) => {
    const on = rest.slice();
    on[k] = 1;
    return Math.max(alone(on) - idle, 0);
  });
  return heaviest(circuitry.project, mode, weights, new Set()).flatMap((m) => many(m.on, m.bound));
}

type Bare = Omit<Question, 'candidates'>;

function nodeQuestions(node: TreeNode): Bare[] {
  const shares = (s: Solution): Shares => booksOf(s).nodes.get(node.id)!;
  return [
    {
      id: node.id,
      kind: node.kind === 'joint' ? 'rail' : node.kind,
      title: node.title,
      quantity: 'current',
      direction: 'at-most',
      path: node.path,
      limits: node.limits,
      ...(node.missing && { missing: node.missing }),
      read: (s) => total(shares(s)),
      shares,
      steps: (s) => sumSteps(node.title, shares(s), undefined, s),
    },
  ];
}

function linkQuestions(solver: Solver, link: Link): Bare[] {
  if (link.kind === 'wire' || link.inner) return [];
  const number = solver.circuitry.links.findIndex((l) => l.link === link);
  const shares = (s: Solution): Shares => booksOf(s).links.get(link.id)!;
  const kind = link.kind === 'fuse' ? 'fuse' : link.kind === 'diode' ? 'series' : 'regulator';
  const current: Bare = {
    id: link.id,
    kind,
    title: link.title,
    quantity: 'current',
    direction: 'at-most',
    path: link.path,
    limits: link.limits,
    ...(link.missing && { missing: link.missing }),
    read: (s) => s.linkCurrents[number]!,
    shares,
    steps: (s) => sumSteps(link.title, shares(s), undefined, s),
  };
  return [
    current,
    ...(link.heat ? [heat(link, number, link.heat.limit)] : []),
    ...(link.input ? [highestInput(link, link.input)] : []),
  ];
}

/** Junction temperature of a regulator: ambient plus thermal resistance times what it loses. */
function heat(link: Link, number: number, limit: LimitPlan): Bare {
  const ends = link.heat!.thermal;
  const thermal = (s: Solution): number => (s.typical ? ends.typ : s.corner.rest === 'low' ? ends.min : ends.max);
  const loss = (s: Solution): number =>
    linearLoss(s.voltage(link.from), s.voltage(link.to), s.linkCurrents[number]!, s.ownCurrent(link));
  return {
    id: link.id,
    kind: 'regulator',
    title: `${link.title}, junction`,
    quantity: 'temperature',
    direction: 'at-most',
    path: link.path,
    limits: [limit],
    read: (s) => s.ambient + thermal(s) * loss(s),
    steps: (s) => heatSteps(link, thermal(s), s, number),
  };
}

/** A regulator's input voltage against the highest it bears. */
const highestInput = (link: Link, limit: LimitPlan): Bare => ({
  id: link.id,
  kind: 'regulator',
  title: `${link.title}, input`,
  quantity: 'voltage',
  direction: 'at-most',
  path: link.path,
  limits: [limit],
  read: (s) => s.voltage(link.from),
  steps: (s) => [
    {
      name: 'V_in',
      says: 'voltage at its input',
      formula: 'V',
      with: { V: [s.voltage(link.from), 'V'] },
      gives: [s.voltage(link.from), 'V'],
    },
  ],
});

/** Whether anything draws from a node that a regulator feeds. */
function drawsBehindRegulator({ circuitry: { project } }: Solver): boolean {
  const behind = new Set<string>();
  for (const link of project.links) if (link.volts !== undefined || behind.has(link.from)) behind.add(link.to);
  return project.networks.some((n) => [...n.on, ...n.off].some((p) => behind.has(p.from) || behind.has(p.to)));
}
