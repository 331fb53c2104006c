/** The supply tree: what flows through supplies, inlets, fuses, diodes, regulators and rails, and what that heats. */
import { linearLoss } from '../circuit/regulator.js';
import type { LimitPlan } from '../loads/plan.js';
import type { Link, TreeNode } from '../project/project.js';
import type { Shares } from './bookings.js';
import { booksOf, flowsOf } from './bookings.js';
import type { Corner, End, Lean } from './corner.js';
import type { ModeSearch } from './moments.js';
import { heaviest } from './moments.js';
import type { Question } from './question.js';
import type { Moment, Solution } from './solution.js';
import type { Candidate, Solver } from './solver.js';
import { heatSteps, sumSteps } from './working.js';

/** Everything leans one way, supplies and regulators' outputs at an end, at the coldest and the hottest ambient. */
const corners = (lean: Lean, sources: End, outputs: End): Corner[] =>
  (['cold', 'hot'] as const).map((ambient) => ({
    ambient,
    sources,
    outputs,
    losses: sources === 'high' ? 'low' : 'high',
    load: lean,
    control: lean,
    rest: lean,
  }));

/**
 * The corners of the tree. Currents rise with the supplies, but a switching regulator takes the more the lower its input is,
 * and a linear one is hottest with a high input and, by what hangs on it, a low or a high output.
 */
function cornerSets(regulated: boolean, switching: boolean) {
  const both = (lean: Lean): Corner[] => [
    ...corners(lean, 'high', 'high'),
    ...(regulated ? corners(lean, 'high', 'low') : []),
    ...(switching ? corners(lean, 'low', 'high') : []),
  ];
  const least = [
    ...corners('low', 'low', 'low'),
    ...(regulated ? corners('low', 'low', 'high') : []),
    ...(switching ? corners('low', 'high', 'low') : []),
  ];
  return {
    high: both('high'),
    peak: both('peak'),
    low: least,
    light: corners('low', 'high', 'high'),
    heavy: corners('high', 'low', 'low'),
  };
}

type CornerSets = ReturnType<typeof cornerSets>;

export function treeQuestions(solver: Solver): Question[] {
  const { project } = solver.circuitry;
  const hasPeaks = project.networks.some((n) =>
    n.on.some((b) => b.members.some((m) => m.kind === 'current' && m.peak !== undefined)),
  );
  const switching = project.links.some((l) => l.kind === 'switching-regulator');
  const sets = cornerSets(drawsBehindRegulator(solver), switching);
  const moments = momentsOf(solver, sets);
  const ask = ({ through, isVoltage, ...base }: Bare, peaks: boolean): Question => {
    const many = (mode: ModeSearch, asked: readonly Corner[]): Candidate[] =>
      moments(mode, base.id, through, base.quantity === 'temperature').flatMap((moment) =>
        asked.map((corner) => ({ moment, corner, focus: solver.nobody })),
      );
    // A part's input is highest with nothing on that need not be.
    const atRest = (mode: ModeSearch): Candidate[] =>
      mode.on
        ? many(mode, sets.light)
        : sets.light.map((corner) => ({
            moment: { mode: mode.name, on: solver.resting },
            corner,
            focus: solver.nobody,
          }));
    if (isVoltage)
      return { ...base, candidates: (mode) => [...atRest(mode), ...many(mode, sets.heavy)], probes: atRest };
    const most = peaks && hasPeaks ? [...sets.high, ...sets.peak] : sets.high;
    return {
      ...base,
      candidates: (mode) => many(mode, [...most, ...sets.low]),
      probes: (mode) => many(mode, most),
    };
  };
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

/**
 * The moments to try of a mode: the mode itself, or the allowed state in which most flows. What each circuit adds is read off
 * the state with all on: more load never lowers what a source gives.
 */
function momentsOf(solver: Solver, sets: CornerSets) {
  const { project } = solver.circuitry;
  const known = new Map<string, readonly Moment[]>();
  const all = Uint8Array.from(project.circuits, () => 1);
  const weights = (through: (s: Solution) => Shares): number[] => {
    const shares = through(
      solver.solve({ moment: { mode: 'all', on: all }, corner: sets.high[0]!, focus: solver.nobody }),
    );
    return project.circuits.map((c) => Math.max(shares.get(c.id) ?? 0, 0));
  };
  const search = (mode: ModeSearch, through: (s: Solution) => Shares): readonly Moment[] => {
    if (mode.on) return [{ mode: mode.name, on: mode.on }];
    const whole: Moment = { mode: mode.name, on: all };
    if ((mode.interlocks ?? []).length === 0) return [whole];
    return heaviest(project, mode, weights(through), new Set());
  };
  /** Also with everything off that does not draw through the part: what it draws elsewhere lowers the part's input. */
  const alone = (moments: readonly Moment[], through: (s: Solution) => Shares): readonly Moment[] => {
    const draws = weights(through).map((amps, c) => amps > 0 || solver.resting[c] === 1);
    return moments.flatMap((moment) => {
      const on = moment.on.map((state, c) => (draws[c] ? state : 0));
      return on.some((state, c) => state !== moment.on[c]) ? [moment, { ...moment, on }] : [moment];
    });
  };
  return (mode: ModeSearch, id: string, through: (s: Solution) => Shares, isHeat: boolean): readonly Moment[] => {
    const key = `${mode.name}|${id}|${isHeat}`;
    const find = (): readonly Moment[] => {
      const found = search(mode, through);
      return isHeat && !mode.on ? alone(found, through) : found;
    };
    const moments = known.get(key) ?? find();
    known.set(key, moments);
    return moments;
  };
}

/** A question without its corners; `through` is the current it is about, by circuit. */
type Bare = Omit<Question, 'candidates' | 'probes'> & {
  readonly through: (s: Solution) => Shares;
  /** A voltage is highest where little is drawn and lowest where much is. */
  readonly isVoltage?: true;
};

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
      read: (s) => flowsOf(s).get(node.id) ?? 0,
      shares,
      through: shares,
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
    through: shares,
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
    through: (s) => booksOf(s).links.get(link.id)!,
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
  isVoltage: true,
  through: (s) => booksOf(s).links.get(link.id)!,
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
