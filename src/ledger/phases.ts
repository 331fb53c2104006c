/**
 * A period of what pulses. All pulses begin together, which is the worst for a root mean square, as far as what is on together
 * does not pull its source down by a third: then one after another ends, the shortest first. Between two ends nothing changes, so that each of these phases is a solution of its own, with those
 * circuits off whose pulse is over.
 */
import type { Interval } from '../quantity/interval.js';
import type { Project } from '../project/project.js';
import type { Shares } from './bookings.js';
import { total } from './bookings.js';
import { figureOf, within } from './builds.js';
import { together } from './moments.js';
import type { Solution } from './solution.js';

/** Circuits that one pin pulses. */
export interface Pulsing {
  readonly circuits: readonly number[];
  /** Share of a period in which they are on. */
  readonly duty: Interval;
  /** The circuit whose pulses these are, by name. */
  readonly id: string;
}

/** A phase of a solution that is solved itself. */
export interface SolvedPhase {
  readonly share: number;
  readonly at: Solution;
}

/** What pulses in a project fast enough for its mean to count. */
export function pulsingIn(project: Project, numbers: ReadonlyMap<string, number>): readonly Pulsing[] {
  // A relay board’s relays are taken as on throughout: they follow, or nobody knows what they do.
  const pulsing = project.circuits.filter(
    ({ pulses, type }) => pulses !== undefined && pulses.slow !== true && type !== 'relay-board',
  );
  if (pulsing.length === 0) return [];
  const sets = together(project);
  return pulsing.map(({ id, pulses }) => ({ id, duty: pulses!.duty, circuits: sets[numbers.get(id)!]! }));
}

/** The phases of a solution: itself alone where nothing that is on pulses. */
export function phasesOf(s: Solution): readonly SolvedPhase[] {
  const { during, moment } = s;
  const ends = s.circuitry.pulsing
    .filter(({ circuits }) => circuits.some((c) => moment.on[c] === 1))
    .map((each) => ({ circuits: each.circuits, at: dutyIn(s, each) }))
    .filter(({ at }) => at < 1)
    .sort((a, b) => a.at - b.at);
  if (ends.length === 0 || during === undefined) return [{ share: 1, at: s }];
  const phases: SolvedPhase[] = [];
  let from = 0;
  let on = moment.on;
  for (const { circuits, at } of [...ends, { circuits: [], at: 1 }]) {
    if (at > from) phases.push({ share: at - from, at: on === moment.on ? s : during(on) });
    from = Math.max(from, at);
    const next = on.slice();
    for (const c of circuits) next[c] = 0;
    on = next;
  }
  return phases;
}

/** The shortest that a circuit's pulses are; 1 of one that does not pulse. */
export function leastDuty({ corner, circuitry, typical }: Solution, circuit: string): number {
  if (circuitry.pulsing.length === 0) return 1;
  const number = circuitry.circuitIndex.get(circuit)!;
  const pulsing = circuitry.pulsing.find(({ circuits }) => circuits.includes(number));
  if (pulsing === undefined) return 1;
  const { id, duty } = pulsing;
  if (corner.build) return within(duty, corner.build.share(figureOf(id, 'duty')));
  return typical ? duty.typ : duty.min;
}

/** How long a pulse is in a corner: the longest is the heaviest. */
function dutyIn({ corner, focus, circuitry }: Solution, { id, circuits, duty }: Pulsing): number {
  if (corner.build) return within(duty, corner.build.share(figureOf(id, 'duty')));
  const asked = focus.leans ?? focus.has;
  const inQuestion = circuits.some((c) => circuitry.networksOf[c]!.some((n) => asked[n] === 1));
  const lean = inQuestion ? corner.load : corner.rest;
  return lean === 'typ' ? duty.typ : lean === 'low' ? duty.min : duty.max;
}

/** Whose a root mean square is: of each phase as much as it weighs in it, so that the shares add up to the whole. */
export function rmsShares(shares: (s: Solution) => Shares): (s: Solution) => Shares {
  return (s) => {
    if (s.phases.length === 1) return shares(s);
    const parts = s.phases.map(({ share, at }) => ({ share, of: shares(at) }));
    const rms = Math.sqrt(parts.reduce((sum, { share, of }) => sum + share * total(of) ** 2, 0));
    const sums = new Map<string, number>();
    if (rms > 0)
      for (const { share, of } of parts)
        for (const [circuit, amps] of of)
          sums.set(circuit, (sums.get(circuit) ?? 0) + (share * amps * total(of)) / rms);
    return sums;
  };
}
