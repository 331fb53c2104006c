/** One account settled: its corners screened in the modes that it may be worst in, and the worst one told. */
import type { Account, Entry, LimitMet } from './account.js';
import { badness, holds, sharesLeft, valueAt } from './badness.js';
import type { Shares } from './bookings.js';
import type { ModeSearch } from './moments.js';
import { RUNAWAY } from './moments.js';
import type { Moment } from './moment.js';
import type { Solution } from './solution.js';
import type { Question } from './question.js';
import type { Candidate, Solver } from './solver.js';

/** A corner with what an account comes to there. */
interface Screened {
  readonly candidate: Candidate;
  readonly solution: Solution;
  readonly draw: number;
  /** Share left of each limit. */
  readonly left: readonly number[];
  /** How bad it is: what is missing of the tightest limit, or the draw where there is no limit. */
  readonly badness: number;
}

/** Modes whose worst corner comes this near to the worst of all are looked at in full. */
const NEAR = 1e-3;

/** An account with more than this share of its limit left by its probes does not fail at any corner. */
const NEARLY_FAILING = 0.02;

/** An account in the worst of some modes; undefined where none concerns it, or it does not fail and only failing ones are asked for. */
export function settleAccount(
  bench: Solver,
  question: Question,
  modes: readonly ModeSearch[],
  onlyFailing: boolean,
): Account | undefined {
  if (onlyFailing && question.limits.length === 0) return undefined;
  const tried = (candidates: readonly Candidate[]): Screened[] => screen(bench, question, candidates);
  /** Where sources are joined by diodes, with each of them in turn. */
  const fed = (candidates: readonly Candidate[], mode: ModeSearch): readonly Candidate[] =>
    bench.fed(candidates, mode.name === RUNAWAY);
  // The corner that is worst in the first mode is the one to compare the others by.
  let telling: number | undefined;
  const probed = modes.flatMap((mode) => {
    const probes = fed(question.probes(mode), mode);
    if (probes.length === 0) return [];
    const screened = tried(telling !== undefined && telling < probes.length ? [probes[telling]!] : probes);
    if (screened.length === probes.length) telling ??= screened.indexOf(pick(screened, (each) => each.badness));
    return [{ mode, badness: badnessOf(screened) }];
  });
  const [concerned] = probed;
  if (concerned === undefined) return undefined;
  const top = Math.max(...probed.map((p) => p.badness));
  if (top === -Infinity) return onlyFailing ? undefined : unknownAccount(question, concerned.mode);
  if (onlyFailing && top < -NEARLY_FAILING) return undefined;
  let worst: { mode: ModeSearch; screened: Screened[]; badness: number } | undefined;
  let looked: number | undefined;
  for (const { mode, badness: about } of probed) {
    if (about < top - NEAR * Math.abs(top)) continue;
    // The first of those that come to the same stands for them all.
    if (worst !== undefined && Math.abs(about - looked!) <= 1e-12 * Math.abs(about)) continue;
    looked = about;
    const screened = tried(fed(question.candidates(mode), mode));
    const found = badnessOf(screened);
    if (worst === undefined || found > worst.badness + 1e-9 * Math.abs(worst.badness))
      worst = { mode, screened, badness: found };
  }
  return account(bench, question, worst!.mode, worst!.screened);
}

const badnessOf = (screened: readonly Screened[]): number =>
  screened.reduce((most, each) => Math.max(most, each.badness), -Infinity);

/** What an account comes to at each of some corners, as far as a figure for it is known. */
function screen(bench: Solver, question: Question, candidates: readonly Candidate[]): Screened[] {
  const screened: Screened[] = [];
  for (const candidate of candidates) {
    const solution = bench.solve(candidate);
    const draw = question.read(solution);
    if (draw === undefined) continue;
    const left = sharesLeft(question, draw, solution);
    screened.push({ candidate, solution, draw, left, badness: badness(draw, left) });
  }
  return screened;
}

/** The first of those with the highest score. */
function pick<T>(items: readonly T[], score: (item: T) => number): T {
  let best = items[0]!;
  let highest = score(best);
  for (let k = 1; k < items.length; k++) {
    const next = score(items[k]!);
    if (!(next > highest)) continue;
    best = items[k]!;
    highest = next;
  }
  return best;
}

