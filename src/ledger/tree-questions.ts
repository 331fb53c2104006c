/** The supply tree: what flows through supplies, inlets, fuses, diodes, regulators and rails, and what that heats. */
import { hasPeaks, isFalling } from '../loads/branch-plan.js';
import { rmsOf, rmsSteps } from '../loads/pulses.js';
import { placeOf } from '../project/places.js';
import type { Project } from '../project/project.js';
import type { Link, TreeNode } from '../project/tree-plan.js';
import { badnessIn, valueAt } from './badness.js';
import type { Shares } from './bookings.js';
import { booksOf, flowsOf } from './bookings.js';
import type { Corner, End, Lean, Peaks } from './corner.js';
import { opposite, pushing } from './corner.js';
import type { ModeSearch } from './moments.js';
import { betweenPulses, heaviest, turnedOver, keyOf } from './moments.js';
import type { Reach, Whole } from './reach.js';
import { addedInto, behind, reachOf, sagOf, slopeInto, wholeOf } from './reach.js';
import { kept } from './kept.js';
import { linkQuestions } from './link-questions.js';
import { rmsShares } from './phases.js';
import type { Question, TreeQuestion } from './question.js';
import type { Focus, Moment } from './moment.js';
import type { Solution } from './solution.js';
import type { Candidate, Solver } from './solver.js';
import { railQuestions } from './rail-questions.js';
import { relieved, relieving } from './relieved.js';
import { regulationQuestions } from './regulation.js';
import { furthest } from './tree-leans.js';
import { sumSteps } from './working.js';
import type { Direct } from './worst-moment.js';
import { worsened } from './worst-moment.js';

/** Everything leans one way, supplies and regulators' outputs at an end, at the coldest and the hottest ambient. */
const corners = (lean: Lean, sources: End, outputs: End, apart?: Corner['apart']): Corner[] =>
  (['cold', 'hot'] as const).map((ambient) => ({
    ambient,
    sources,
    outputs,
    losses: sources === 'high' ? 'low' : 'high',
    load: lean,
    control: lean,
    rest: lean,
    ...(apart && { apart }),
  }));

/**
 * The corners of the tree. Currents rise with the supplies, but a switching regulator takes the more the lower its input is:
 * with other loads on a high supply, it wants the losses before it high. A linear one is hottest with a high input and, by what hangs on it, a low or a high output.
 */
function cornerSets(regulated: boolean, losing: readonly Link[] | undefined) {
  const stands = (end: End): Corner['apart'] => new Map((losing ?? []).map((link) => [link.id, end]));
  const both = (lean: Lean): Corner[] => [
    ...corners(lean, 'high', 'high'),
    ...(regulated ? corners(lean, 'high', 'low') : []),
    ...(losing ? [...corners(lean, 'high', 'high', stands('low')), ...corners(lean, 'low', 'high')] : []),
  ];
  const least = [
    ...corners('low', 'low', 'low'),
    ...(regulated ? corners('low', 'low', 'high') : []),
    ...(losing ? [...corners('low', 'low', 'low', stands('high')), ...corners('low', 'high', 'low')] : []),
  ];
  return {
    high: both('high'),
    low: least,
    // What a regulator needs over its output rises with its current, and so with its own output.
    light: [...corners('low', 'high', 'high'), ...(regulated ? corners('low', 'high', 'low') : [])],
    heavy: [...corners('high', 'low', 'low'), ...(regulated ? corners('high', 'low', 'high') : [])],
    stalled: corners('peak', 'low', 'low'),
  };
}

type CornerSets = ReturnType<typeof cornerSets>;

/** Where the search for the most and the least of a current begins; where less volts may mean more of it, from either end. */
function startsOf(falling: boolean) {
  const from = (lean: Lean, sources: End): Corner[] => [
    ...corners(lean, sources, sources),
    ...(falling ? corners(lean, opposite(sources), sources) : []),
  ];
  return {
    high: from('high', 'high'),
    peak: from('peak', 'high'),
    second: from('second', 'high'),
    least: from('low', 'low'),
    warm: corners('high', 'high', 'low'),
  };
}

/** What hangs beside an account on the same losses leans the other way: it lets the rail be, or pulls it down. */
const opposed = (sets: CornerSets): CornerSets => {
  const turned = (corners: readonly Corner[]): Corner[] => corners.map(turnedRest);
  return {
    ...sets,
    high: turned(sets.high),
    low: turned(sets.low),
  };
};
const turnedRest = (c: Corner): Corner => ({ ...c, rest: c.rest === 'low' ? 'high' : 'low' });

