/** The worst moment of accounts that are sums, against trying every state that the interlocks allow. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { badnessIn } from '../../src/ledger/badness.js';
import { likenessOf } from '../../src/ledger/likeness.js';
import { loadQuestions } from '../../src/ledger/load-questions.js';
import type { ModeSearch } from '../../src/ledger/moments.js';
import { modesOf, together } from '../../src/ledger/moments.js';
import { pinQuestions } from '../../src/ledger/pin-questions.js';
import type { Question } from '../../src/ledger/question.js';
import type { Solver } from '../../src/ledger/solver.js';
import { solver } from '../../src/ledger/solver.js';
import { treeQuestions } from '../../src/ledger/tree-questions.js';
import type { Project } from '../../src/project/project.js';
import { sized } from '../sizes.js';
import type { Data, Entry } from './projects.js';
import { projectOf, projects } from './projects.js';

/** Share of a sum, or of a limit, that the search may miss: states that differ by less than that come to the same for any judgement. */
const MISSED = 1e-5;
/** Amperes below which nothing is compared. */
const TRACE = 1e-6;
/** More circuits than this make too many states to try. */
const MOST_CIRCUITS = 8;

const switched = (project: Project): string[] => project.circuits.flatMap((c) => (c.always ? [] : [c.id]));

/** Projects of a few circuits with interlocks of every kind between them. */
const locked: fc.Arbitrary<Data> = projects({ most: 4 })
  .filter((data) => {
    const { length } = switched(projectOf(data));
    return length > 0 && length <= MOST_CIRCUITS;
  })
  .chain((data) => {
    const circuits = switched(projectOf(data));
    const one = fc.constantFrom(...circuits);
    const by = fc.constantFrom('wiring', 'firmware');
    const some = fc.uniqueArray(one, { minLength: 1, maxLength: 4 });
    const pair = fc.tuple(one, one).filter(([a, b]) => a !== b);
    const rules: fc.Arbitrary<Entry>[] = [fc.record({ 'at-most': fc.integer({ min: 1, max: 2 }), of: some, by })];
    if (circuits.length > 1)
      rules.push(
        fc.tuple(pair, by).map(([[a, b], kept]) => ({ needs: a, for: b, by: kept })),
        fc.tuple(pair, by).map(([[a, b], kept]) => ({ excludes: a, for: b, by: kept })),
      );
    return fc.array(fc.oneof(...rules), { maxLength: 2 }).map((interlocks) => ({ ...data, interlocks }));
  });

/** Every state of the circuits that the interlocks allow; what hangs on one pin is on together. */
function* states(project: Project): Generator<Uint8Array> {
  const index = new Map(project.circuits.map((c, k) => [c.id, k]));
  const free = project.circuits.flatMap((c, k) => (c.always ? [] : [k]));
  const pins = project.networks.map((n) => n.circuits).filter((on) => on.length > 1);
  for (let bits = 0; bits < 2 ** free.length; bits++) {
    const on = Uint8Array.from(project.circuits, (c) => (c.always ? 1 : 0));
    free.forEach((k, n) => (on[k] = (bits >> n) & 1));
    const lit = (ids: readonly string[] = []): number => ids.filter((id) => on[index.get(id)!] === 1).length;
    if (pins.some((on) => lit(on) > 0 && lit(on) < on.length)) continue;
    const kept = project.interlocks.every((i) => {
      if (i.kind === 'at-most') return lit(i.of) <= i.most!;
      if (lit(i.when) === 0) return true;
      return lit(i.of) === (i.kind === 'needs' ? i.of.length : 0);
    });
    if (kept) yield on;
  }
}

const most = (bench: Solver, question: Question, mode: ModeSearch): number =>
  Math.max(0, ...question.candidates(mode).map((c) => question.read(bench.solve(c)) ?? 0));

