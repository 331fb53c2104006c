/** Pins, port groups, chip totals: sums of pin currents by direction. */
import type { PinAccountPlan } from '../project/pin-plan.js';
import type { BranchPlan } from '../loads/branch-plan.js';
import { carriesAnything, hasPeaks } from '../loads/branch-plan.js';
import { meanOf } from '../loads/pulses.js';
import { placeOf } from '../project/places.js';
import { mayFail } from './badness.js';
import type { Shares } from './bookings.js';
import { along, portionOf } from './bookings.js';
import type { Corner } from './corner.js';
import { cornersOf, pushing } from './corner.js';
import type { Likeness } from './likeness.js';
import { heatOf, heatSteps } from './pin-heat.js';
import type { Question } from './question.js';
import type { ModeSearch } from './moments.js';
import { RUNAWAY, heaviest, keyOf, together } from './moments.js';
import type { Moment } from './moment.js';
import type { Solution } from './solution.js';
import type { Candidate, Solver } from './solver.js';
import { sumSteps } from './working.js';
import { worsened } from './worst-moment.js';

/** Nothing pulls apart in a sum of pin currents: a pin has one rail. */
const TOGETHER = { pins: [], control: [], both: [] };
const MOST = cornersOf('draw-most', TOGETHER, false);
const LEAST = cornersOf('draw-least', TOGETHER, false);
const PEAK = cornersOf('draw-most', TOGETHER, true);

export const pinQuestions = (solver: Solver, likeness: Likeness): Question[] =>
  solver.circuitry.project.pinAccounts.map((plan) => question(solver, plan, likeness));

