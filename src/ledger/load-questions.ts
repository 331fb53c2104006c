/** The accounts that loads, drivers and clamps open for themselves. */
import type { AccountPlan, Recipe } from '../loads/plan.js';
import type { Shares } from './bookings.js';
import type { Circuitry } from './circuitry.js';
import type { Corner } from './corner.js';
import { cornersOf, wantsCrowd } from './corner.js';
import type { ModeSearch } from './moments.js';
import { heaviest } from './moments.js';
import type { Question } from './question.js';
import type { Moment, Solution } from './solution.js';
import type { Candidate, Solver } from './solver.js';

export function loadQuestions(solver: Solver): Question[] {
  const feeds = upstream(solver.circuitry);
  return solver.circuitry.project.accounts.map((plan) => question(solver, plan, feeds));
}

/** For each node of the supply tree the supplies and links that feed it. */
type Feeds = ReadonlyMap<string, ReadonlySet<string>>;

function upstream({ project }: Circuitry): Feeds {
  const feeds = new Map<string, Set<string>>();
  for (const node of project.nodes) feeds.set(node.id, new Set(node.volts ? [node.id] : []));
  for (const link of project.links) feeds.set(link.to, new Set([...(feeds.get(link.from) ?? []), link.id]));
  return feeds;
}

function question(solver: Solver, plan: AccountPlan, feeds: Feeds): Question {
  const { circuitry, nobody } = solver;
  const numbers = plan.circuits.map((id) => circuitry.circuitIndex.get(id)!);
  const focus = nobody.slice();
  for (const c of numbers) focus[c] = 1;
  const aparts = pullingApart(circuitry, numbers, feeds);
  const corners = new Map(plan.recipes.map((r) => [r, cornersOf(r, aparts, plan.peaks === true)]));

  const candidates = (mode: ModeSearch): Candidate[] =>
    plan.recipes.flatMap((recipe) => {
      const letGo = recipe.startsWith('let-go');
      if (mode.on) {
        if (!letGo && !numbers.some((c) => mode.on![c] === 1)) return [];
        const on = letGo ? without(mode.on, numbers) : mode.on;
        return corners.get(recipe)!.map((corner) => ({ moment: { mode: mode.name, on }, corner, focus }));
      }
      return searched(recipe, mode, letGo);
    });

  const searched = (recipe: Recipe, mode: ModeSearch, letGo: boolean): Candidate[] => {
    const moments = (crowd: boolean): readonly Moment[] => {
      const weights = new Float64Array(focus.length).fill(crowd ? 1 : -1);
      if (crowd) circuitry.project.circuits.forEach((_, k) => (weights[k] = heft(solver, k)));
      for (const c of numbers) weights[c] = letGo ? -1e6 : 1;
      const must = letGo ? [] : numbers.length === 1 ? numbers : [];
      return heaviest(circuitry.project, mode, weights, new Set(must));
    };
    const [few, many] = [moments(false), moments(true)];
    return corners
      .get(recipe)!
      .flatMap((corner: Corner) =>
        (wantsCrowd(corner) ? many : few).map((moment) => ({ moment, corner, focus })),
      );
  };

  const shares = (s: Solution): Shares => {
    const sum = new Map<string, number>();
    for (const { circuit, part } of plan.books ?? []) sum.set(circuit, (sum.get(circuit) ?? 0) + s.current(part));
    return sum;
  };
  return { ...plan, candidates, ...(plan.books && { shares }) };
}

const without = (on: Uint8Array, circuits: readonly number[]): Uint8Array => {
  const rest = on.slice();
  for (const c of circuits) rest[c] = 0;
  return rest;
};

/** How much a circuit weighs on its rails: the highest current of its branches, for choosing the crowd only. */
function heft(solver: Solver, circuit: number): number {
  const { networksOf, networks } = solver.circuitry;
  let most = 1e-9;
  for (const n of networksOf[circuit]!)
    for (const plan of networks[n]!.on.plans)
      for (const m of plan.members) {
        if (m.kind === 'current') most += m.amps.max;
        else if (m.kind === 'resistance' && m.load) most += 1 / m.ohms.min;
        else if (m.kind === 'junction') most += 0.01;
      }
  return most;
}

/** Supplies and regulators that feed one node the circuit touches and none of its other nodes. */
function pullingApart(circuitry: Circuitry, circuits: readonly number[], feeds: Feeds): ReadonlySet<string>[] {
  const touched = new Set<string>();
  for (const c of circuits)
    for (const n of circuitry.networksOf[c]!)
      for (const plan of [...circuitry.networks[n]!.on.plans, ...circuitry.networks[n]!.off.plans])
        for (const node of [plan.from, plan.to]) if (feeds.has(node)) touched.add(node);
  if (touched.size < 2) return [];
  const sets = [...touched].map((node) => {
    const others = [...touched].filter((t) => t !== node).flatMap((t) => [...feeds.get(t)!]);
    const own = [...feeds.get(node)!].filter((id) => !others.includes(id));
    return new Set(own);
  });
  return sets.filter((set) => set.size > 0);
}
