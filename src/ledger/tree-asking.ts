/** How a question of the supply tree is asked: in which corners of which moments, and where it is worst. */
import { hasPeaks } from '../loads/branch-plan.js';
import { placeOf } from '../project/places.js';
import { badnessIn } from './badness.js';
import type { Corner } from './corner.js';
import { pushing } from './corner.js';
import { kept } from './kept.js';
import type { Moment } from './moment.js';
import type { ModeSearch } from './moments.js';
import type { TreeQuestion } from './question.js';
import { behind, sagOf } from './reach.js';
import type { Solution } from './solution.js';
import type { Candidate, Solver } from './solver.js';
import type { CornerSets } from './tree-corners.js';
import {
  cornerSets,
  drawsBehindRegulator,
  fallingAt,
  isCascaded,
  lossesBefore,
  opposed,
  startsOf,
  withOwnOutput,
} from './tree-corners.js';
import type { MomentsAt, Reaches } from './tree-moments.js';
import { momentsOf, reachesOf } from './tree-moments.js';
import type { Direct } from './worst-moment.js';
import { worsened } from './worst-moment.js';

/** What all questions of a tree share. */
export interface TreeBench {
  readonly solver: Solver;
  readonly sets: CornerSets;
  readonly starts: ReturnType<typeof startsOf>;
  /** Something starts or stalls with a peak. */
  readonly peaking: boolean;
  /** Something draws more as its voltage falls. */
  readonly falling: boolean;
  /** What hangs on each node, in the corner that tells most. */
  readonly reach: Reaches;
  /** The moments in which most flows to a node, and those in which its voltage is lowest. */
  readonly flowing: MomentsAt;
  readonly sinking: MomentsAt;
}

export function treeBench(solver: Solver): TreeBench {
  const { project } = solver.circuitry;
  const peaking = project.networks.some((n) => [...n.on, ...n.off].some((b) => b.members.some(hasPeaks)));
  const nodes = fallingAt(project);
  const falling = nodes.size > 0;
  const sets = cornerSets(drawsBehindRegulator(solver), falling ? lossesBefore(project.links, nodes) : undefined);
  const starts = startsOf(falling);
  // A switching regulator weighs the more the lower the supplies are; of what starts with a peak, another may weigh the most.
  const telling = [sets.high[0]!, ...(falling ? [sets.high.at(-1)!] : []), ...(peaking ? [starts.peak[0]!] : [])].map(
    (corner) => ({ corner, reach: reachesOf(solver, corner) }),
  );
  const sagging = { corner: sets.heavy[1]!, reach: reachesOf(solver, sets.heavy[1]!, sagOf) };
  return {
    solver,
    sets,
    starts,
    peaking,
    falling,
    reach: telling[0]!.reach,
    flowing: momentsOf(solver, telling),
    sinking: momentsOf(solver, [sagging]),
  };
}

/** One question with its corners and moments. */
export interface Asking {
  readonly sets: CornerSets;
  /** A moment in some corners. */
  readonly cornersAt: (moment: Moment, corners: readonly Corner[]) => Candidate[];
  /** All moments of a mode that may be the worst, in some corners. */
  readonly many: (mode: ModeSearch, corners: readonly Corner[]) => Candidate[];
  readonly worstOf: (tried: readonly Candidate[]) => Candidate;
  /** The moment in which a candidate's corner is worst. */
  readonly worstMoment: (mode: ModeSearch, first: Candidate, direct?: Direct) => Moment;
  /** Candidates, and those of their corners in the moments in which the worst of them is worse. */
  readonly worse: (mode: ModeSearch, plain: Candidate[], direct?: Direct) => Candidate[];
}

export function askingOf(bench: TreeBench, question: TreeQuestion): Asking {
  const { solver, flowing, sinking } = bench;
  const { project, feeders: feeding } = solver.circuitry;
  const { at, heated, isVoltage } = question;
  const place = placeOf(project, question.id);
  const { beside } = bench.reach(at, heated);
  const focus = isVoltage || beside.length === 0 ? solver.nobody : solver.wholeBut(beside);
  const leaning = focus === solver.nobody ? bench.sets : opposed(bench.sets);
  const sets = heated && isCascaded(project.links, heated) ? withOwnOutput(leaning, heated) : leaning;
  // What feeds a rail backwards takes from what flows into it, and raises it.
  const feeders = [...feeding];
  const within = behind(project.links, at);
  const isFed = isVoltage || heated ? feeders.length > 0 : feeders.some((b) => within.has(b.to) && !within.has(b.from));
  const cornersAt = (moment: Moment, corners: readonly Corner[]): Candidate[] =>
    solver.corners(isFed ? corners.flatMap(pushing) : corners, place).map((corner) => ({ moment, corner, focus }));
  const momentsIn = isVoltage ? sinking : flowing;
  const size = (s: Solution): number | undefined => badnessIn(question, s);
  const badly = (c: Candidate): number => size(solver.solve(c)) ?? -Infinity;
  const worstOf = (tried: readonly Candidate[]): Candidate =>
    tried.reduce((worst, each) => (badly(each) > badly(worst) ? each : worst));
  const worstMoment = (mode: ModeSearch, first: Candidate, direct?: Direct): Moment =>
    worsened(first, { solver, mode, size, ...(direct && { direct }) }).moment;
  return {
    sets,
    cornersAt,
    many: (mode, corners) =>
      momentsIn(mode, at, heated, question.read, focus).flatMap((moment) => cornersAt(moment, corners)),
    worstOf,
    worstMoment,
    worse(mode, plain, direct) {
      const found = kept((moment: Moment) =>
        kept((load: Corner['load']) => {
          const alike = plain.filter((c) => c.moment === moment && c.corner.load === load);
          return worstMoment(mode, worstOf(alike), direct);
        }),
      );
      const others = plain.flatMap((c): Candidate[] => {
        const moment = found(c.moment)(c.corner.load);
        return moment === c.moment ? [] : [{ ...c, moment }];
      });
      return [...plain, ...others];
    },
  };
}