function question(solver: Solver, plan: PinAccountPlan, likeness: Likeness): Question {
  const { circuitry, resting } = solver;
  const sides =
    plan.direction === 'sink'
      ? (['sink'] as const)
      : plan.direction === 'source'
        ? (['source'] as const)
        : (['source', 'sink'] as const);
  const wanted = new Set(plan.pins);
  const quantity = plan.heat ? 'power' : 'current';
  /** Whether anything can flow through one of its pins in a wanted direction. */
  const carries = (plans: readonly BranchPlan[]): boolean =>
    plans.some(
      (p) =>
        p.pin &&
        wanted.has(p.pin.pin) &&
        sides.some((side) => p.pin!.level === (side === 'source' ? 'high' : 'low')) &&
        carriesAnything(p, plans),
    );
  // The networks that it is the sum of, and the circuits that switch them.
  const networks = circuitry.networks.flatMap((n, k) => (carries(n.on.plans) || carries(n.off.plans) ? [k] : []));
  const contributors = [...new Set(networks.flatMap((k) => circuitry.networks[k]!.circuits))];
  const own = plan.own.map(({ part }) => circuitry.parts.get(part)!.network);
  const place = placeOf(circuitry.project, plan.id);
  const pushed = (corners: readonly Corner[]) => (circuitry.feeders.size > 0 ? corners.flatMap(pushing) : corners);
  const [highest, peak, lowest] = [MOST, PEAK, LEAST].map((corners) => solver.corners(pushed(corners), place)) as [
    readonly Corner[],
    readonly Corner[],
    readonly Corner[],
  ];
  const [telling] = pushed(MOST) as [Corner];
  // What a driver switches is not in question: it pulls on the rail as every other circuit does.
  const focus = solver.focus([], [...networks, ...own]);

  /** Calls back for every branch through one of its pins, with what flows in a wanted direction. */
  const through = (
    s: Solution,
    take: (
      amps: number,
      branch: number,
      skew: number,
      currents: readonly number[],
      plans: readonly BranchPlan[],
    ) => void,
  ): void => {
    for (const k of networks) {
      const { fitted, currents } = s.network(k);
      fitted.plans.forEach((p, b) => {
        if (p.pin === undefined || !wanted.has(p.pin.pin)) return;
        const skew = skewOf(p.pin.joined, wanted, s.corner);
        const outward = skew * p.pin.outward * currents[b]!;
        for (const side of sides)
          if (p.pin.level === (side === 'source' ? 'high' : 'low'))
            take(Math.max(side === 'source' ? outward : -outward, 0), b, skew, currents, fitted.plans);
      });
    }
  };
  const read = (s: Solution): number => {
    if (plan.heat) return meanOf(s, (at) => heatOf(at, plan, wanted, networks));
    let sum = plan.own.reduce((amps, { part }) => amps + s.current(part), 0);
    through(s, (amps) => (sum += amps));
    return sum;
  };
  const shares = (s: Solution): Shares => {
    const sum = new Map<string, number>();
    const add = (circuit: string, amps: number): void => void sum.set(circuit, (sum.get(circuit) ?? 0) + amps);
    for (const { circuit, part } of plan.own) add(circuit, s.current(part));
    through(s, (amps, branch, skew, currents, plans) => {
      const p = plans[branch]!;
      if (p.carries === undefined || amps === 0) return add(p.circuit, amps);
      const portion = skew * portionOf(p, branch, currents, plans);
      // What hangs on the pin's node shares what passes the pin.
      for (const b of p.carries) {
        const hanging = plans[b]!;
        add(hanging.circuit, portion * along(p, hanging) * currents[b]!);
      }
    });
    return sum;
  };
  const peaks = networks.some((k) => circuitry.networks[k]!.on.plans.some((p) => p.members.some(hasPeaks)));
  const many = (moments: readonly Moment[], corners: readonly Corner[]): Candidate[] =>
    moments.flatMap((moment) => corners.map((corner) => ({ moment, corner, focus })));
  // Something may flow in the wanted direction while its circuit is off: a board's own lamp on a pin that rests high.
  const idles = networks.some((k) => carries(circuitry.networks[k]!.off.plans));
  // Signals are both high and low in every mode: each stands where it brings the most.
  const signals = contributors.filter((c) =>
    together(circuitry.project)[c]!.every((k) => circuitry.project.circuits[k]!.signal),
  );
  const signalled = (moment: Moment): Moment =>
    signals.reduce((best, c) => {
      const on = best.on.slice();
      for (const k of together(circuitry.project)[c]!) on[k] = 1 - best.on[c]!;
      const other = { ...best, on };
      return most(other) > most(best) ? other : best;
    }, moment);
  const most = (moment: Moment): number => read(solver.solve({ moment, corner: telling, focus }));
  /** Whether it may fail with what it carries at rest and what all bring together. */
  const failsWith = (few: Moment): boolean => {
    const all = solver.solve({ moment: { ...few, on: Uint8Array.from(resting, () => 1) }, corner: telling, focus });
    return mayFail({ ...plan, quantity, read }, most(few) + read(all), all);
  };
  const momentsIn = (mode: ModeSearch): readonly Moment[] => {
    if (mode.on) {
      const { on } = mode;
      const concerned = idles || contributors.some((c) => on[c] === 1);
      return concerned ? [signalled({ mode: mode.name, on })] : [];
    }
    // Others off leave the rail high; those are on that bring more than they take from it.
    const few = heaviest(
      circuitry.project,
      mode,
      Float64Array.from(resting, (on) => 2 * on - 1),
      new Set(),
    );
    const first = { moment: few[0]!, corner: telling, focus };
    if (mode.name === RUNAWAY && !failsWith(few[0]!)) return few;
    return [signalled(worsened(first, { solver, mode, size: read }).moment)];
  };
  const known = new Map<string, readonly Moment[]>();
  const moments = (mode: ModeSearch): readonly Moment[] => {
    const found = known.get(keyOf(mode)) ?? momentsIn(mode);
    known.set(keyOf(mode), found);
    return found;
  };
  const probes = (mode: ModeSearch): Candidate[] => many(moments(mode), peaks ? [...highest, ...peak] : highest);
  const candidates = (mode: ModeSearch): Candidate[] => [...probes(mode), ...many(moments(mode), lowest)];
  const [only] = contributors;
  const twin =
    contributors.length === 1 && plan.pins.length === 1 && plan.own.length === 0
      ? `${likeness(only!)}|pin ${plan.heat ? 'heat' : plan.direction} ${plan.limits.map((l) => l.stated).join()}`
      : undefined;
  return {
    ...plan,
    ...(twin !== undefined && { twin, circuit: circuitry.project.circuits[only!]!.id }),
    quantity,
    read,
    ...(!plan.heat && { shares }),
    candidates,
    probes,
    steps: (s) =>
      plan.heat
        ? heatSteps(s, plan, wanted, networks)
        : sumSteps(plan.title, shares(s), plan.pins.length === 1 ? plan.pins[0] : undefined, s),
  };
}

/** Of pins joined for one load one may take so many times its even share (rule 10 of the format). */
const UNEVEN = 1.2;

/**
 * How much more or less than they carry together some of several joined pins may carry: at their most each takes a fifth more
 * than its share as far as there is that much, at their least the others do.
 *
 * @param joined all of them @param wanted the pins that are asked about
 */
function skewOf(joined: readonly string[] | undefined, wanted: ReadonlySet<string>, { load, sources }: Corner): number {
  if (joined === undefined || load === 'typ') return 1;
  const [all, some] = [joined.length, joined.filter((pin) => wanted.has(pin)).length];
  return sources === 'low' ? Math.max((all - UNEVEN * (all - some)) / some, 0) : Math.min(UNEVEN, all / some);
}
