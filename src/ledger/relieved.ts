/** Accounts that see peaks, less what capacitors give of them: the source's side of `reservoirs.ts`. */
import { symbol } from '../loads/branch-working.js';
import type { Step } from '../loads/account-plan.js';
import type { Shares } from './bookings.js';
import type { Corner } from './corner.js';
import type { Moment } from './moment.js';
import type { TreeQuestion } from './question.js';
import type { Relief } from './reservoirs.js';
import { reliefAt } from './reservoirs.js';
import type { Solution } from './solution.js';
import type { Solver } from './solver.js';
import { sumSteps } from './working.js';

/** What a node does not see of the peaks of a solution. */
export type Relieving = (s: Solution, node: string) => readonly Relief[];

/** @param starved corners in which rails stand lowest while peaks flow */
export function relieving(solver: Solver, starved: readonly Corner[]): Relieving {
  const known = new Map<Moment, readonly Solution[]>();
  const lowest = (moment: Moment) => (): readonly Solution[] => {
    const found = known.get(moment) ?? starved.map((corner) => solver.solve({ moment, corner, focus: solver.nobody }));
    known.set(moment, found);
    return found;
  };
  return (s, node) => reliefAt(s, node, lowest(s.moment));
}

/** Amperes that are not seen. */
export const unseen = (relief: readonly Relief[]): number =>
  relief.reduce((sum, { more, seen }) => sum + more - seen, 0);

/** A question about a sum of currents, with what capacitors give taken off. */
export function relieved(question: TreeQuestion, relief: Relieving): TreeQuestion {
  const { at, shares, read, steps, title } = question;
  if (shares === undefined) return question;
  const left = (s: Solution): Shares => {
    const whole = new Map(shares(s));
    for (const { circuit, more, seen } of relief(s, at)) whole.set(circuit, (whole.get(circuit) ?? 0) - more + seen);
    return whole;
  };
  return {
    ...question,
    read: (s) => {
      const amps = read(s);
      return amps === undefined ? undefined : amps - unseen(relief(s, at));
    },
    shares: left,
    steps: (s) => {
      const given = relief(s, at);
      return given.length === 0 ? steps(s) : [...given.map(reliefStep), ...sumSteps(title, left(s), undefined, s)];
    },
  };
}

function reliefStep({ circuit, more, seen, lasts, farads, ohms }: Relief): Step {
  const name = symbol('I_peak', circuit);
  if (ohms === undefined)
    return {
      name,
      says: `the peak of ${circuit} comes out of the capacitor alone, which dips by so much and leaves everything on it working`,
      formula: 'I_more * t / C',
      with: { I_more: [more, 'A'], t: [lasts, 's'], C: [farads, 'F'] },
      gives: [(more * lasts) / farads, 'V'],
    };
  return {
    name,
    says: `what the source still gives of the peak of ${circuit} when it ends; the rest comes from the capacitor`,
    formula: 'I_more * (1 - exp(-t / (R * C)))',
    with: { I_more: [more, 'A'], t: [lasts, 's'], R: [ohms, 'Ω'], C: [farads, 'F'] },
    gives: [seen, 'A'],
  };
}