/** A regulator behind another one is hottest with its own output low and the other one's high. */
const withOwnOutput = (sets: CornerSets, { id }: Link): CornerSets => ({
  ...sets,
  high: [...sets.high, ...corners('high', 'high', 'high', new Map([[id, 'low']]))],
  low: [...sets.low, ...corners('low', 'low', 'low', new Map([[id, 'high']]))],
});

/** Whether another regulator feeds this one. */
function isCascaded(links: readonly Link[], regulator: Link): boolean {
  const feed = links.find((l) => l.to === regulator.from);
  return feed !== undefined && (feed.volts !== undefined || isCascaded(links, feed));
}

export function treeQuestions(solver: Solver): Question[] {
  const { project } = solver.circuitry;
  const peaking = project.networks.some((n) => [...n.on, ...n.off].some((b) => b.members.some(hasPeaks)));
  const falling = fallingAt(project);
  const sets = cornerSets(
    drawsBehindRegulator(solver),
    falling.size > 0 ? lossesBefore(project.links, falling) : undefined,
  );
  // A switching regulator weighs the more the lower the supplies are; of what starts with a peak, another may weigh the most.
  const starts = startsOf(falling.size > 0);
  const telling = [
    sets.high[0]!,
    ...(falling.size > 0 ? [sets.high.at(-1)!] : []),
    ...(peaking ? [starts.peak[0]!] : []),
  ];
  const reaches = telling.map((corner) => ({ corner, reach: reachesOf(solver, corner) }));
  const moments = momentsOf(solver, reaches);
  const sinking = momentsOf(solver, [{ corner: sets.heavy[1]!, reach: reachesOf(solver, sets.heavy[1]!, sagOf) }]);
  const feeders = [...solver.circuitry.feeders];
  const ask = ({ at, heated, warmedBy, isVoltage, sinks, ...base }: TreeQuestion, peaks: Peaks): Question => {
    const place = placeOf(project, base.id);
    const { beside } = reaches[0]!.reach(at, heated);
    const focus = isVoltage || beside.length === 0 ? solver.nobody : solver.wholeBut(beside);
    const leaning = focus === solver.nobody ? sets : opposed(sets);
    const set = heated && isCascaded(project.links, heated) ? withOwnOutput(leaning, heated) : leaning;
    // What feeds a rail backwards takes from what flows into it, and raises it.
    const within = behind(project.links, at);
    const isFed =
      isVoltage || heated ? feeders.length > 0 : feeders.some((b) => within.has(b.to) && !within.has(b.from));
    const cornersAt = (moment: Moment, asked: readonly Corner[]): Candidate[] =>
      solver.corners(isFed ? asked.flatMap(pushing) : asked, place).map((corner) => ({ moment, corner, focus }));
    const many = (mode: ModeSearch, asked: readonly Corner[]): Candidate[] =>
      (isVoltage ? sinking : moments)(mode, at, heated, base.read, focus).flatMap((moment) => cornersAt(moment, asked));
    const size = (s: Solution): number | undefined => badnessIn(base, s);
    const badly = (c: Candidate): number => size(solver.solve(c)) ?? -Infinity;
    const worstOf = (tried: readonly Candidate[]): Candidate =>
      tried.reduce((worst, each) => (badly(each) > badly(worst) ? each : worst));
    /** Candidates, and those of their corners in the moments in which the worst of them is worse. */
    const worse = (mode: ModeSearch, plain: Candidate[], direct?: Direct): Candidate[] => {
      const found = kept((moment: Moment) =>
        kept((load: Corner['load']) => {
          const first = worstOf(plain.filter((c) => c.moment === moment && c.corner.load === load));
          return worsened(first, { solver, mode, size, ...(direct && { direct }) }).moment;
        }),
      );
      const others = plain.flatMap((c): Candidate[] => {
        const moment = found(c.moment)(c.corner.load);
        return moment === c.moment ? [] : [{ ...c, moment }];
      });
      return [...plain, ...others];
    };
    // A part's input is highest with nothing on that need not be, but for what takes less when it is on.
    const atRest = kept((mode: ModeSearch): Candidate[] => {
      const moment: Moment = { mode: mode.name, on: mode.on ? betweenPulses(project, mode.on) : solver.resting };
      return worse(mode, cornersAt(moment, sets.light));
    });
    if (isVoltage) {
      const sunk = peaks && peaking ? [...sets.heavy, ...sets.stalled] : sets.heavy;
      const low = kept((mode: ModeSearch): Candidate[] => worse(mode, many(mode, sunk)));
      const probes = base.direction === 'at-least' || sinks ? low : atRest;
      return { ...base, candidates: (mode) => [...atRest(mode), ...low(mode)], probes };
    }
    if (heated) {
      const added = kept((s: Solution) => addedInto(solver, s, at));
      const direct = (s: Solution, circuit: number): number =>
        perKelvin(base, s) * warmedBy!(s, added(s)[circuit]! * dutyOf(solver, circuit));
      const hot = kept((mode: ModeSearch): Candidate[] => worse(mode, many(mode, set.high), direct));
      return { ...base, candidates: (mode) => [...hot(mode), ...many(mode, set.low)], probes: hot };
    }
    const peak = peaks && peaking ? starts[peaks === 'rms' ? 'second' : 'peak'] : [];
    const rise = falling.size === 0 ? {} : { falling: base.quantity === 'power' ? powerRise(base.read) : slopeInto };
    // What a regulator's heat leaves it is least with its output low.
    const leaving = base.limits.find((l) => typeof l.value === 'function');
    const warm = leaving ? starts.warm : [];
    // What leaves it least may be other circuits than those by which most flows.
    const warmest = kept((mode: ModeSearch): readonly Moment[] => {
      const adds = (s: Solution, c: number): number => reaches[0]!.reach(at, heated).adds()[c]! / valueAt(leaving!, s);
      const tried = mode.on ? [] : many(mode, warm);
      if (tried.length === 0) return [];
      const first = worstOf(tried);
      const { moment } = worsened(first, { solver, mode, size, direct: adds });
      return moment === first.moment ? [] : [moment];
    });
    const far = (mode: ModeSearch, asked: readonly Corner[], most: boolean, signs = rise): Candidate[] =>
      [...many(mode, asked), ...warmest(mode).flatMap((moment) => cornersAt(moment, asked))].map((first) =>
        furthest(solver, first, { at, most, ...signs }),
      );
    // Each is found by solving its way outwards, so that it is kept for those who ask again.
    const found = new Map<ModeSearch, readonly Candidate[]>();
    const probes = (mode: ModeSearch): readonly Candidate[] => {
      const known = found.get(mode) ?? [...far(mode, [...starts.high, ...peak], true), ...far(mode, warm, true, {})];
      found.set(mode, known);
      return known;
    };
    return { ...base, candidates: (mode) => [...probes(mode), ...far(mode, starts.least, false)], probes };
  };
  const relief = relieving(solver, sets.stalled);
  const sees = (q: TreeQuestion, peaks: Peaks): Question =>
    ask(peaks === true && peaking && project.capacitances.length > 0 ? relieved(q, relief) : q, peaks);
  const nodes = project.nodes.flatMap((node) => {
    // A derived supply is what its link gives.
    if (node.kind === 'joint' || project.links.some((l) => l.id === node.id)) return [];
    const outward = project.links.some((l) => l.to === node.id) || node.volts !== undefined;
    return outward ? [...nodeQuestions(node).map((q) => sees(q, node.kind === 'rail' ? 'rms' : true))] : [];
  });
  const links = project.links.flatMap((link) =>
    linkQuestions(solver, link).map((q) =>
      sees(q, q.quantity === 'current' && (q.kind === 'fuse' || q.kind === 'wire' ? 'rms' : true)),
    ),
  );
  const rails = [...railQuestions(solver, relief), ...regulationQuestions(solver)].map((q) => ask(q, true));
  return [...nodes, ...links, ...rails];
}

