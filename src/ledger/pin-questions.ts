/** Pins, port groups, chip totals: sums of pin currents by direction. */
import type { PinAccountPlan } from '../project/project.js';
import type { Shares } from './bookings.js';
import { booksOf, pinShares } from './bookings.js';
import type { Corner } from './corner.js';
import { cornersOf } from './corner.js';
import type { Question } from './question.js';
import type { ModeSearch } from './moments.js';
import { heaviest } from './moments.js';
import type { Moment, Solution } from './solution.js';
import type { Candidate, Solver } from './solver.js';
import { sumSteps } from './working.js';

const MOST = cornersOf('draw-most', [], false);
const LEAST = cornersOf('draw-least', [], false);
const PEAK = cornersOf('draw-most', [], true);

export const pinQuestions = (solver: Solver): Question[] =>
  solver.circuitry.project.pinAccounts.map((plan) => question(solver, plan));

function question(solver: Solver, plan: PinAccountPlan): Question {
  const { circuitry, nobody } = solver;
  const sides = plan.direction === 'sink' ? (['sink'] as const) : plan.direction === 'source' ? (['source'] as const) : (['source', 'sink'] as const);
  const wanted = new Set(plan.pins);
  // The networks that pass through its pins, and the circuits that switch them.
  const networks = circuitry.networks.flatMap((n, k) =>
    [...n.on.plans, ...n.off.plans].some((p) => p.pin && wanted.has(p.pin.pin)) ? [k] : [],
  );
  const contributors = [...new Set(networks.flatMap((k) => circuitry.networks[k]!.circuits))];
  const focus = nobody.slice();
  for (const c of contributors) focus[c] = 1;

  const shares = (s: Solution): Shares => {
    const books = booksOf(s);
    const sum = new Map<string, number>();
    for (const pin of plan.pins)
      for (const side of sides)
        for (const [circuit, amps] of pinShares(books, pin, side)) sum.set(circuit, (sum.get(circuit) ?? 0) + amps);
    for (const own of plan.own) sum.set(own.circuit, s.current(own.part));
    return sum;
  };
  // The same sum without writing the books: read off the networks concerned alone.
  const read = (s: Solution): number => {
    let sum = plan.own.reduce((amps, own) => amps + s.current(own.part), 0);
    for (const k of networks) {
      const { fitted, currents } = s.network(k);
      fitted.plans.forEach((p, b) => {
        if (p.pin === undefined || !wanted.has(p.pin.pin)) return;
        const outward = p.pin.outward * currents[b]!;
        for (const side of sides)
          if (p.pin.level === (side === 'source' ? 'high' : 'low')) sum += Math.max(side === 'source' ? outward : -outward, 0);
      });
    }
    return sum;
  };
  const many = (moments: readonly Moment[], corners: readonly Corner[]): Candidate[] =>
    moments.flatMap((moment) => corners.map((corner) => ({ moment, corner, focus })));
  const candidates = (mode: ModeSearch): Candidate[] => {
    if (mode.on) {
      const moment = { mode: mode.name, on: mode.on };
      return many([moment], [...MOST, ...PEAK, ...LEAST]);
    }
    // Others off leave the rail high; the contributors that weigh most are on. A pin may also carry something with its
    // circuit off (a lamp on the board that is lit while an active-low input rests).
    const alone = heaviest(circuitry.project, mode, weigh(solver, mode, contributors, read, focus), new Set());
    const none = heaviest(circuitry.project, mode, nobody, new Set());
    return [...many(alone, [...MOST, ...PEAK]), ...many(none, MOST), ...many(alone, LEAST)];
  };
  return {
    ...plan,
    quantity: 'current',
    read,
    shares,
    candidates,
    steps: (s) => sumSteps(plan.title, shares(s), plan.pins.length === 1 ? plan.pins[0] : undefined, s),
  };
}

/** What each contributor alone brings to the sum, amperes. */
function weigh(
  solver: Solver,
  mode: ModeSearch,
  contributors: readonly number[],
  read: (s: Solution) => number,
  focus: Uint8Array,
): Float64Array {
  const { circuits } = solver.circuitry.project;
  const weights = new Float64Array(circuits.length);
  const corner = MOST[0]!;
  const rest = Uint8Array.from(circuits, (c) => (c.always ? 1 : 0));
  const idle = read(solver.estimate({ moment: { mode: mode.name, on: rest }, corner, focus }));
  for (const c of contributors) {
    const on = rest.slice();
    on[c] = 1;
    weights[c] = read(solver.estimate({ moment: { mode: mode.name, on }, corner, focus })) - idle;
  }
  return weights;
}