const worstOf = (bench: Solver, question: Question, mode: ModeSearch): number =>
  Math.max(...question.candidates(mode).map((c) => badnessIn(question, bench.solve(c)) ?? -Infinity));

describe('the worst moment', () => {
  test('of every sum of currents is that of the worst of all states that are allowed', () => {
    let compared = 0;
    fc.assert(
      fc.property(locked, (data) => {
        const project = projectOf(data);
        const bench = solver(project);
        const [free] = modesOf(project);
        const likeness = likenessOf(bench.circuitry, [free!]);
        const sums = [...pinQuestions(bench, likeness), ...treeQuestions(bench)];
        const all = [...states(project)].map((on, k): ModeSearch => ({ name: `state ${k}`, on }));
        fc.pre(all.length > 0);
        for (const question of sums) {
          if (question.quantity !== 'current') continue;
          const worst = Math.max(...all.map((mode) => most(bench, question, mode)));
          // Where none of its circuits may ever be on, a stated mode has no such account.
          if (worst === 0) continue;
          const told = most(bench, question, free!);
          compared++;
          expect(told, `${question.title}, against every state`).toBeGreaterThanOrEqual(worst * (1 - MISSED) - TRACE);
          expect(told, `${question.title}, against every state`).toBeLessThanOrEqual(worst * (1 + MISSED) + TRACE);
        }
      }),
      { numRuns: sized(50, 400) },
    );
    expect(compared).toBeGreaterThan(400);
  });

  const long = { timeout: sized(30_000, 600_000) };
  test(
    'of every account of a load, of every voltage and of every regulator’s heat, leaves as little of its limit as the worst of all states',
    long,
    () => {
      let compared = 0;
      fc.assert(
        fc.property(locked, (data) => {
          const project = projectOf(data);
          const bench = solver(project);
          const [free] = modesOf(project);
          const tree = treeQuestions(bench).filter((q) => q.quantity !== 'current');
          const questions = [...loadQuestions(bench, likenessOf(bench.circuitry, [free!])), ...tree];
          const all = [...states(project)].map((on, k): ModeSearch => ({ name: `state ${k}`, on }));
          for (const question of questions) {
            if (question.limits.length === 0) continue;
            const worst = Math.max(...all.map((mode) => worstOf(bench, question, mode)));
            if (worst === -Infinity) continue;
            compared++;
            const told = worstOf(bench, question, free!);
            const room = MISSED * Math.max(1, Math.abs(worst));
            expect(told, `${question.title}, against every state`).toBeGreaterThanOrEqual(worst - room);
          }
        }),
        { numRuns: sized(20, 400) },
      );
      expect(compared).toBeGreaterThan(300);
    },
  );

  // A stage that conducts to hold the next one off draws while its load is off: that one counts in the state in which it draws.
  test('is bounded for what a supply gives by the state with all on that draws more when it is', () => {
    fc.assert(
      fc.property(projects({ most: 3 }), (data) => {
        const project = projectOf(data);
        fc.pre(switched(project).length <= MOST_CIRCUITS);
        const bench = solver(project);
        const every = [...states(project)];
        for (const question of treeQuestions(bench).filter((q) => q.kind === 'supply' && q.quantity === 'current')) {
          const given = (name: string, on: Uint8Array): number => most(bench, question, { name, on });
          const none = given('none', bench.resting);
          const alone = project.circuits.map((_, k) => {
            const on = bench.resting.slice();
            for (const c of together(project)[k]!) on[c] = 1;
            return given(`only ${k}`, on) >= none;
          });
          const bound = given(
            'all',
            Uint8Array.from(bench.resting, (on, k) => (on === 1 || alone[k] ? 1 : 0)),
          );
          for (const [k, on] of every.entries())
            expect(given(`state ${k}`, on), question.title).toBeLessThanOrEqual(bound * (1 + 1e-9) + TRACE);
        }
      }),
      { numRuns: sized(30, 200) },
    );
  });
});