/** How watts that are taken from a node rise with its voltage. */
const powerRise =
  (watts: Question['read']) =>
  (s: Solution, at: string): number =>
    watts(s)! / s.voltage(at) + s.voltage(at) * slopeInto(s, at);

type Reaches = (at: string, heated: Link | undefined) => Reach;

/** What hangs on each node that is asked about, read off the solution with all on where that is needed. */
function reachesOf(solver: Solver, corner: Corner, reach = reachOf): Reaches {
  const known = new Map<string, Reach>();
  const on = Uint8Array.from(solver.circuitry.project.circuits, () => 1);
  let solved: Whole | undefined;
  const whole = (): Whole =>
    (solved ??= wholeOf(solver.solve({ moment: { mode: 'all', on }, corner, focus: solver.nobody })));
  return (at, heated) => {
    const key = `${at} ${heated?.id ?? ''}`;
    const found = known.get(key) ?? reach(solver, whole, at, heated);
    known.set(key, found);
    return found;
  };
}

/** The moments to try of a mode: the mode itself, or the allowed states in which most flows in a telling corner. */
function momentsOf(solver: Solver, telling: readonly { readonly corner: Corner; readonly reach: Reaches }[]) {
  const { project } = solver.circuitry;
  const known = new Map<string, readonly Moment[]>();
  type Read = Question['read'];
  /** The state with those circuits turned over of which it is not sure what they do, where that makes it worse. */
  const turned = (
    mode: ModeSearch,
    moment: Moment,
    torn: readonly number[],
    read: Read,
    corner: Corner,
    focus: Focus,
  ): Moment => {
    const size = (m: Moment): number => read(solver.solve({ moment: m, corner, focus })) ?? -Infinity;
    return torn.reduce((best, c) => {
      const other = turnedOver(project, mode, best, c);
      return other && size(other) > size(best) ? other : best;
    }, moment);
  };
  const search = (
    mode: ModeSearch,
    at: string,
    heated: Link | undefined,
    read: Read,
    focus: Focus,
  ): readonly Moment[] => {
    if (mode.on) return [{ mode: mode.name, on: mode.on }];
    const found = telling.flatMap(({ corner, reach }) => {
      const { adds, torn } = reach(at, heated);
      const tried = focus === solver.nobody ? corner : turnedRest(corner);
      return weightings(solver, adds()).flatMap((weights) =>
        heaviest(project, mode, weights, new Set()).map((m) => turned(mode, m, torn(), read, tried, focus)),
      );
    });
    return [...new Map(found.map((m) => [m.on.join(), m])).values()];
  };
  return (mode: ModeSearch, at: string, heated: Link | undefined, read: Read, focus: Focus): readonly Moment[] => {
    const key = `${keyOf(mode)}|${at}|${heated?.id ?? ''}`;
    const moments = known.get(key) ?? search(mode, at, heated, read, focus);
    known.set(key, moments);
    return moments;
  };
}

