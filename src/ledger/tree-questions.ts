/** The supply tree: what flows through supplies, inlets, fuses, diodes, regulators and rails, and what that heats. */
import { valueAt } from './badness.js';
import type { Corner, Peaks } from './corner.js';
import { kept } from './kept.js';
import { linkQuestions } from './link-questions.js';
import type { Moment } from './moment.js';
import type { ModeSearch } from './moments.js';
import { betweenPulses } from './moments.js';
import { nodeQuestions } from './node-questions.js';
import type { Question, TreeQuestion } from './question.js';
import { railQuestions } from './rail-questions.js';
import { addedInto, slopeInto } from './reach.js';
import { regulationQuestions } from './regulation.js';
import { relieved, relieving } from './relieved.js';
import type { Solution } from './solution.js';
import type { Candidate, Solver } from './solver.js';
import type { TreeBench } from './tree-asking.js';
import { askingOf, treeBench } from './tree-asking.js';
import { furthest } from './tree-leans.js';
import { dutyOf } from './tree-moments.js';

export function treeQuestions(solver: Solver): Question[] {
  const { project } = solver.circuitry;
  const bench = treeBench(solver);
  const relief = relieving(solver, bench.sets.stalled);
  const isRelieved = bench.peaking && project.capacitances.length > 0;
  const ask = (q: TreeQuestion, peaks: Peaks): Question => {
    if (q.isVoltage) return voltageQuestion(bench, q, peaks);
    return q.heated ? heatQuestion(bench, q) : currentQuestion(bench, q, peaks);
  };
  const sees = (q: TreeQuestion, peaks: Peaks): Question =>
    ask(peaks === true && isRelieved ? relieved(q, relief) : q, peaks);
  const nodes = project.nodes.flatMap((node) => {
    // A derived supply is what its link gives.
    if (node.kind === 'joint' || project.links.some((l) => l.id === node.id)) return [];
    const outward = project.links.some((l) => l.to === node.id) || node.volts !== undefined;
    return outward ? nodeQuestions(node).map((q) => sees(q, node.kind === 'rail' ? 'rms' : true)) : [];
  });
  const links = project.links.flatMap((link) =>
    linkQuestions(solver, link).map((q) =>
      sees(q, q.quantity === 'current' && (q.kind === 'fuse' || q.kind === 'wire' ? 'rms' : true)),
    ),
  );
  const rails = [...railQuestions(solver, relief), ...regulationQuestions(solver)].map((q) => ask(q, true));
  return [...nodes, ...links, ...rails];
}

/** A voltage: highest where little is drawn, lowest where much is. */
function voltageQuestion(bench: TreeBench, question: TreeQuestion, peaks: Peaks): Question {
  const { solver, sets, peaking } = bench;
  const { project } = solver.circuitry;
  const { sinks, ...base } = question;
  const { cornersAt, many, worse } = askingOf(bench, question);
  // A part's input is highest with nothing on that need not be, but for what takes less when it is on.
  const atRest = kept((mode: ModeSearch): Candidate[] => {
    const moment: Moment = { mode: mode.name, on: mode.on ? betweenPulses(project, mode.on) : solver.resting };
    return worse(mode, cornersAt(moment, sets.light));
  });
  const sunk = peaks && peaking ? [...sets.heavy, ...sets.stalled] : sets.heavy;
  const low = kept((mode: ModeSearch): Candidate[] => worse(mode, many(mode, sunk)));
  return {
    ...base,
    candidates: (mode) => [...atRest(mode), ...low(mode)],
    probes: base.direction === 'at-least' || sinks ? low : atRest,
  };
}

/** The heat of a regulator, which weighs its current by the volts that it keeps. */
function heatQuestion(bench: TreeBench, question: TreeQuestion): Question {
  const { solver } = bench;
  const { at, warmedBy, ...base } = question;
  const { sets, many, worse } = askingOf(bench, question);
  const added = kept((s: Solution) => addedInto(solver, s, at));
  const direct = (s: Solution, circuit: number): number =>
    perKelvin(question, s) * warmedBy!(s, added(s)[circuit]! * dutyOf(solver, circuit));
  const hot = kept((mode: ModeSearch): Candidate[] => worse(mode, many(mode, sets.high), direct));
  return { ...base, candidates: (mode) => [...hot(mode), ...many(mode, sets.low)], probes: hot };
}

/** A current, or a power that goes with it: at its most and its least wherever the tree has to lean for that. */
function currentQuestion(bench: TreeBench, question: TreeQuestion, peaks: Peaks): Question {
  const { solver, starts, peaking, falling, reach } = bench;
  const { at, ...base } = question;
  const { cornersAt, many, worstOf, worstMoment } = askingOf(bench, question);
  const peak = peaks && peaking ? starts[peaks === 'rms' ? 'second' : 'peak'] : [];
  const rise = falling ? { falling: base.quantity === 'power' ? powerRise(base.read) : slopeInto } : {};
  // What a regulator's heat leaves it is least with its output low.
  const leaving = base.limits.find((l) => typeof l.value === 'function');
  const warm = leaving ? starts.warm : [];
  // What leaves it least may be other circuits than those by which most flows.
  const warmest = kept((mode: ModeSearch): readonly Moment[] => {
    const tried = mode.on ? [] : many(mode, warm);
    if (tried.length === 0) return [];
    const adds = (s: Solution, c: number): number => reach(at, undefined).adds()[c]! / valueAt(leaving!, s);
    const first = worstOf(tried);
    const moment = worstMoment(mode, first, adds);
    return moment === first.moment ? [] : [moment];
  });
  const far = (mode: ModeSearch, asked: readonly Corner[], most: boolean, signs = rise): Candidate[] =>
    [...many(mode, asked), ...warmest(mode).flatMap((moment) => cornersAt(moment, asked))].map((first) =>
      furthest(solver, first, { at, most, ...signs }),
    );
  // Each is found by solving its way outwards, so that it is kept for those who ask again.
  const probes = kept((mode: ModeSearch): readonly Candidate[] => [
    ...far(mode, [...starts.high, ...peak], true),
    ...far(mode, warm, true, {}),
  ]);
  return { ...base, candidates: (mode) => [...probes(mode), ...far(mode, starts.least, false)], probes };
}

/** How watts that are taken from a node rise with its voltage. */
const powerRise =
  (watts: Question['read']) =>
  (s: Solution, at: string): number =>
    watts(s)! / s.voltage(at) + s.voltage(at) * slopeInto(s, at);

/** How much worse a temperature is for a kelvin more of it. */
const perKelvin = ({ limits }: Pick<TreeQuestion, 'limits'>, s: Solution): number =>
  limits.length === 0 ? 1 : 1 / (Math.min(...limits.map((limit) => valueAt(limit, s))) - s.ambient);
