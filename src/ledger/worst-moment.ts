/**
 * The worst moment of an account in a mode that is searched: which circuits make it worse when they are on, and which when
 * they are off. That is told by what they do to the rails and, where they have a part in the account, to it: to first order,
 * about a state that is solved. The states so found are solved and asked again, until none is worse.
 */
import type { Moment } from './moment.js';
import type { ModeSearch } from './moments.js';
import { heaviest, together } from './moments.js';
import type { Sagging } from './sagging.js';
import { saggingOf } from './sagging.js';
import type { Solution } from './solution.js';
import type { Candidate, Solver } from './solver.js';

/** States that are found worse are asked again; one or two times settle it. */
const MOST_ROUNDS = 4;
/** Volts by which a rail is moved to see what an account answers. */
const STEP = 1e-3;
/** Share of what an account comes to that a circuit has to change for its state to matter. */
const NOTHING = 1e-7;

/** How bad a solution is; the larger, the worse. */
export type Size = (s: Solution) => number | undefined;

/** What each circuit that is switched on adds to a solution's size by itself. */
export type Direct = (s: Solution, circuit: number) => number;

/** What is looked for. */
interface Search {
  readonly solver: Solver;
  readonly mode: ModeSearch;
  readonly size: Size;
  /** Circuits that stay as they are. */
  readonly held?: ReadonlySet<number>;
  /** Where it is known what circuits add by themselves. */
  readonly direct?: Direct;
}

/** So much more than anything that is asked a held circuit weighs. */
const OUTWEIGHS = 1e9;

const NONE: ReadonlySet<number> = new Set();

/** The candidate with its corner in the moment in which it is worst, found from the moment that it has. */
export function worsened(first: Candidate, search: Search): Candidate {
  const { solver, size, mode } = search;
  if (mode.on !== undefined) return first;
  const start = size(solver.solve(first));
  if (start === undefined) return first;
  let [worst, most] = [first, start];
  const tried = new Set([first.moment.on.join('')]);
  for (let round = 0; round < MOST_ROUNDS; round++) {
    const about = [solver.under(worst), ...(round === 0 ? [crowded(solver, first)] : [])].map(saggingOf);
    let next: Candidate | undefined;
    for (const moment of proposed(worst, most, search, about)) {
      const key = moment.on.join('');
      if (tried.has(key)) continue;
      tried.add(key);
      const candidate = { ...worst, moment };
      const found = size(solver.solve(candidate));
      if (found === undefined || found <= most + NOTHING * Math.abs(most)) continue;
      [next, most] = [candidate, found];
    }
    if (next === undefined) break;
    worst = next;
  }
  return worst;
}

const crowds = new WeakMap<Solver, Moment>();

/** The tree with all circuits on: regulators that give way only then do so. */
function crowded(solver: Solver, { corner }: Candidate): Solution {
  const moment = crowds.get(solver) ?? { mode: 'all', on: Uint8Array.from(solver.resting, () => 1) };
  crowds.set(solver, moment);
  return solver.under({ moment, corner, focus: solver.nobody });
}

/** The states that look worse than a candidate's, whose size is given. @param about where the tree's answers are taken */
function proposed(
  candidate: Candidate,
  here: number,
  { solver, mode, size, held = NONE, direct: known }: Search,
  about: readonly Sagging[],
): readonly Moment[] {
  const { project, networksOf } = solver.circuitry;
  const { moment, focus } = candidate;
  const s = solver.solve(candidate);
  const least = NOTHING * Math.abs(here);
  const slopes = slopesOf(s, here, size, about);
  const sets = together(project);
  const free = sets.flatMap((set, c) =>
    set[0] === c && !set.some((k) => project.circuits[k]!.always || held.has(k)) ? [c] : [],
  );
  const direct = free.map((c) =>
    known
      ? known(s, c)
      : sets[c]!.some((k) => networksOf[k]!.some((n) => focus.has[n] === 1))
        ? turning(s, sets[c]!, here, size)
        : 0,
  );
  const must = new Set([...held].filter((c) => moment.on[c] === 1));
  const mustNot = [...held].filter((c) => moment.on[c] === 0);
  return about.flatMap(({ by }) => {
    const weights = new Float64Array(sets.length);
    let isBetter = false;
    free.forEach((c, k) => {
      let more = direct[k]!;
      for (const { node, volts } of by[c]!) more += slopes[node]! * volts;
      const isOn = moment.on[c] === 1;
      // What changes nothing stays as it is, so that accounts share their states.
      if (Math.abs(more) <= least) more = isOn ? least : -least;
      weights[c] = more;
      isBetter ||= more > 0 !== isOn;
    });
    if (!isBetter) return [];
    for (const c of mustNot) weights[c] = -OUTWEIGHS;
    return heaviest(project, mode, weights, must).filter(({ on }) => mustNot.every((c) => on[c] === 0));
  });
}

/** How the size of a solution rises with the voltage of each node of the tree that a circuit can move. */
function slopesOf(s: Solution, here: number, size: Size, about: readonly Sagging[]): readonly number[] {
  const slopes: number[] = [];
  for (const { nodes } of about)
    for (const node of nodes) {
      if (slopes[node] !== undefined) continue;
      const volts = s.volts.slice();
      volts[node]! -= STEP;
      slopes[node] = (here - (size(s.disturbed(volts)) ?? here)) / STEP;
    }
  return slopes;
}

/** What switching circuits on that have a part in the account adds to it by themselves. */
function turning(s: Solution, set: readonly number[], here: number, size: Size): number {
  const on = s.moment.on.slice();
  const isOn = on[set[0]!] === 1;
  for (const k of set) on[k] = isOn ? 0 : 1;
  const turned = size(s.disturbed(s.volts, { ...s.moment, on })) ?? here;
  return isOn ? here - turned : turned - here;
}
