/**
 * What a live pin gives into a rail that is dead and holds itself at 0 V, alone and in the sums of its chip, and what the inputs
 * there have to lead away.
 */
import { branchSteps } from '../loads/branch-working.js';
import type { LineEnd } from '../loads/lines/line.js';
import { clampOf } from '../loads/lines/line.js';
import type { Afloat } from '../project/afloat.js';
import type { Project } from '../project/project.js';
import type { Account } from './account.js';
import type { Dead } from './dead-corners.js';
import { candidatesOf } from './dead-corners.js';
import { likenessOf } from './likeness.js';
import { RUNAWAY } from './moments.js';
import { pinQuestions } from './pin-questions.js';
import type { Question } from './question.js';
import { settleAccount } from './settle.js';
import type { Candidate, Solver } from './solver.js';
import { solver } from './solver.js';

/** What a live pin gives into what is dead, or an input of that has to lead away: an account with its limits. */
export interface PushedPin {
  readonly dead: readonly string[];
  readonly stated: boolean;
  /** Who takes it, as sentences say it. */
  readonly into: readonly string[];
  readonly account: Account;
  /** That current comes through at all is assumed: nobody publishes the input's clamp. */
  readonly assumed: boolean;
}

/** The currents into what is dead, held at 0 V, that have limits. */
export function pushedPins(project: Project, found: Afloat, on: Uint8Array, of: Dead): PushedPin[] {
  const { held, ways, floating } = found;
  const ends = project.ends.filter((end) => floating.has(end.rail) && ways.has(end.about));
  const assumed = new Set(ends.flatMap((end) => (end.assumed && end.source !== undefined ? [end.source] : [])));
  const used = new Set(
    held.networks.flatMap((n) =>
      n.circuits.some((c) => ways.has(c)) ? [...n.on, ...n.off].flatMap((b) => b.pin?.pin ?? []) : [],
    ),
  );
  const isAsked = ({ kind, direction, limits, pins, heat }: Project['pinAccounts'][number]): boolean =>
    kind !== 'array' && !heat && direction === 'source' && limits.length > 0 && pins.some((pin) => used.has(pin));
  const isAssumed = (pins: readonly string[]): boolean => pins.some((pin) => assumed.has(pin));
  const bench = solver({
    ...held,
    // Where a mode says so and the way is known, the pin's own account tells.
    pinAccounts: project.pinAccounts
      .filter((a) => isAsked(a) && (!of.stated || isAssumed(a.pins)))
      // What the chip draws itself is little beside that, and hangs on none of these networks.
      .map((a) => ({ ...a, own: [] })),
  });
  const mode = { name: RUNAWAY, on };
  const settled = (q: Question): readonly Account[] =>
    [settleAccount(bench, q, [mode], false)].filter((a) => a !== undefined);
  // As the file has them, whichever pins they hang on.
  const order = new Map(project.circuits.map((c, k) => [c.id, k]));
  const inOrder = (names: readonly string[]): string[] =>
    [...new Set(names)].sort((a, b) => (order.get(a) ?? 0) - (order.get(b) ?? 0));
  const pinsOf = (id: string): readonly string[] => project.pinAccounts.find((a) => a.id === id)?.pins ?? [id];
  const takersOf = (pin: string): string[] => {
    const lines = ends.filter((end) => end.source === pin).map((end) => end.told);
    return lines.length > 0 ? lines : project.uses.filter((u) => u.pin === pin).map((u) => u.by);
  };
  const pins = pinQuestions(bench, likenessOf(bench.circuitry, [mode])).flatMap((q) =>
    settled(q).map((account) => {
      const summed = pinsOf(q.id).filter((pin) => used.has(pin));
      return { ...of, account, into: inOrder(summed.flatMap(takersOf)), assumed: isAssumed(summed) };
    }),
  );
  const inputs = ends.flatMap((end) =>
    end.injected.length === 0
      ? []
      : settled(inputQuestion(bench, end, (lean) => candidatesOf(bench, found, on, lean))).map((account) => ({
          ...{ ...of, account, into: [end.told], assumed: end.assumed === true },
        })),
  );
  return [...pins, ...inputs];
}

/** What an input of something dead has to lead away. */
function inputQuestion(
  { circuitry }: Solver,
  end: LineEnd,
  leaning: (lean: 'lifted' | 'sunk') => readonly Candidate[],
): Question {
  const part = circuitry.parts.has(clampOf(end)) ? clampOf(end) : `${end.about}.clamp`;
  const driver = end.source !== undefined && circuitry.parts.has(end.source) ? end.source : part;
  const probes = () => leaning('lifted');
  return {
    ...{ id: end.about, kind: 'pin', title: `${end.told}, pushed in`, quantity: 'current', direction: 'injected' },
    ...{ path: end.path, limits: end.injected, probes },
    // The clamp keeps what the pin before it, or whoever else drives it, leaves.
    steps: (s) => branchSteps(s.branch(driver), `what is pushed into ${end.told}`),
    read: (s) => Math.max(s.current(part), 0),
    candidates: () => [...leaning('lifted'), ...leaning('sunk')],
  };
}
