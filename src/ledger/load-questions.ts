/** The accounts that loads, drivers and clamps open for themselves. */
import type { AccountPlan } from '../loads/account-plan.js';
import type { Around } from './around.js';
import { aroundOf } from './around.js';
import type { Shares } from './bookings.js';
import { kept } from './kept.js';
import type { Likeness } from './likeness.js';
import type { ModeSearch } from './moments.js';
import type { Question } from './question.js';
import type { Solution } from './solution.js';
import type { Candidate, Solver } from './solver.js';
import { turningPoints } from './turning.js';
import { worstMoments } from './worst-moments.js';

export function loadQuestions(solver: Solver, likeness: Likeness): Question[] {
  const around = aroundOf(solver);
  return solver.circuitry.project.accounts.map((plan) => ({
    ...question(solver, plan, around),
    ...twinOf(solver, plan, likeness),
  }));
}

/** The account of one circuit is like that of its likes: same place in the circuit, same limits. */
function twinOf({ circuitry }: Solver, plan: AccountPlan, likeness: Likeness): Pick<Question, 'twin' | 'circuit'> {
  const [circuit] = plan.circuits;
  if (circuit === undefined || plan.circuits.length > 1 || !plan.id.startsWith(circuit)) return {};
  const limits = plan.limits.map((l) => `${l.stated}${typeof l.value === 'number' ? l.value : ''}`).join();
  const part = plan.id.slice(circuit.length);
  return {
    circuit,
    twin: `${likeness(circuitry.circuitIndex.get(circuit)!)}|${part} ${plan.quantity} ${plan.direction} ${limits}`,
  };
}

function question(solver: Solver, plan: AccountPlan, around: Around): Question {
  const asked = around.recipes(plan).map((recipe) => around.asked(plan, recipe));
  const { turns } = plan;
  const worst = kept((mode: ModeSearch) => worstMoments(solver, plan, mode, asked[0]!(mode)));
  const candidates = (mode: ModeSearch): readonly Candidate[] => {
    const others = asked.slice(1).flatMap((ask) => ask(mode));
    const leaning = [...worst(mode), ...worstMoments(solver, plan, mode, others, worst(mode))];
    if (turns === undefined) return leaning;
    const [most, least] = plan.recipes.map((recipe) => around.asked(plan, recipe)(mode));
    return [...leaning, ...turningPoints(solver, turns, plan.read, most!, least!)];
  };

  const shares = (s: Solution): Shares => {
    const sum = new Map<string, number>();
    for (const { circuit, part, share } of plan.books ?? [])
      sum.set(circuit, (sum.get(circuit) ?? 0) + s.current(part) * (share?.(s) ?? 1));
    return sum;
  };
  return { ...plan, candidates, probes: worst, ...(plan.books && { shares }) };
}