function account(bench: Solver, q: Question, mode: ModeSearch, screened: readonly Screened[]): Account {
  const most = pick(screened, (s) => s.draw);
  const least = pick(screened, (s) => -s.draw);
  const worst = q.limits.length === 0 ? undefined : pick(screened, (s) => s.badness);
  const { moment } = (worst ?? most).candidate;
  const { corner, focus } = (worst ?? screened[0]!).candidate;
  const typical = bench.solve({ moment, corner: bench.typical(corner.place), focus });
  const usual = q.read(typical)!;
  const limits = q.limits.flatMap((limit, k): LimitMet[] => {
    if (!holds(limit, mode.name)) return [];
    const { solution, draw, left } = pick(screened, (s) => -s.left[k]!);
    const at = { value: valueAt(limit, solution), draw, ambient: solution.ambient, left: left[k]! };
    const failing = limit.failing && { worst: limit.failing(solution), typical: limit.failing(typical) };
    const usually = { value: valueAt(limit, typical), draw: usual };
    return [{ limit, ...at, typical: usually, solution, ...(failing && { failing }) }];
  });
  const told = limits.length === 0 ? most.solution : pick(limits, (l) => -l.left).solution;
  const solutions = { least: least.solution, most: most.solution, typical };
  return {
    ...shown(q, mode.name),
    moment: namesOn(bench, moment),
    bound: moment.bound === true,
    draw: { min: least.draw, typ: Math.min(Math.max(usual, least.draw), most.draw), max: most.draw },
    limits,
    entries: q.shares ? entriesOf(q.shares(least.solution), q.shares(typical), q.shares(most.solution)) : [],
    steps: () => q.steps(told),
    sampling: () => ({
      moment,
      peak: most.solution.peak,
      read: q.read,
      ...(corner.place !== undefined && { place: corner.place }),
    }),
    solutions: () => solutions,
  };
}

/** The account of a circuit that is like another: the same figures under its own names; its own sums when asked for them. */
export function twinAccount(
  known: { readonly question: Question; readonly account: Account },
  q: Question,
  settle: () => Account | undefined,
): Account {
  const [theirs, ours] = [known.question.circuit, q.circuit];
  const renamed = (circuit: string): string => (circuit === theirs ? ours! : circuit === ours ? theirs! : circuit);
  let own: Account | undefined;
  const itself = (): Account => (own ??= settle() ?? known.account);
  return {
    ...known.account,
    ...shown(q, known.account.mode),
    moment: known.account.moment.map(renamed),
    // What reads a solution reads that of the other; where its figure stands in the file is its own.
    limits: known.account.limits.map((met) => {
      const { value, failing } = met.limit;
      const own = q.limits[known.question.limits.indexOf(met.limit)]!;
      return { ...met, limit: { ...own, value, ...(failing && { failing }) } };
    }),
    entries: known.account.entries.map((e) => ({ ...e, circuit: renamed(e.circuit) })),
    steps: () => itself().steps(),
    sampling: () => itself().sampling(),
    solutions: () => itself().solutions(),
  };
}

const shown = (q: Question, mode: string) => ({
  id: q.id,
  kind: q.kind,
  title: q.title,
  quantity: q.quantity,
  direction: q.direction,
  path: q.path,
  mode,
  ...(q.missing && { missing: q.missing }),
});

function unknownAccount(q: Question, mode: ModeSearch): Account {
  const shape = {
    moment: [],
    bound: false,
    limits: [],
    entries: [],
    steps: () => [],
    sampling: () => undefined,
    solutions: () => ({}),
  };
  return { ...shown(q, mode.name), ...shape };
}

const names = new WeakMap<Uint8Array, readonly string[]>();

/** The switched circuits of a state that are on; a state is shared by many accounts. */
function namesOn(bench: Solver, { on }: Moment): readonly string[] {
  let known = names.get(on);
  if (known === undefined) {
    known = bench.circuitry.project.circuits.flatMap((c, k) => (on[k] === 1 && !c.always ? [c.id] : []));
    names.set(on, known);
  }
  return known;
}

function entriesOf(least: Shares, typical: Shares, most: Shares): Entry[] {
  return [...new Set([...most.keys(), ...typical.keys(), ...least.keys()])]
    .map((circuit) => ({
      circuit,
      min: least.get(circuit) ?? 0,
      typ: typical.get(circuit) ?? 0,
      max: most.get(circuit) ?? 0,
    }))
    .sort((a, b) => b.max - a.max || (a.circuit < b.circuit ? -1 : 1));
}