/** What circuits add, and, where some pulse, what they add on average: heat asks for the one, peaks for the other. */
function weightings(solver: Solver, adds: readonly number[]): readonly (readonly number[])[] {
  if (solver.circuitry.pulsing.length === 0) return [adds];
  return [adds, adds.map((amps, circuit) => amps * dutyOf(solver, circuit))];
}

/** The most of a period that a circuit is on when it is. */
const dutyOf = ({ circuitry: { pulsing } }: Solver, circuit: number): number =>
  pulsing.find((p) => p.circuits.includes(circuit))?.duty.max ?? 1;

/** How much worse a temperature is for a kelvin more of it. */
const perKelvin = ({ limits }: Pick<TreeQuestion, 'limits'>, s: Solution): number =>
  limits.length === 0 ? 1 : 1 / (Math.min(...limits.map((limit) => valueAt(limit, s))) - s.ambient);

function nodeQuestions(node: TreeNode): TreeQuestion[] {
  const shares = (s: Solution): Shares => booksOf(s).nodes.get(node.id)!;
  const amps = (s: Solution): number => flowsOf(s).get(node.id) ?? 0;
  // A rail is copper and contacts, which heat slowly.
  const slow = node.kind === 'rail';
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
      read: (s) => (slow ? rmsOf(s, amps) : amps(s)),
      shares: slow ? rmsShares(shares) : shares,
      at: node.id,
      steps: (s) => [
        ...sumSteps(node.title, shares(s), undefined, s),
        ...(slow ? rmsSteps(s, 'I_rms', 'its root mean square over a period of the pulses', 'A', amps) : []),
      ],
    },
  ];
}

/** The nodes that something hangs on whose current rises as their voltage falls: a switching regulator, a constant power. */
function fallingAt({ links, networks }: Project): ReadonlySet<string> {
  return new Set([
    ...links.flatMap((l) => (l.kind === 'switching-regulator' ? [l.from] : [])),
    ...networks.flatMap((n) => [...n.on, ...n.off].filter(isFalling).map((b) => b.from)),
  ]);
}

/** The fuses, diodes and cables that these are fed over, as far as nothing else hangs on them. */
function lossesBefore(links: readonly Link[], nodes: ReadonlySet<string>): Link[] {
  const feeds = new Map(links.map((l) => [l.to, l]));
  const branches = (node: string): boolean => links.filter((l) => l.from === node).length > 1;
  const found = [...nodes].flatMap((node) => {
    const losses: Link[] = [];
    for (let before = feeds.get(node); before; before = feeds.get(before.from)) {
      if (before.volts !== undefined || (losses.length > 0 && branches(before.to))) break;
      if (before.kind !== 'wire') losses.push(before);
    }
    return losses;
  });
  return [...new Set(found)];
}

/** Whether anything draws from a node that a regulator feeds. */
function drawsBehindRegulator({ circuitry: { project } }: Solver): boolean {
  const behind = new Set<string>();
  for (const link of project.links) if (link.volts !== undefined || behind.has(link.from)) behind.add(link.to);
  return project.networks.some((n) => [...n.on, ...n.off].some((p) => behind.has(p.from) || behind.has(p.to)));
}
